import { medianAbsoluteDeviation } from 'simple-statistics';
import type { Reading } from './readings.ts';

/** Median absolute deviation times this is the standard deviation of normally distributed scatter. */
const DEVIATIONS_PER_MAD = 1.4826;

/** A misheard digit stands out from both neighbours by more than this many standard deviations. */
const STANDS_OUT = 5;

/**
 * Readings without the single ones that jump away from both their neighbours and back, as a misheard number
 * does. `atLeast` is the smallest jump (in the readings' unit) that may be set aside. Never sets aside the
 * first or last reading, nor two in a row: what lasts may be real.
 */
export function withoutSpikes(readings: readonly Reading[], atLeast: number): readonly Reading[] {
  if (readings.length < 5) return readings;
  const heights = readings.map((_, i) => heightAt(readings, i));
  const limit = Math.max(atLeast, STANDS_OUT * DEVIATIONS_PER_MAD * medianAbsoluteDeviation(heights));
  // A spike of height h also bends its neighbours by h / 2: only the highest of three is the spike.
  const stands = (i: number): boolean => {
    const height = Math.abs(heights[i] ?? 0);
    return height > limit && height > Math.abs(heights[i - 1] ?? 0) && height > Math.abs(heights[i + 1] ?? 0);
  };
  return readings.filter((_, i) => i === 0 || i === readings.length - 1 || !stands(i));
}

/** How far a reading lies off the line through its neighbours: those on either side, at an end the next two. */
function heightAt(readings: readonly Reading[], i: number): number {
  const at = readings[i];
  const one = readings[i - 1] ?? readings[i + 2];
  const other = readings[i + 1] ?? readings[i - 2];
  if (!at || !one || !other) return 0;
  const gapS = other.timeS - one.timeS;
  const share = gapS === 0 ? 0.5 : (at.timeS - one.timeS) / gapS;
  return at.value - (one.value + share * (other.value - one.value));
}
