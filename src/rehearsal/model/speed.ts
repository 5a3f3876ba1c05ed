import { fastestRpm, type Profile } from '../../profile/schema.ts';

export interface SpeedPlant {
  readonly crankingRpm: number;
  readonly coldIdleRpm: number;
  readonly warmIdleRpm: number;
  readonly coldBelowC: number;
  /** The idle has come down to its warm speed at this coolant temperature. */
  readonly warmFromC: number;
  /** Swing of an idle that hunts, to either side. */
  readonly huntingRpm: number;
  readonly highestRpm: number;
  readonly nominalV: number;
}

export interface SpeedState {
  readonly rpm: number;
  readonly firing: boolean;
  /** Seconds since it fired. */
  readonly ranS: number;
}

interface SpeedInputs {
  readonly starter: boolean;
  /** Fuel reaches the cylinders at a pressure that burns. */
  readonly fed: boolean;
  readonly demandRpm: number | null;
  readonly coolantC: number;
  readonly batteryV: number;
  readonly hunts: boolean;
}

/** Time constants and limits of a small to middle diesel: common practice, no published source. */
const CRANK_S = 0.3;
const GOVERNOR_S = 0.6;
const COAST_S = 0.7;
const STANDS_BELOW_RPM = 15;
const FIRES_ABOVE_RPM = 80;
const STALLS_BELOW_RPM = 300;
/** A firing engine comes up by itself; it is not stalled while it does. */
const COMES_UP_S = 3;
const HUNTING_PERIOD_S = 6.3;
const HUNTING_SHARE = 2.6;
const IDLE_WARM_BELOW_OPENING_K = 20;
const COLD_BELOW_C = 20;
/** Cranking pulls the voltage to about this for each 12 V. */
const CRANKING_V = 10.5;

const middle = ({ minRpm, maxRpm }: { readonly minRpm: number; readonly maxRpm: number }) =>
  (minRpm + maxRpm) / 2;

export const speedPlant = (profile: Profile): SpeedPlant => {
  const { starter, idle, thermostat, systemVoltage } = profile;
  return {
    crankingRpm: starter.crankingRpm,
    coldIdleRpm: middle(idle.cold),
    warmIdleRpm: middle(idle.warm),
    coldBelowC: COLD_BELOW_C,
    warmFromC: Math.max(COLD_BELOW_C + 1, thermostat.opensC - IDLE_WARM_BELOW_OPENING_K),
    huntingRpm: HUNTING_SHARE * idle.spreadMaxRpm,
    highestRpm: 1.3 * fastestRpm(profile),
    nominalV: (CRANKING_V * systemVoltage) / 12,
  };
};

export const standing: SpeedState = { rpm: 0, firing: false, ranS: 0 };

/** The idle that the governor holds at a coolant temperature: fast when cold. */
function idleRpm(plant: SpeedPlant, coolantC: number): number {
  const { coldIdleRpm, warmIdleRpm, coldBelowC, warmFromC } = plant;
  const share = Math.min(1, Math.max(0, (coolantC - coldBelowC) / (warmFromC - coldBelowC)));
  return coldIdleRpm + (warmIdleRpm - coldIdleRpm) * share;
}

/** One step: starter, governor or nothing turns the engine; it fires, runs, stalls and coasts down. */
export function speedStep(
  plant: SpeedPlant,
  state: SpeedState,
  inputs: SpeedInputs,
  dtS: number,
): SpeedState {
  const stalled = state.firing && state.ranS > COMES_UP_S && state.rpm < STALLS_BELOW_RPM;
  const firing = inputs.fed && !stalled && (state.firing || (inputs.starter && state.rpm > FIRES_ABOVE_RPM));
  const [wantedRpm, followS] = firing
    ? [governed(plant, state, inputs), GOVERNOR_S]
    : inputs.starter
      ? [(plant.crankingRpm * inputs.batteryV) / plant.nominalV, CRANK_S]
      : [0, COAST_S];
  const rpm = Math.max(0, state.rpm + ((wantedRpm - state.rpm) * dtS) / followS);
  const turned = firing || inputs.starter;
  return {
    rpm: !turned && rpm < STANDS_BELOW_RPM ? 0 : rpm,
    firing,
    ranS: firing ? state.ranS + dtS : 0,
  };
}

function governed(plant: SpeedPlant, { ranS }: SpeedState, inputs: SpeedInputs): number {
  const idle = idleRpm(plant, inputs.coolantC);
  const swing = inputs.hunts ? plant.huntingRpm * Math.sin((2 * Math.PI * ranS) / HUNTING_PERIOD_S) : 0;
  const { demandRpm } = inputs;
  // A pedal that is nowhere asks for nothing.
  if (demandRpm === null || !Number.isFinite(demandRpm)) return idle + swing;
  return Math.min(plant.highestRpm, Math.max(idle, demandRpm)) + swing;
}
