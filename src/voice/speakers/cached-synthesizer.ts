import type { Pcm, Synthesizer } from '../ports.ts';

/**
 * Remembers the sentences spoken last, so that a repeat starts without delay. Asking for the stop call-outs
 * at the start of a session keeps them ready: what is used again stays, what was unused longest goes.
 */
export class CachedSynthesizer implements Synthesizer {
  readonly #inner: Synthesizer;
  readonly #capacity: number;
  readonly #sounds = new Map<string, Promise<Pcm>>();

  /** @param capacity sentences kept, 1 or more; one of three seconds takes about 200 kB. */
  constructor(inner: Synthesizer, capacity = 64) {
    this.#inner = inner;
    this.#capacity = capacity;
  }

  synthesize(text: string): Promise<Pcm> {
    const sound = this.#sounds.get(text) ?? this.#inner.synthesize(text);
    this.#sounds.delete(text);
    this.#sounds.set(text, sound);
    // A failure is not remembered: the next time may go well.
    sound.catch(() => {
      if (this.#sounds.get(text) === sound) this.#sounds.delete(text);
    });
    for (const oldest of this.#sounds.keys()) {
      if (this.#sounds.size <= this.#capacity) break;
      this.#sounds.delete(oldest);
    }
    return sound;
  }
}
