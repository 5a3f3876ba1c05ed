import type { Features } from './features.ts';

/**
 * How sure a wording is, from what is known of it: the probability that it is what was said, by logistic regression.
 * Provisional: to be fitted on the development set.
 */
const weights: Readonly<
  Record<'constant' | 'perPhone' | 'worstWord' | 'margin' | 'unfinished' | 'talk' | 'near', number>
> = {
  constant: 1,
  perPhone: 2,
  worstWord: 0.7,
  margin: 0.4,
  unfinished: -0.3,
  talk: -0.8,
  near: 2,
};

/** More of a margin makes nothing surer. */
const enoughMargin = 12;

export function certaintyOf(features: Features): number {
  const evidence =
    weights.constant +
    weights.perPhone * features.perPhone +
    weights.worstWord * features.worstWord +
    weights.margin * Math.min(features.margin, enoughMargin) +
    weights.unfinished * features.unfinished +
    weights.talk * (features.phonesBefore + features.phonesAfter) +
    weights.near * features.near;
  return 1 / (1 + Math.exp(-evidence));
}

/** Below this certainty a reply is asked for again. */
export const leastCertainty = 0.81;

/** Fewer phones than this in an utterance, and nobody said anything. */
export const leastPhones = 2;
