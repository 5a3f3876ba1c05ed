import type { Hypothesis } from '../../phone-network/search.ts';

/** What is known of an utterance when it is decided; likelihoods are natural logarithms. */
export interface Features {
  /** Likelihood of the wording against the likeliest phones of the same moments, for each of its phones: 0 or less. */
  readonly perPhone: number;
  /** The same of its least likely word. */
  readonly worstWord: number;
  /** How much likelier it is than the likeliest wording of another meaning, at most `largestMargin`. */
  readonly margin: number;
  /** How much likelier something is that was broken off in the middle; 0 where nothing is. */
  readonly unfinished: number;
  readonly phones: number;
  /** Moments from its first phone to its last. */
  readonly moments: number;
  /** Phones of other talk that were heard before it and after it. */
  readonly phonesBefore: number;
  readonly phonesAfter: number;
  /** Mean probability, over its moments, that somebody near was speaking. */
  readonly near: number;
}

export const largestMargin = 30;

/** What was heard of an utterance besides its wordings. */
export interface Heard {
  /** For each moment the number of phones that were heard up to it. */
  readonly phonesUpTo: readonly number[];
  /** For each moment the probability that somebody near was speaking. */
  readonly near: readonly number[];
  /** How late the phones are, against the rest of their moment. */
  readonly phonesLateMoments: number;
  readonly unfinishedScore: number;
}

const mean = (values: readonly number[]) =>
  values.reduce((sum, each) => sum + each, 0) / Math.max(1, values.length);

/** @param other the likeliest wording of another meaning, if there is one */
export function featuresOf(
  { words, score, to }: Hypothesis,
  other: Hypothesis | undefined,
  { phonesUpTo, near, phonesLateMoments, unfinishedScore }: Heard,
): Features {
  const from = words[0]?.from ?? 0;
  const phones = words.reduce((sum, word) => sum + word.phones, 0);
  const [nearFrom, nearTo] = [from, to].map(moment => Math.max(0, moment - phonesLateMoments));
  const upTo = (moment: number) => phonesUpTo[moment] ?? 0;
  return {
    perPhone: words.reduce((sum, word) => sum + word.score, 0) / phones,
    worstWord: Math.min(...words.map(word => word.score / word.phones)),
    margin: Math.min(largestMargin, score - (other?.score ?? Number.NEGATIVE_INFINITY)),
    unfinished: Math.max(0, unfinishedScore - score),
    phones,
    moments: to - from,
    phonesBefore: upTo(from - 1),
    phonesAfter: upTo(phonesUpTo.length - 1) - upTo(to - 1),
    near: mean(near.slice(nearFrom, nearTo)),
  };
}
