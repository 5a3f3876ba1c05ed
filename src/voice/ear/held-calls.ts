import type { Meaning } from '../meaning.ts';
import type { Heard } from '../ports.ts';

/** Fire or injury, called out: a stop that tells what is the matter. */
export type Call = Extract<Heard, { kind: 'stop' }> & { readonly calls: string };

export const isCall = (meaning: Meaning | undefined): meaning is Omit<Call, 'text'> =>
  meaning?.kind === 'stop' && meaning.calls !== undefined;

/** Calls of one cause so close to one another are one. */
export const sameCallMs = 800;

/**
 * Calls for help that were spotted and wait: what turns out to be an answer of which the decoder is sure is no call ("card
 * is right" has the sounds of "fire"). Moments are those of the sound, in ms.
 */
export class HeldCalls {
  #held: readonly { readonly call: Call; readonly atMs: number }[] = [];
  /** When each cause that was given out was last spotted. */
  readonly #lastMs = new Map<string, number>();

  hold(call: Call, atMs: number): void {
    this.#held = [...this.#held, { call, atMs }];
  }

  /** What was said from one moment to another is an answer: what was spotted in it is no call, and all else waits on. */
  answered(fromMs: number, toMs: number): void {
    this.#held = this.#held.filter(({ atMs }) => atMs < fromMs || atMs > toMs);
  }

  /** Those spotted up to a moment, each cause once, without those that have just been given out: they wait no longer. */
  release(upToMs: number = Number.POSITIVE_INFINITY): readonly Call[] {
    const due = new Map(
      this.#held.filter(({ atMs }) => atMs <= upToMs).map(each => [each.call.calls, each] as const),
    );
    this.#held = this.#held.filter(({ atMs }) => atMs > upToMs);
    return [...due].flatMap(([cause, { call, atMs }]) => {
      if (atMs - (this.#lastMs.get(cause) ?? Number.NEGATIVE_INFINITY) < sameCallMs) return [];
      this.#lastMs.set(cause, atMs);
      return [call];
    });
  }

  /** Whether any was given out that was spotted at this moment or later. */
  calledSince(ms: number): boolean {
    return [...this.#lastMs.values()].some(lastMs => lastMs >= ms);
  }
}
