import type { SpeechDetector } from './speech-detector.ts';

/** Probability of near speech from which on an utterance begins, and below which it has ceased. */
export const nearBeginsAt = 0.5;
export const nearCeasesAt = 0.35;
/** Moments in a row that begin an utterance. */
export const momentsToBegin = 2;

/**
 * Speech is what the network takes for somebody near: bursts of a wrench, a radio and talk further away are louder than
 * any floor, and nobody's answer.
 */
export function createNearSpeech(): SpeechDetector {
  let run = 0;
  let speech = false;
  return {
    // Noticed after two moments, by a network that waits up to 80 ms; and a breath more.
    preRollMs: 240,
    next({ moments }) {
      let begins = false;
      for (const { near } of moments) {
        run = near >= nearBeginsAt ? run + 1 : 0;
        begins ||= run >= momentsToBegin;
      }
      // Moments do not end with steps: in between it is as it was.
      if (moments.length > 0) speech = moments.some(({ near }) => near >= nearCeasesAt);
      return { begins, speech };
    },
  };
}
