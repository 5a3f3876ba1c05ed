import { uptimeMs } from '#uptime';
import type { RecordClock } from '../record/index.ts';

/**
 * The one clock of a session. `nowMs` only ever moves forward and does not know what time of day it
 * is; `wall` is for people and is never used for timing.
 */
export interface Clock {
  nowMs(): number;
  wall(): Date;
  /** Calls once when `nowMs` has reached `atMs`; a new alarm replaces the one before, null takes it away. */
  setAlarm(atMs: number | null, ring: () => void): void;
  sleep(durationMs: number, signal?: AbortSignal): Promise<void>;
}

/** The session's clock, for the entries of its record. */
export const recordClock = (clock: Clock): RecordClock => ({
  wall: () => clock.wall(),
  monoMs: () => clock.nowMs(),
});

/** A longer wait is cut into such: after a sleep an alarm that is due by then rings so soon. */
const LONGEST_WAIT_MS = 1_000;

const LOOK_AGAIN_MS = 1_000;
/** More than two clocks can differ by between two looks, one of which counts whole seconds. */
const ASLEEP_MS = 2_500;

/**
 * Real time, from the monotonic clock of the system, which on some systems stands still while the machine sleeps: that
 * time is added. Engines do not sleep, and what was clear ten minutes ago is so no more.
 */
export class SystemClock implements Clock {
  readonly #startedMs = performance.now();
  readonly #beginMs: number;
  #looked = { steadyMs: this.#startedMs, wallMs: Date.now(), uptimeMs: uptimeMs() };
  #sleptMs = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** @param beginMs where to begin counting: a resumed session goes on from where it was */
  constructor(beginMs = 0) {
    this.#beginMs = beginMs;
  }

  nowMs(): number {
    const steadyMs = performance.now();
    this.#lookForSleep(steadyMs);
    return this.#beginMs + steadyMs - this.#startedMs + this.#sleptMs;
  }

  /** Once a second, or as soon as the time of day has moved on by one: to ask the system takes its time. */
  #lookForSleep(steadyMs: number): void {
    const wallMs = Date.now();
    const before = this.#looked;
    if (steadyMs - before.steadyMs < LOOK_AGAIN_MS && wallMs - before.wallMs < LOOK_AGAIN_MS) return;
    this.#looked = { steadyMs, wallMs, uptimeMs: uptimeMs() };
    const ranAheadMs = this.#looked.uptimeMs - before.uptimeMs - (steadyMs - before.steadyMs);
    if (ranAheadMs > ASLEEP_MS) this.#sleptMs += ranAheadMs;
  }

  wall(): Date {
    return new Date();
  }

  setAlarm(atMs: number | null, ring: () => void): void {
    clearTimeout(this.#timer);
    if (atMs === null) return;
    const leftMs = atMs - this.nowMs();
    this.#timer =
      leftMs <= 0
        ? setTimeout(ring, 0)
        : setTimeout(() => this.setAlarm(atMs, ring), Math.min(leftMs, LONGEST_WAIT_MS));
  }

  sleep(durationMs: number, signal?: AbortSignal): Promise<void> {
    return new Promise(resolve => {
      if (signal?.aborted) return resolve();
      const over = () => {
        clearTimeout(timer);
        signal?.removeEventListener('abort', over);
        resolve();
      };
      const timer = setTimeout(over, durationMs);
      signal?.addEventListener('abort', over);
    });
  }
}
