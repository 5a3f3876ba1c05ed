import { type Curve, type Family, rise } from './first-order-family.ts';
import type { Reading } from './readings.ts';
import { student975 } from './statistics.ts';

export interface FirstOrderFit extends Curve {
  /** 1/s. */
  readonly rate: number;
  readonly tauS: number;
  /** Standard deviation of the readings about the curve, never below the resolution they were read with. */
  readonly deviation: number;
  readonly family: Family;
  /** Squares up to which a curve cannot be told from this one, with 95 % confidence. */
  readonly plausibleSquares: number;
}

/** The rate is searched where the readings can show it: from all but straight to all but a step. */
const LEAST_TURNS = 1e-3;
const MOST_TURNS = 50;
const SCAN_STEPS = 12;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Smallest value of a function of the rate: a scan, so that no side valley traps, then a golden section. */
export function searchRate(
  squares: (rate: number) => number,
  spanSeconds: number,
  closeness: number,
): { readonly rate: number; readonly squares: number } {
  const rateAt = (turn: number): number => Math.exp(turn) / spanSeconds;
  const from = Math.log(LEAST_TURNS);
  const step = (Math.log(MOST_TURNS) - from) / SCAN_STEPS;
  let centre = from;
  let least = Number.POSITIVE_INFINITY;
  for (let turn = from; turn <= from + (SCAN_STEPS + 0.5) * step; turn += step) {
    const found = squares(rateAt(turn));
    if (found < least) [least, centre] = [found, turn];
  }
  let [low, high] = [centre - step, centre + step];
  let [left, right] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)];
  let [atLeft, atRight] = [squares(rateAt(left)), squares(rateAt(right))];
  while (high - low > closeness) {
    if (atLeft < atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - GOLDEN * (high - low);
      atLeft = squares(rateAt(left));
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + GOLDEN * (high - low);
      atRight = squares(rateAt(right));
    }
  }
  const rate = rateAt((low + high) / 2);
  return { rate, squares: squares(rate) };
}

/**
 * Least-squares fit of a first-order curve of the family to the readings its points were gathered from.
 * `resolution` is the smallest step in which the readings come (1 for whole degrees): scatter finer than
 * that is luck. `undefined` when there are fewer readings than three more than the curve has freedoms, or
 * they span no time.
 */
export function fitFirstOrder(
  family: Family,
  readings: readonly Reading[],
  resolution: number,
): FirstOrderFit | undefined {
  const { points, freedoms } = family;
  const degrees = readings.length - freedoms;
  if (degrees < 3 || !(points.spanS > 0)) return undefined;
  const { rate } = searchRate(each => family.best(each).squares, points.spanS, 1e-8);
  const curve = family.best(rate);
  let squares = 0;
  for (const { timeS, value } of readings) {
    squares += (value - curve.startValue - curve.slopePerS * rise(timeS - points.originS, rate)) ** 2;
  }
  const deviation = Math.hypot(Math.sqrt(squares / degrees), resolution / Math.sqrt(12));
  const plausibleSquares = curve.squares + (student975(degrees) * deviation) ** 2;
  if (!Number.isFinite(plausibleSquares)) return undefined;
  return { ...curve, rate, tauS: 1 / rate, deviation, family, plausibleSquares };
}
