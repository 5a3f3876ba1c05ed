import { Refused } from '../refused.ts';

/** Lets each device have one thing of a kind done for it at a time, so that none keeps the others waiting. */
export class OneAtATime {
  readonly #sentence: string;
  readonly #busy = new Set<string>();

  /** @param sentence why the second is refused */
  constructor(sentence: string) {
    this.#sentence = sentence;
  }

  /** @throws Refused `busy` while the one before of this device is not done */
  async of<T>(device: string, work: () => Promise<T>): Promise<T> {
    if (this.#busy.has(device)) throw new Refused('busy', this.#sentence);
    this.#busy.add(device);
    try {
      return await work();
    } finally {
      this.#busy.delete(device);
    }
  }
}
