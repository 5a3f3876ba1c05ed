import { stepMs } from '../../ear/sound.ts';
import { powerDbfs } from '../../ear/voice-power.ts';
import { momentMs } from '../../phone-network/network.ts';
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
  /** The least of these probabilities. */
  readonly leastNear: number;
  /** How far its loudest part stands above the seconds before it: dB, at most `largestRiseDb`. */
  readonly riseDb: number;
}

const largestMargin = 30;
const largestRiseDb = 60;

/** A phone is told while it lasts, and begins before. */
const phoneBeginsSteps = 15;
/** What is loudest in a word: its vowel. */
const loudestSteps = 8;

/** What was heard of an utterance besides its wordings. */
export interface Heard {
  /** For each moment the number of phones that were heard up to it. */
  readonly phonesUpTo: readonly number[];
  /** For each moment the probability that somebody near was speaking. */
  readonly near: readonly number[];
  /** How late the phones are, against the rest of their moment. */
  readonly phonesLateMoments: number;
  readonly unfinishedScore: number;
  /** Power of each step, where the voice lies. */
  readonly powers: readonly number[];
  /** Level of the seconds before; undefined where it is not known. */
  readonly backgroundDbfs: number | undefined;
}

const mean = (values: readonly number[]) =>
  values.reduce((sum, each) => sum + each, 0) / Math.max(1, values.length);

/** @param from @param to moments of the first phone, and after the last, in the outputs that are late */
function riseOf(from: number, to: number, { powers, backgroundDbfs, phonesLateMoments }: Heard): number {
  if (backgroundDbfs === undefined) return largestRiseDb;
  const stepOf = (moment: number) => Math.round(((moment - phonesLateMoments) * momentMs) / stepMs);
  const last = Math.max(loudestSteps, stepOf(to));
  const loudest = powers
    .slice(Math.max(0, stepOf(from) - phoneBeginsSteps), last)
    .sort((a, b) => b - a)
    .slice(0, loudestSteps);
  return Math.min(largestRiseDb, powerDbfs(mean(loudest)) - backgroundDbfs);
}

/** @param other the likeliest wording of another meaning, if there is one */
export function featuresOf(
  { words, score, to }: Hypothesis,
  other: Hypothesis | undefined,
  heard: Heard,
): Features {
  const { phonesUpTo, near, phonesLateMoments, unfinishedScore } = heard;
  const from = words[0]?.from ?? 0;
  const phones = words.reduce((sum, word) => sum + word.phones, 0);
  const [nearFrom, nearTo] = [from, to].map(moment => Math.max(0, moment - phonesLateMoments));
  const nears = near.slice(nearFrom, nearTo);
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
    near: mean(nears),
    leastNear: nears.length === 0 ? 0 : Math.min(...nears),
    riseDb: riseOf(from, to, heard),
  };
}
