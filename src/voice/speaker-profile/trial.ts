import { createMatcher, isMeant } from '../meaning.ts';
import type { Grammar, Heard } from '../ports.ts';
import { type Adaptation, highestCertainty, shipped, shippedCertainty, type Tally } from './profile.ts';

/** Something to be read aloud, and what may be said at that moment. */
export interface Prompt {
  readonly text: string;
  readonly grammar: Grammar;
}

export type Outcome = keyof Tally;

/** How one prompt was heard. */
export interface Trial {
  readonly outcome: Outcome;
  /** Of what was heard, right or wrong; 0 where nothing counted. */
  readonly certainty: number;
}

/**
 * Holds what was heard against what was to be read. Nothing heard, or nothing that counts, is unclear; a second answer
 * to one prompt makes it wrong, because a session would act on both.
 * @throws Error for a prompt that means nothing in its own grammar: a fault of the list of prompts
 */
export function trialOf({ text, grammar }: Prompt, heard: readonly Heard[]): Trial {
  const meaning = createMatcher(grammar).meaningOf(text);
  if (!meaning) throw new Error(`The prompt "${text}" means nothing in its grammar.`);
  const counted = heard.filter(each => each.kind !== 'unclear');
  const [first, second] = counted;
  if (!first) return { outcome: 'unclear', certainty: 0 };
  const certainty = first.kind === 'stop' ? 1 : first.confidence;
  return { outcome: !second && isMeant(meaning, first) ? 'right' : 'wrong', certainty };
}

/** The trials counted, as they would be with this least certainty; a stop is never held back by it. */
export function tallyOf(trials: readonly Trial[], leastCertainty: number): Tally {
  const tally = { right: 0, unclear: 0, wrong: 0 };
  for (const { outcome, certainty } of trials) tally[certainty < leastCertainty ? 'unclear' : outcome] += 1;
  return tally;
}

/** A wrong reply costs what several repeats cost. */
const WRONG_COSTS = 3;

const scoreOf = ({ right, wrong }: Tally): number => right - WRONG_COSTS * wrong;

/** Better, and nothing more is heard wrong. */
export const isBetter = (after: Tally, before: Tally): boolean =>
  scoreOf(after) > scoreOf(before) && after.wrong <= before.wrong;

const CERTAINTY_STEP = 0.02;

/** The bounds that may be tried: as shipped, and above, as far as a person's own may go. */
const bounds = [0, 1, 2, 3, 4, 5, 6, 7]
  .map(n => Number((shippedCertainty + n * CERTAINTY_STEP).toFixed(2)))
  .filter(bound => bound <= highestCertainty);

/** The bound that serves these trials best; the lowest of those that serve alike. */
export function bestBound(trials: readonly Trial[]): number {
  let best = shippedCertainty;
  for (const bound of bounds) {
    if (isBetter(tallyOf(trials, bound), tallyOf(trials, best))) best = bound;
  }
  return best;
}

/** One setting of the ear, and how the prompts were heard with it: those it is chosen on, and those held out. */
export interface Tried {
  readonly adaptation: Adaptation;
  readonly training: readonly Trial[];
  readonly heldOut: readonly Trial[];
}

export interface Choice {
  readonly adaptation: Adaptation;
  readonly heldOut: { readonly before: Tally; readonly after: Tally };
}

/**
 * Chooses on the training prompts alone, and keeps the choice only where the held-out ones are heard better with it;
 * otherwise everything stays as shipped.
 * @param asShipped how it was heard with nothing changed
 */
export function choose(asShipped: Tried, others: readonly Tried[]): Choice {
  let best = asShipped;
  let bestTally = tallyOf(asShipped.training, shippedCertainty);
  let leastCertainty = shippedCertainty;
  for (const tried of [asShipped, ...others]) {
    const bound = bestBound(tried.training);
    const tally = tallyOf(tried.training, bound);
    if (isBetter(tally, bestTally)) [best, bestTally, leastCertainty] = [tried, tally, bound];
  }
  const before = tallyOf(asShipped.heldOut, shippedCertainty);
  const after = tallyOf(best.heldOut, leastCertainty);
  return isBetter(after, before)
    ? { adaptation: { ...best.adaptation, leastCertainty }, heldOut: { before, after } }
    : { adaptation: shipped, heldOut: { before, after: before } };
}

/** Speech of a headset that uses its range, with room for a shout (common practice, no published source). */
const WANTED_SPEECH_DBFS = -24;
const LARGEST_GAIN_DB = 18;

/** The gain that would bring speech to the usual level: 0 to 18 dB, in steps of 3; 0 where nothing was measured. */
export function gainFor(speechDbfs: number): number {
  const lacking = WANTED_SPEECH_DBFS - speechDbfs;
  if (!(lacking > 0)) return 0;
  return Math.min(LARGEST_GAIN_DB, Math.floor(lacking / 3) * 3);
}

/** Silence that ends a reply of somebody who pauses between digits. */
const PATIENT_MS = 400;

/** The settings that are tried: as shipped first, then louder where that is needed, then more patient as well. */
export function candidates(speechDbfs: number): readonly Adaptation[] {
  const louder = { ...shipped, gainDb: gainFor(speechDbfs) };
  const patient = { ...louder, trailingSilenceMs: PATIENT_MS };
  return louder.gainDb > 0 ? [shipped, louder, patient] : [shipped, patient];
}
