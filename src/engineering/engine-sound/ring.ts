/** The last samples of a stream, given out in order. */
export class Ring {
  readonly #kept: Float64Array;
  #at = 0;

  constructor(length: number) {
    this.#kept = new Float64Array(length);
  }

  push(value: number): void {
    this.#kept[this.#at] = value;
    this.#at = (this.#at + 1) % this.#kept.length;
  }

  /** The last samples, oldest first, as many as fit. */
  read(into: Float64Array): Float64Array {
    const { length } = this.#kept;
    const from = (this.#at - into.length + 2 * length) % length;
    for (let i = 0; i < into.length; i++) into[i] = this.#kept[(from + i) % length] as number;
    return into;
  }
}
