import { leastStopPerPhone } from '../../ear/stop-spotter.ts';
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
 * made voices of the development split (`npm run hearing:bounds`), as a network before this one heard them.
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

/** Certainties below which what was heard does not count. */
export interface LeastCertainty {
  /** A reply, or a number of several words, is asked for again. */
  readonly reply: number;
  /** The same of a number of one word. */
  readonly oneWordNumber: number;
  /** The same of what lets count what was read back: nothing asks after it any more. */
  readonly agreement: number;
  /** A stop that the phones alone do not make sure of (`leastStopPerPhone`) is none, however near it is. */
  readonly stop: number;
}

/**
 * As shipped, chosen on the development split (`npm run hearing:bounds`), whose figures these are, on two networks one after
 * the other.
 *
 * A reply: 0.75 in place of 0.83 hears 1 of 216 replies of made voices more, or 7, and takes 3 more for another.
 *
 * A number of one word is said again by the tool before anything hangs on it, and little else sounds like it: of 552
 * figures of people (clean, at 10 and 5 dB) 0.7 in place of 0.83 hears 3 more, and 1 more wrong, with the first network, the
 * same with the second; of a radio, of babble, of other words and of talk none.
 *
 * An agreement: in 20 minutes of a radio alone while a read-back waited, 6 were taken with 0.83 from anybody, and none
 * with 0.9 from somebody who is near throughout; of 157 people's "yes", "no" and other words at 10 dB 5 more are asked
 * again, 3 of them one person's.
 *
 * A stop: its bound is set by what is missed, and is the same however near it is. 0.86 where nobody is surely near would
 * have spared most of a radio's stops: a radio and babble alone stop the session 14 and 16 times in 45 minutes, and would
 * have 4 and 8 times. It missed none of 405 stops of people that was heard, but hardly any of those was far, so nothing
 * showed that a far shout would not be missed: left out.
 */
export const leastCertainty: LeastCertainty = {
  reply: 0.83,
  oneWordNumber: 0.7,
  agreement: 0.9,
  stop: 0.56,
};

/** How near somebody has to be who answers: probabilities, 0 to 1, that somebody near spoke. Never asked of a stop. */
export interface NearBounds {
  /** Below it all is background, however far it rises. */
  readonly hardlyNear: number;
  /** Below it what rises less than `clearRiseDb` above the seconds before it is background. */
  readonly surelyNear: number;
  /** The least, from beginning to end, of what lets count what was read back: a radio may not agree to it. */
  readonly nearToAgree: number;
}

/**
 * As shipped. People of the development split who answer are nearer than `hardlyNear` in 98 of 100 replies, at 5 dB too;
 * of a radio hardly anything is, however far it rises: in 40 minutes alone it gave 35 replies and numbers besides
 * agreements, and gives 5. Babble seems nearer, but hardly rises.
 */
export const nearBounds: NearBounds = { hardlyNear: 0.65, surelyNear: 0.85, nearToAgree: 0.6 };

const clearRiseDb = 6;

/** Whether what was heard is no more than what is heard all the time: talk of others, a radio. Never asked of a stop. */
const isBackground = (
  { riseDb, near }: Pick<Features, 'riseDb' | 'near'>,
  { hardlyNear, surelyNear }: NearBounds,
): boolean => near < hardlyNear || (riseDb < clearRiseDb && near < surelyNear);

/** What a wording comes to by what is known of it. */
export type Judgement = 'stop' | 'background' | 'taken' | 'doubtful';

/** @param stands what the wording stands for: which certainty it needs */
export function judge(
  features: Features,
  stands: keyof LeastCertainty,
  least: LeastCertainty = leastCertainty,
  near: NearBounds = nearBounds,
): Judgement {
  const stops = stands === 'stop';
  // Talk around a stop, or the least doubt of anything else, does not make it less of a stop.
  if (stops && features.worstWord >= leastStopPerPhone) return 'stop';
  // Talk and a radio that go on all the time are not asked to say it again either.
  if (!stops && isBackground(features, near)) return 'background';
  if (stands === 'agreement' && features.leastNear < near.nearToAgree) return 'doubtful';
  return certaintyOf(features) >= least[stands] ? 'taken' : 'doubtful';
}

/** Fewer phones than this in an utterance that is not sure, and nobody said anything: "oh" is one, and so is a knock. */
export const leastPhones = 2;
