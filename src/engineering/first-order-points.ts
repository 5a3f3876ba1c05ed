import type { Reading } from './readings.ts';
import { spanS } from './readings.ts';

/** Readings made ready for repeated fitting. */
export interface Points {
  /** Seconds since the first reading. */
  readonly sinceS: Float64Array;
  readonly value: Float64Array;
  /** How many readings stand behind each point. */
  readonly weight: Float64Array;
  readonly spanS: number;
  readonly originS: number;
}

/** Within a 64th of the span a first-order curve bends by less than it is read to; more points tell no more. */
const MOST_POINTS = 64;

/**
 * Readings (in order of time, at least one) as at most 64 weighted points: long recordings are averaged
 * within equal stretches of time, so that a fit takes the same time whatever the length of the recording.
 */
export function gather(readings: readonly Reading[]): Points {
  const originS = readings[0]?.timeS ?? 0;
  const span = spanS(readings);
  const averaged = readings.length > MOST_POINTS;
  const time = new Float64Array(averaged ? MOST_POINTS : readings.length);
  const value = new Float64Array(time.length);
  const weight = new Float64Array(time.length);
  for (const [i, reading] of readings.entries()) {
    const sinceS = reading.timeS - originS;
    const place = averaged ? Math.min(MOST_POINTS - 1, Math.floor((sinceS / span) * MOST_POINTS) || 0) : i;
    const seen = (weight[place] ?? 0) + 1;
    weight[place] = seen;
    time[place] = (time[place] ?? 0) + (sinceS - (time[place] ?? 0)) / seen;
    value[place] = (value[place] ?? 0) + (reading.value - (value[place] ?? 0)) / seen;
  }
  const used = (_: number, i: number): boolean => (weight[i] ?? 0) > 0;
  return {
    sinceS: time.filter(used),
    value: value.filter(used),
    weight: weight.filter(used),
    spanS: span,
    originS,
  };
}
