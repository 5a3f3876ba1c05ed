import type { Timer } from '../../src/voice/audio/timer.ts';

/** Time that passes only while somebody sleeps; every sleep is noted. */
export class SimulatedTimer implements Timer {
  timeMs = 0;
  readonly sleepsMs: number[] = [];

  nowMs(): number {
    return this.timeMs;
  }

  readonly sleep = async (durationMs: number, signal: AbortSignal): Promise<void> => {
    this.sleepsMs.push(durationMs);
    if (!signal.aborted) this.timeMs += Math.max(0, durationMs);
  };
}

/** A wait that ends only when it is given up. */
export const sleepForever = (_durationMs: number, signal: AbortSignal): Promise<void> =>
  new Promise(resolve => {
    if (signal.aborted) resolve();
    signal.addEventListener('abort', () => resolve(), { once: true });
  });
