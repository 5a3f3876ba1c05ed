/**
 * Which devices have stopped the session since it last went on, and when. What one of them sends again is the same stop: it
 * is answered, but neither recorded nor called out anew, unless so much time has gone by that it means more. The first after a
 * return stops anew.
 */
export class StopBook {
  readonly #devices = new Map<string, number>();

  /** To be told of every change. */
  look(isStopped: boolean): void {
    if (!isStopped) this.#devices.clear();
  }

  /**
   * True for a stop that is new; it is counted then.
   * @param atMs session time, ms
   * @param newAfterMs so long after the last that counted, the same device's is new again
   */
  take(device: string, atMs = 0, newAfterMs = Number.POSITIVE_INFINITY): boolean {
    const lastMs = this.#devices.get(device);
    if (lastMs !== undefined && atMs - lastMs < newAfterMs) return false;
    this.#devices.set(device, atMs);
    return true;
  }
}
