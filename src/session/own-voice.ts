/** A word may be heard so long after it was said: by a device in another corner, and over a slow line. */
const HEARD_LATE_MS = 1500;

/** What the tool itself says just now: nothing in it may be taken for what somebody calls out. */
export class OwnVoice {
  readonly #nowMs: () => number;
  #sentences: { readonly text: string; readonly untilMs: number }[] = [];

  constructor(nowMs: () => number) {
    this.#nowMs = nowMs;
  }

  /** @param text what begins to sound; undefined when it is over, or cut */
  speaks(text: string | undefined): void {
    const nowMs = this.#nowMs();
    this.#sentences = this.#sentences
      .filter(({ untilMs }) => untilMs > nowMs)
      .map(({ text, untilMs }) => ({ text, untilMs: Math.min(untilMs, nowMs + HEARD_LATE_MS) }));
    if (text !== undefined) this.#sentences.push({ text, untilMs: Number.POSITIVE_INFINITY });
  }

  /** Whether something is in what sounds, or has just sounded. */
  has(isIn: (text: string) => boolean): boolean {
    const nowMs = this.#nowMs();
    return this.#sentences.some(({ text, untilMs }) => untilMs > nowMs && isIn(text));
  }
}
