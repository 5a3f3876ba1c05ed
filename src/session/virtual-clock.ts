import type { Clock } from './clock.ts';

interface Sleeper {
  readonly untilMs: number;
  readonly wake: () => void;
}

/**
 * Time that moves only when it is told to: for sound files heard as fast as possible, for rehearsal and
 * for tests. It refuses to be set back.
 */
export class VirtualClock implements Clock {
  readonly #startedAt: Date;
  #nowMs: number;
  #alarm: { readonly atMs: number; readonly ring: () => void } | null = null;
  #sleepers: Sleeper[] = [];

  constructor(startedAt: Date, beginMs = 0) {
    this.#startedAt = startedAt;
    this.#nowMs = beginMs;
  }

  nowMs(): number {
    return this.#nowMs;
  }

  wall(): Date {
    return new Date(this.#startedAt.getTime() + this.#nowMs);
  }

  setAlarm(atMs: number | null, ring: () => void): void {
    this.#alarm = atMs === null ? null : { atMs, ring };
  }

  sleep(durationMs: number, signal?: AbortSignal): Promise<void> {
    if (signal?.aborted || durationMs <= 0) return Promise.resolve();
    return new Promise(resolve => {
      const abort = () => {
        this.#sleepers = this.#sleepers.filter(other => other !== sleeper);
        resolve();
      };
      const wake = () => {
        signal?.removeEventListener('abort', abort);
        resolve();
      };
      const sleeper: Sleeper = { untilMs: this.#nowMs + durationMs, wake };
      this.#sleepers.push(sleeper);
      signal?.addEventListener('abort', abort, { once: true });
    });
  }

  /** When something next happens: the alarm, or a sleeper that wakes; null when nothing is waiting. */
  nextMs(): number | null {
    const times = [
      ...this.#sleepers.map(sleeper => sleeper.untilMs),
      ...(this.#alarm ? [this.#alarm.atMs] : []),
    ];
    return times.length > 0 ? Math.min(...times) : null;
  }

  /**
   * Moves time forward, and wakes whatever falls due at the end of the step.
   * @throws RangeError on a negative step
   */
  advance(byMs: number): void {
    if (!(byMs >= 0)) throw new RangeError(`Time cannot be moved by ${byMs} ms; only forward.`);
    this.#nowMs += byMs;
    const due = this.#sleepers.filter(sleeper => sleeper.untilMs <= this.#nowMs);
    this.#sleepers = this.#sleepers.filter(sleeper => sleeper.untilMs > this.#nowMs);
    for (const sleeper of due) sleeper.wake();
    const alarm = this.#alarm;
    if (alarm && alarm.atMs <= this.#nowMs) {
      this.#alarm = null;
      alarm.ring();
    }
  }
}
