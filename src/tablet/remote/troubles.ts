const TROUBLES_SHOWN = 5;
const REFUSAL_SHOWN_MS = 8_000;

/** What this device has to tell its holder: troubles that stay, the last ones, and for a while the last refusal. */
export class Troubles {
  readonly #onChange: () => void;
  readonly #after: (ms: number, act: () => void) => void;
  #refusals = 0;
  sentences: readonly string[] = [];
  refusal = '';

  /** @param after calls back when so many milliseconds have passed */
  constructor(onChange: () => void, after: (ms: number, act: () => void) => void) {
    this.#onChange = onChange;
    this.#after = after;
  }

  /** One that comes again is the last one. */
  add(sentence: string): void {
    this.sentences = [...this.sentences.filter(each => each !== sentence), sentence].slice(-TROUBLES_SHOWN);
    this.#onChange();
  }

  /** A refusal is about one moment: nobody has to read it later. */
  refuse(sentence: string): void {
    this.refusal = sentence;
    this.#refusals += 1;
    const nth = this.#refusals;
    this.#after(REFUSAL_SHOWN_MS, () => {
      if (this.#refusals !== nth) return;
      this.refusal = '';
      this.#onChange();
    });
    this.#onChange();
  }
}
