import type { Features } from './features.ts';

/** More of a margin makes nothing surer. */
const enoughMargin = 12;

/** What speaks for a wording and against it, as it is weighed. */
export const evidenceOf = (features: Features) => ({
  perPhone: features.perPhone,
  worstWord: features.worstWord,
  margin: Math.min(features.margin, enoughMargin),
  unfinished: Math.min(features.unfinished, enoughMargin),
  talkAround: features.phonesBefore + features.phonesAfter,
  near: features.near,
  /** A short wording is more easily like something else. */
  shortness: 1 / features.phones,
});

export type Evidence = ReturnType<typeof evidenceOf>;

/**
 * How the evidence is weighed: the probability that the wording is what was said, by logistic regression. Chosen by hand.
 * What `npm run hearing:bounds` fits on people of the development split takes less talk for a reply (2 of 197 stretches
 * in place of 4), but asks the recorded sessions' voices again and again for words that it should know.
 */
const weights: Readonly<Record<keyof Evidence | 'constant', number>> = {
  constant: 1,
  perPhone: 2,
  worstWord: 0.7,
  margin: 0.4,
  unfinished: -0.3,
  talkAround: -0.8,
  near: 2,
  shortness: 0,
};

/** How sure a wording is, from what is known of it: 0 to 1. */
export function certaintyOf(features: Features): number {
  const evidence = evidenceOf(features);
  let sum = weights.constant;
  for (const key of Object.keys(evidence) as (keyof Evidence)[]) sum += weights[key] * evidence[key];
  return 1 / (1 + Math.exp(-sum));
}

/**
 * Below this certainty a reply is asked for again: of people of the development split it takes 4 of 197 stretches of talk
 * and 3 of 249 other words for a reply, clean to 5 dB.
 */
export const leastCertainty = 0.81;

/** Fewer phones than this in an utterance that is not sure, and nobody said anything: "oh" is one, and so is a knock. */
export const leastPhones = 2;
