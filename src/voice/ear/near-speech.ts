import { hasPhone } from './moment.ts';
import type { SpeechDetector } from './speech-detector.ts';

/** Probability of near speech from which on an utterance begins, and below which it has ceased. */
const nearBeginsAt = 0.5;
const nearCeasesAt = 0.35;
/** Moments in a row that begin an utterance. */
const momentsToBegin = 2;

/**
 * Moments without a phone in the early outputs after which nobody speaks, however near the noise may seem: longer than
 * any vowel is held (the longest such gap within an utterance: 210 ms in 95 of 100 of the development set).
 */
const momentsToCease = 10;

/**
 * An utterance takes with it what came so long before it was noticed: a soft beginning ("eight", "oh") is only taken for
 * somebody near when it is half over.
 */
const nearPreRollMs = 420;

export interface NearSpeechSettings {
  readonly beginsAt?: number;
  readonly ceasesAt?: number;
  readonly preRollMs?: number;
}

/**
 * Speech is what the network takes for somebody near: bursts of a wrench, a radio and talk further away are louder than
 * any floor, and nobody's answer.
 */
export function createNearSpeech({
  beginsAt = nearBeginsAt,
  ceasesAt = nearCeasesAt,
  preRollMs = nearPreRollMs,
}: NearSpeechSettings = {}): SpeechDetector {
  let run = 0;
  let speech = false;
  let phoneless = 0;
  let wasNear = false;
  return {
    preRollMs,
    next({ moments }) {
      let begins = false;
      for (const moment of moments) {
        const { near } = moment;
        const comesNear = near >= beginsAt && !wasNear;
        wasNear = near >= ceasesAt && (wasNear || near >= beginsAt);
        phoneless = comesNear || hasPhone(moment) ? 0 : phoneless + 1;
        run = near >= beginsAt ? run + 1 : 0;
        begins ||= run >= momentsToBegin;
      }
      // Moments do not end with steps: in between it is as it was.
      if (moments.length > 0)
        speech = phoneless < momentsToCease && moments.some(({ near }) => near >= ceasesAt);
      return { begins, speech };
    },
  };
}
