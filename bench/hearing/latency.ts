import { quantile } from '../voice-measure.ts';

/** What listening cost: processor time for each second of sound, over so many seconds. */
export interface Spent {
  readonly realTimeFactor: number;
  readonly soundS: number;
}

/** From the end of what was said to the report, in ms. */
export interface Latency {
  readonly count: number;
  readonly medianMs: number;
  readonly p95Ms: number;
}

export const latencyOf = (ms: readonly number[]): Latency => ({
  count: ms.length,
  medianMs: Math.round(quantile(ms, 0.5)),
  p95Ms: Math.round(quantile(ms, 0.95)),
});
