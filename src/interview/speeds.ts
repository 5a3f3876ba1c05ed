import { type Draft, numberIn, rangeIn } from './question.ts';

/** Pressure rises with speed to about this power below the relief valve: common practice, no published source. */
const PRESSURE_EXPONENT = 0.7;
/** A good engine stands well above its floor, and thicker than the floor's hot oil. */
const ABOVE_FLOOR = 1.6;
/** What is put forward keeps clear of where the relief valve begins to open (`RELIEF_OPENS_SHARE`). */
const BELOW_RELIEF_SHARE = 0.9;
/** A sweep has to go so far above its beginning to say anything; see `judgeSweep`. */
const LEAST_RATIO = 1.4;
const FIRST_ABOVE_IDLE = 1.15;
/** Four fifths of the rated speed: gentle enough for new bearings; common practice, no published source. */
const RATED_SHARE = 0.8;
const SWEEPS = 5;

/** No profile knows a faster speed. */
export const MOST_RPM = 5000;

const tens = (rpm: number) => Math.round(rpm / 10) * 10;

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Where the sweeps may begin and have to end; undefined while what they hang on is not known. */
function sweepSpan(draft: Draft): Span | undefined {
  const idle = rangeIn(draft, 'idle.warm');
  const rated = numberIn(draft, 'ratedRpm');
  if (!idle || rated === undefined) return undefined;
  return { from: tens(idle[1] * FIRST_ABOVE_IDLE), to: tens(rated * RATED_SHARE) };
}

/** Least rated speed above this idle that leaves room for sweeps. */
export const leastRatedRpm = (idleMaxRpm: number): number =>
  Math.ceil((tens(idleMaxRpm * FIRST_ABOVE_IDLE) * LEAST_RATIO) / RATED_SHARE / 10) * 10;

/** What a good, warm engine may show at a speed, from the floors of its maker, kPa. */
function expectedKpa(draft: Draft, rpm: number): number | undefined {
  const idle = rangeIn(draft, 'idle.warm');
  const rated = numberIn(draft, 'ratedRpm');
  const floorIdle = numberIn(draft, 'floorIdleKpa');
  const floorRated = numberIn(draft, 'floorRatedKpa');
  if (!idle || rated === undefined || floorIdle === undefined || floorRated === undefined) return undefined;
  const atOneRpm = Math.max(
    floorIdle / idle[0] ** PRESSURE_EXPONENT,
    floorRated / rated ** PRESSURE_EXPONENT,
  );
  return ABOVE_FLOOR * atOneRpm * rpm ** PRESSURE_EXPONENT;
}

/** Least relief pressure with which the sweeps still see the pump and not the valve, kPa. */
export function leastReliefKpa(draft: Draft): number | undefined {
  const span = sweepSpan(draft);
  const expected = span && expectedKpa(draft, span.from * LEAST_RATIO);
  return expected === undefined ? undefined : Math.ceil(expected / BELOW_RELIEF_SHARE);
}

/** Five speeds, rising evenly, no further than the relief valve lets them say anything. */
export function sweepSpeeds(draft: Draft): readonly number[] | undefined {
  const span = sweepSpan(draft);
  const relief = numberIn(draft, 'oilPressure.reliefKpa');
  if (!span || relief === undefined) return undefined;
  const atTop = expectedKpa(draft, span.to);
  if (atTop === undefined) return undefined;
  const held = span.to * Math.min(1, (BELOW_RELIEF_SHARE * relief) / atTop) ** (1 / PRESSURE_EXPONENT);
  const top = Math.max(tens(held), tens(span.from * LEAST_RATIO));
  const step = (top - span.from) / (SWEEPS - 1);
  return Array.from({ length: SWEEPS }, (_, index) => tens(span.from + step * index));
}
