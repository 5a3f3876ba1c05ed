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
 * How the evidence is weighed: the probability that the wording is what was said, by logistic regression. Fitted by
 * `npm run hearing:bounds` on 824 replies and 399 stretches of talk of people of the development split, clean to 0 dB.
 */
const weights: Readonly<Record<keyof Evidence | 'constant', number>> = {
  constant: 0.138,
  perPhone: 1.245,
  worstWord: 0.583,
  margin: 0.311,
  unfinished: 0.157,
  talkAround: -1.694,
  near: 1.031,
  shortness: 0.001,
};

/** How sure a wording is, from what is known of it: 0 to 1. */
export function certaintyOf(features: Features): number {
  const evidence = evidenceOf(features);
  let sum = weights.constant;
  for (const key of Object.keys(evidence) as (keyof Evidence)[]) sum += weights[key] * evidence[key];
  return 1 / (1 + Math.exp(-sum));
}

/**
 * Below this certainty a reply is asked for again. On the same set 0.6 took 5 of 399 stretches of talk for a reply, and
 * above it right answers were lost faster than wrong ones.
 */
export const leastCertainty = 0.6;

/** Fewer phones than this in an utterance that is not sure, and nobody said anything: "oh" is one, and so is a knock. */
export const leastPhones = 2;
