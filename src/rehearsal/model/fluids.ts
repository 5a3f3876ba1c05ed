/** Coolant and steering fluid: how much there is, and the air that is still in them. */
export interface FluidState {
  readonly coolantL: number;
  /** Coolant that has run out, litre. */
  readonly lostL: number;
  /** Heat that it took along, J above the air outside. */
  readonly lostJ: number;
  readonly coolantAirL: number;
  readonly steeringAirL: number;
}

interface FluidInputs {
  readonly bleeding: boolean;
  readonly hoseOff: boolean;
  /** The wheel is turned from lock to lock. */
  readonly steering: boolean;
  readonly rpm: number;
}

/** Air that a fill leaves behind, and how fast it goes: common practice, no published source. */
const COOLANT_AIR_SHARE = 0.05;
const STEERING_AIR_L = 0.05;
const BLEEDS_S = 20;
const STEERING_S = 6;
const NO_AIR_SHARE = 0.02;
/** A hose that is off empties the system down to its joint. */
const RUNS_OUT_L_PER_S = 0.05;
const STAYS_SHARE = 0.3;

export const noFluids: FluidState = {
  coolantL: 0,
  lostL: 0,
  lostJ: 0,
  coolantAirL: 0,
  steeringAirL: STEERING_AIR_L,
};

/** A dry system is filled; what was lost is made up, and is air again. */
export const fillCoolant = (state: FluidState, systemL: number): FluidState => ({
  ...state,
  coolantL: systemL,
  coolantAirL: COOLANT_AIR_SHARE * systemL,
});

export const coolantHasAir = ({ coolantAirL }: FluidState, systemL: number) =>
  coolantAirL > NO_AIR_SHARE * COOLANT_AIR_SHARE * systemL;
export const steeringHasAir = ({ steeringAirL }: FluidState) => steeringAirL > NO_AIR_SHARE * STEERING_AIR_L;

/** One step; `jPerL` is the heat in a litre of coolant above the air outside. */
export function fluidStep(
  state: FluidState,
  systemL: number,
  jPerL: number,
  inputs: FluidInputs,
  dtS: number,
): FluidState {
  const outL = inputs.hoseOff
    ? Math.min(RUNS_OUT_L_PER_S * dtS, Math.max(0, state.coolantL - STAYS_SHARE * systemL))
    : 0;
  const bleeds = inputs.bleeding ? dtS / BLEEDS_S : 0;
  const purges = inputs.steering && inputs.rpm > 0 ? dtS / STEERING_S : 0;
  return {
    coolantL: state.coolantL - outL,
    lostL: state.lostL + outL,
    lostJ: state.lostJ + outL * jPerL,
    coolantAirL: state.coolantAirL * (1 - bleeds),
    steeringAirL: state.steeringAirL * (1 - purges),
  };
}
