import { setTimeout as wait } from 'node:timers/promises';

/** Waits; settles early, without an error, when the signal says so. */
export type Sleep = (durationMs: number, signal: AbortSignal) => Promise<void>;

/** Time that never jumps, so that tests and rehearsals can hand in their own. */
export interface Timer {
  nowMs(): number;
  readonly sleep: Sleep;
}

/** The computer's own monotonic clock. */
export const monotonicTimer: Timer = {
  nowMs: () => performance.now(),
  sleep: async (durationMs, signal) => {
    if (signal.aborted) return;
    await wait(Math.max(0, durationMs), undefined, { signal }).catch((cause: unknown) => {
      if (!signal.aborted) throw cause;
    });
  },
};
