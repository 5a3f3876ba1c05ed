/** Runs an action at most once in a while: at once after a quiet time, else at the end of the while. */
export class Throttle {
  readonly #action: () => void;
  readonly #whileMs: number;
  #timer: NodeJS.Timeout | undefined;
  #again = false;

  constructor(action: () => void, whileMs: number) {
    this.#action = action;
    this.#whileMs = whileMs;
  }

  readonly ask = (): void => {
    if (this.#timer) this.#again = true;
    else this.#run();
  };

  cancel(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#again = false;
  }

  #run(): void {
    this.#again = false;
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      if (this.#again) this.#run();
    }, this.#whileMs);
    this.#action();
  }
}
