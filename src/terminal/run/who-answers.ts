/** Ways in which a session gets its answers; `itself`: a virtual technician of a rehearsal. */
type Way = 'keys' | 'sound' | 'itself';

/** Who can still answer. A session that nobody can answer any more would only wait. */
export class WhoAnswers {
  readonly #ways: Set<Way>;
  #tell: () => void = () => {};
  /** Settles when the last way is gone. */
  readonly nobody: Promise<void>;

  constructor(ways: readonly Way[]) {
    this.#ways = new Set(ways);
    this.nobody = new Promise(resolve => {
      this.#tell = resolve;
    });
  }

  has(way: Way): boolean {
    return this.#ways.has(way);
  }

  /** From now on no answer comes this way. */
  gone(way: Way): void {
    this.#ways.delete(way);
    if (this.#ways.size === 0) this.#tell();
  }
}
