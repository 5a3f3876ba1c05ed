/**
 * Which devices have stopped the session since it last went on. What one of them sends again is the same stop: it
 * is answered, but neither recorded nor called out anew. The first after a return stops anew.
 */
export class StopBook {
  readonly #devices = new Set<string>();

  /** To be told of every change. */
  look(isStopped: boolean): void {
    if (!isStopped) this.#devices.clear();
  }

  /** True for a stop that is new; it is counted then. */
  take(device: string): boolean {
    if (this.#devices.has(device)) return false;
    this.#devices.add(device);
    return true;
  }
}
