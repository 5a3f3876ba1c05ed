import { type Failure, type Range, refuse } from './checks.ts';
import { fail } from './result.ts';

/** One value read off a gauge, said aloud or taken from the bus. */
export interface Reading {
  /** Seconds on any clock that runs evenly; only differences matter. */
  readonly timeS: number;
  /** In the unit that the function asking for readings names. */
  readonly value: number;
}

const TIME_S: Range = { min: -1e10, max: 1e10, unit: 's' };

/**
 * The reason why readings may not be calculated with, or `undefined` when they may: each finite, within
 * `range`, in order of time. `input` names the readings, unit included, and the issue counts from 1.
 */
export function refuseReadings(
  input: string,
  readings: readonly Reading[],
  range: Range,
): Failure | undefined {
  let before = TIME_S.min;
  for (const [i, { timeS, value }] of readings.entries()) {
    if (timeS >= before && timeS <= TIME_S.max && value >= range.min && value <= range.max) {
      before = timeS;
      continue;
    }
    const nth = `${input} ${i + 1}`;
    return (
      refuse({ [`${nth} timeS`]: [timeS, TIME_S], [nth]: [value, range] }) ??
      fail('contradictory', `${nth} timeS`, {
        given: timeS,
        allowed: `no earlier than the reading before it, at ${before} s`,
      })
    );
  }
  return undefined;
}

/** Seconds from the first reading to the last; 0 for none. */
export const spanS = (readings: readonly Reading[]): number =>
  (readings.at(-1)?.timeS ?? 0) - (readings[0]?.timeS ?? 0);
