import type { Profile } from '../../profile/schema.ts';
import type { Random } from '../random.ts';

interface FuelPlant {
  /** Air in the low-pressure side after the filters were changed, litre. */
  readonly airL: number;
}

export interface FuelState {
  readonly airL: number;
  readonly strokes: number;
  readonly railKpa: number;
}

interface FuelInputs {
  readonly rpm: number;
  readonly keyOn: boolean;
  readonly fuelling: boolean;
  readonly pumpingByHand: boolean;
  readonly drawsAir: boolean;
}

/** Sizes of a low-pressure side and of a rail: common practice, no published source. */
const LITRE_PER_STROKE = 0.005;
const STROKES_PER_S = 1;
/** With no more air than this the primer is firm, and the rail fills. */
const FIRM_L = 0.02;
const DRAWN_L_PER_S = 0.02;
const MOST_AIR_L = 0.5;
/** The transfer pump pushes a little air through the return on every turn. */
const PURGED_L_PER_TURN = 0.0004;
const RAIL_IDLE_KPA = 35_000;
const RAIL_KPA_PER_RPM = 20;
const RAIL_RISES_S = 0.6;
const RAIL_FALLS_S = 3;
/** The injectors open from here on. */
export const FIRES_FROM_KPA = 20_000;

export const fuelPlant = ({ fuel }: Profile, random: Random): FuelPlant => ({
  airL: random.between(0.25, 0.5) * fuel.primer.maxStrokes * LITRE_PER_STROKE,
});

export const unprimed = ({ airL }: FuelPlant): FuelState => ({ airL, strokes: 0, railKpa: 0 });

/** The hand primer resists: there is fuel behind it, and no air. */
export const primerIsFirm = ({ airL }: FuelState) => airL <= FIRM_L;

/** One step: air is pumped out by hand or by the turning engine, or drawn in; without it the rail fills. */
export function fuelStep(state: FuelState, inputs: FuelInputs, dtS: number): FuelState {
  const { rpm, keyOn, fuelling, pumpingByHand, drawsAir } = inputs;
  const strokes = pumpingByHand ? STROKES_PER_S * dtS : 0;
  const outL = strokes * LITRE_PER_STROKE + (PURGED_L_PER_TURN * rpm * dtS) / 60;
  const inL = drawsAir ? DRAWN_L_PER_S * dtS : 0;
  const airL = Math.min(MOST_AIR_L, Math.max(0, state.airL + inL - outL));
  const delivers = keyOn && fuelling && rpm > 0 && airL <= FIRM_L;
  const wantedKpa = delivers ? RAIL_IDLE_KPA + RAIL_KPA_PER_RPM * rpm : 0;
  const followS = wantedKpa > state.railKpa ? RAIL_RISES_S : RAIL_FALLS_S;
  return {
    airL,
    strokes: state.strokes + strokes,
    railKpa: state.railKpa + ((wantedKpa - state.railKpa) * dtS) / followS,
  };
}
