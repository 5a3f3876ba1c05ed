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

  /** The last samples, oldest first. @param into as long as what is kept */
  read(into: Float64Array): Float64Array {
    into.set(this.#kept.subarray(this.#at));
    into.set(this.#kept.subarray(0, this.#at), this.#kept.length - this.#at);
    return into;
  }
}
