import { hasPhone } from './moment.ts';
import { type Sound, stepLength, stepMs } from './sound.ts';

/**
 * A phone is noticed in its middle, and late by what the early outputs look ahead: so much before the first one and after
 * the last belongs to what was said.
 */
const beforeMs = 400;
const afterMs = 300;
/** More than this tells no more of a voice, and costs time. */
const longestMs = 2_500;

/** Keeps of an utterance the part in which somebody speaks, as the microphone gave it. */
export class SpokenPart {
  #steps: Float32Array[] = [];
  #first: number | undefined;
  #last = 0;

  next({ raw, moments }: Sound): void {
    this.#steps.push(raw.slice());
    if (!moments.some(hasPhone)) return;
    this.#last = this.#steps.length;
    this.#first ??= Math.max(0, this.#last - beforeMs / stepMs);
  }

  /** At most its last seconds; empty where no phone was heard. */
  samples(): Float32Array {
    if (this.#first === undefined) return new Float32Array(0);
    const from = Math.max(this.#first, this.#last - longestMs / stepMs);
    const steps = this.#steps.slice(from, this.#last + afterMs / stepMs);
    const all = new Float32Array(steps.length * stepLength);
    steps.forEach((step, i) => {
      all.set(step, i * stepLength);
    });
    return all;
  }
}
