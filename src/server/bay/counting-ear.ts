/** Without a word for so long a microphone no longer counts, ms: it speaks seven times a second. */
const SILENT_MS = 2000;

/**
 * Which microphone of a bay counts for the engine: one at a time, so that two never contradict one another. It is that of
 * the device that leads, whose answers it is held against; while that one hears nothing, the second person's, then any
 * other. One that counts goes on until it falls silent or a better placed one is heard.
 */
export class CountingEar {
  readonly #placeOf: (device: string) => number;
  #last: { readonly device: string; readonly atMs: number } | null = null;

  /** @param placeOf the lower, the sooner it counts */
  constructor(placeOf: (device: string) => number) {
    this.#placeOf = placeOf;
  }

  /** Whether what this device hears at this moment counts. */
  counts(device: string, nowMs: number): boolean {
    const last = this.#last && nowMs - this.#last.atMs <= SILENT_MS ? this.#last : null;
    if (last && last.device !== device && this.#placeOf(device) >= this.#placeOf(last.device)) return false;
    this.#last = { device, atMs: nowMs };
    return true;
  }
}
