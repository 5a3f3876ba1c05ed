/** Whoever asks by names that are not known has the machine look no oftener than this. */
const LOOKED_AT_MS = 1000;

/** Watches what addresses this machine has: a lease runs out, another network is joined, while a session goes on. */
export class AddressWatch {
  readonly #read: () => readonly string[];
  readonly #nowMs: () => number;
  readonly #changed: (addresses: readonly string[], added: readonly string[]) => void;
  #addresses: readonly string[];
  #lookedMs: number;

  /** @param changed called with all that there are by now, and with those of them that are new */
  constructor(
    read: () => readonly string[],
    nowMs: () => number,
    changed: (addresses: readonly string[], added: readonly string[]) => void,
  ) {
    this.#read = read;
    this.#nowMs = nowMs;
    this.#changed = changed;
    this.#addresses = read();
    this.#lookedMs = nowMs();
  }

  get addresses(): readonly string[] {
    return this.#addresses;
  }

  look(): void {
    const nowMs = this.#nowMs();
    if (nowMs - this.#lookedMs < LOOKED_AT_MS) return;
    this.#lookedMs = nowMs;
    const before = this.#addresses;
    const now = this.#read();
    const added = now.filter(address => !before.includes(address));
    if (added.length === 0 && now.length === before.length) return;
    this.#addresses = now;
    this.#changed(now, added);
  }
}
