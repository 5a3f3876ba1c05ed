import { AWAY_AFTER_MS } from '../../server/protocol/index.ts';

/** How it stands with a laptop that does not answer. */
export type Away =
  /** It is there, or has been a moment ago. */
  | 'no'
  /** Nobody leads: everything is to be made safe. */
  | 'away'
  /** The same, and this device led and has all that was recorded: it may go on by itself. */
  | 'mayGoOn';

/** Notices that the laptop is away, once each time, and when it is back. */
export class AwayWatch {
  readonly #after: (ms: number, act: () => void) => void;
  readonly #onAway: () => void;
  #broken = 0;
  #isBroken = false;
  isAway = false;

  /** @param after calls back when so many milliseconds have passed */
  constructor(after: (ms: number, act: () => void) => void, onAway: () => void) {
    this.#after = after;
    this.#onAway = onAway;
  }

  /** Whether the line is there, told at each change. */
  look(isConnected: boolean): void {
    if (isConnected) {
      this.#isBroken = false;
      this.isAway = false;
      return;
    }
    if (this.#isBroken) return;
    this.#isBroken = true;
    this.#broken += 1;
    const nth = this.#broken;
    this.#after(AWAY_AFTER_MS, () => {
      if (!this.#isBroken || this.#broken !== nth) return;
      this.isAway = true;
      this.#onAway();
    });
  }
}
