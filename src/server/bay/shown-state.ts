import type { BayState } from '../protocol/index.ts';
import { FrameStream } from './frame-stream.ts';

/** What the faces of a bay are shown of its state. */
export class ShownState {
  readonly stream: FrameStream;
  readonly #state: () => BayState;
  readonly #sessionMs: () => number;
  #isDue = false;

  constructor(state: () => BayState, sessionMs: () => number) {
    this.#state = state;
    this.#sessionMs = sessionMs;
    this.stream = new FrameStream(state());
  }

  /** Tells the faces what they do not know yet, once for all that happens in this turn of the program. */
  show(): void {
    if (this.#isDue) return;
    this.#isDue = true;
    setImmediate(() => {
      this.#isDue = false;
      this.showNow();
    });
  }

  showNow(): void {
    this.stream.show(this.#state(), this.#sessionMs());
  }
}
