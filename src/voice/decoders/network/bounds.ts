import type { Features } from './features.ts';

/** More of a margin makes nothing surer. */
const enoughMargin = 12;
/** Less of it is a doubt between two meanings. */
const doubtfulMargin = 3;

/** What speaks for a wording and against it, as it is weighed. */
export const evidenceOf = (features: Features) => ({
  perPhone: features.perPhone,
  doubt: Math.min(features.margin, doubtfulMargin),
  margin: Math.min(features.margin, enoughMargin),
  talkAround: features.phonesBefore + features.phonesAfter,
  near: features.near,
  /** A short wording is more easily like something else. */
  shortness: 1 / features.phones,
});

export type Evidence = ReturnType<typeof evidenceOf>;

/**
 * How the evidence is weighed: the probability that the wording is what was said, by logistic regression on people and
 * made voices of the development split (`npm run hearing:bounds`).
 */
const weights: Readonly<Record<keyof Evidence | 'constant', number>> = {
  constant: 0.92,
  perPhone: 1.21,
  doubt: 0.69,
  margin: 0.2,
  talkAround: -1.63,
  near: 0.13,
  shortness: -0.92,
};

/** How sure a wording is, from what is known of it: 0 to 1. */
export function certaintyOf(features: Features): number {
  const evidence = evidenceOf(features);
  let sum = weights.constant;
  for (const key of Object.keys(evidence) as (keyof Evidence)[]) sum += weights[key] * evidence[key];
  return 1 / (1 + Math.exp(-sum));
}

/**
 * Below this certainty a reply is asked for again: of people of the development split it takes, clean and at 10 dB, 3 of
 * 316 stretches of talk and 4 of 248 other words for a reply, and of made talk at 15 dB none.
 */
export const leastCertainty = 0.56;

/**
 * What rises less than `clearRiseDb` above the seconds before it is background where the network is not sure that it is
 * near. Of right replies of the development split at 10 and 5 dB this takes 1 of 520 for background; of 43 things that
 * were taken for a reply in 160 s of babble alone, as loud as beside speech at 5 dB, it leaves 3. The rise alone, from
 * 1.5 dB on, spares no more of them, and takes 4 of 242 right replies at 5 dB for background.
 */
const clearRiseDb = 6;
const surelyNear = 0.95;

/** Whether what was heard is no more than what is heard all the time: talk of others, a radio. Never asked of a stop. */
export const isBackground = ({ riseDb, near }: Pick<Features, 'riseDb' | 'near'>): boolean =>
  riseDb < clearRiseDb && near < surelyNear;

/** Fewer phones than this in an utterance that is not sure, and nobody said anything: "oh" is one, and so is a knock. */
export const leastPhones = 2;
