import { beginsUpToRpm, longUpToRpm } from './grid.ts';
import { type Belief, SURE } from './track.ts';

/** A speed that was heard and is stood by. */
export interface Claim {
  readonly rpm: number;
  /** 0.9 to 1. */
  readonly confidence: number;
}

/** What comes up anew has to last so long, s: a voice holds no pitch for it. */
const LASTS_S = 0.42;
/** An engine that is new has to be so much surer: talk beats as slowly as a starter turns, for a moment. */
const NEW_SURE = 0.97;
/** At a speed to which an engine does not come from standing, longer: a flat voice may hold a pitch for a while. */
const HIGH_LASTS_S = 2.5;
const REMEMBERED_S = 6;
/** What was lost so shortly ago may go on at once, where it goes on from where it was, or has fired. */
const GOES_ON_S = 1.5;
/** The most that a speed changes, as a share of itself: at once, and for each second. */
export const CHANGES_AT_ONCE = 0.15;
export const CHANGES_PER_S = 1.2;

/** Of what is believed from look to look: what is told, and what is left unsaid. */
export class Claims {
  #sinceS: number | null = null;
  #lastRpm = 0;
  #lastClaim: { readonly atS: number; readonly rpm: number } | null = null;

  next(atS: number, belief: Belief | null): Claim | null {
    const known = this.#lastClaim !== null && atS - this.#lastClaim.atS < REMEMBERED_S;
    if (!belief || belief.confidence < (known ? SURE : NEW_SURE)) {
      this.#sinceS = null;
      return null;
    }
    const { rpm, confidence } = belief;
    const jumped = Math.abs(Math.log(rpm / this.#lastRpm)) > CHANGES_AT_ONCE + CHANGES_PER_S * 0.1;
    if (this.#sinceS === null || jumped)
      this.#sinceS = this.#goesOn(atS, rpm) ? Number.NEGATIVE_INFINITY : atS;
    this.#lastRpm = rpm;
    const lasts = known || rpm <= beginsUpToRpm ? LASTS_S : HIGH_LASTS_S;
    if (atS - this.#sinceS < lasts - 1e-6) return null;
    this.#lastClaim = { atS, rpm };
    return { rpm, confidence };
  }

  /** It has stopped: what is heard next is new. */
  forget(): void {
    this.#sinceS = null;
    this.#lastClaim = null;
  }

  #goesOn(atS: number, rpm: number): boolean {
    if (!this.#lastClaim) return false;
    const forS = atS - this.#lastClaim.atS;
    const change = Math.abs(Math.log(rpm / this.#lastClaim.rpm));
    if (this.#lastClaim.rpm < longUpToRpm && rpm >= longUpToRpm) return forS <= GOES_ON_S;
    return forS <= GOES_ON_S && change <= CHANGES_AT_ONCE + CHANGES_PER_S * forS;
  }
}
