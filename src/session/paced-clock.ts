import { setTimeout as wait } from 'node:timers/promises';
import { type Clock, SystemClock } from './clock.ts';

/**
 * Real time that passes faster: for rehearsals. Pace may change at any moment; session time goes on from where it
 * is, and whatever waits is planned anew.
 */
export class PacedClock implements Clock {
  readonly #real = new SystemClock();
  readonly #startedAt: Date;
  #pace: number;
  #sinceRealMs = 0;
  #sinceMs = 0;
  #alarm: { readonly atMs: number; readonly ring: () => void } | null = null;
  #paceChanged = new AbortController();

  /**
   * @param pace session seconds for each real one, 1 to 60
   * @throws RangeError for any other pace
   */
  constructor(startedAt: Date, pace: number) {
    this.#startedAt = startedAt;
    this.#pace = checked(pace);
  }

  /** Session seconds for each real one. */
  get pace(): number {
    return this.#pace;
  }

  nowMs(): number {
    return this.#sinceMs + (this.#real.nowMs() - this.#sinceRealMs) * this.#pace;
  }

  wall(): Date {
    return new Date(this.#startedAt.getTime() + this.nowMs());
  }

  setAlarm(atMs: number | null, ring: () => void): void {
    this.#alarm = atMs === null ? null : { atMs, ring };
    this.#planAlarm();
  }

  async sleep(durationMs: number, signal?: AbortSignal): Promise<void> {
    const untilMs = this.nowMs() + durationMs;
    for (let leftMs = durationMs; leftMs > 0 && !signal?.aborted; leftMs = untilMs - this.nowMs()) {
      const changed = this.#paceChanged.signal;
      await wait(leftMs / this.#pace, undefined, {
        signal: signal ? AbortSignal.any([signal, changed]) : changed,
      }).catch(() => {
        // Cut short by the caller, or by another pace: the loop sees which.
      });
    }
  }

  /** @throws RangeError for a pace that is not from 1 to 60 */
  setPace(pace: number): void {
    if (pace === this.#pace) return;
    const nowMs = this.nowMs();
    this.#pace = checked(pace);
    this.#sinceRealMs = this.#real.nowMs();
    this.#sinceMs = nowMs;
    const changed = this.#paceChanged;
    this.#paceChanged = new AbortController();
    changed.abort();
    this.#planAlarm();
  }

  #planAlarm(): void {
    const alarm = this.#alarm;
    if (alarm) this.#real.setAlarm(this.#sinceRealMs + (alarm.atMs - this.#sinceMs) / this.#pace, alarm.ring);
    else this.#real.setAlarm(null, () => {});
  }
}

function checked(pace: number): number {
  if (pace >= 1 && pace <= 60) return pace;
  throw new RangeError(`Pace ${pace} cannot be kept; it has to be from 1 to 60.`);
}
