import { levelDbfs } from '../levels.ts';
import { NoiseFloor } from './noise-floor.ts';
import { stepLength, stepMs } from './sound.ts';
import type { SpeechDetector } from './speech-detector.ts';

/** Rise above the noise floor that counts as speech, and below which it has ceased. */
const beginDb = 12;
const ceaseDb = 8;
/** Speech steps in a row that begin an utterance: a click or a dropped spanner is shorter. */
export const stepsToBegin = 3;
/** Quieter than this is never speech, however silent the line. */
const faintestSpeechDbfs = -62;
/** First-order high-pass: engine and mains rumble lie below the voice. */
const preEmphasis = 0.95;

/** Speech is what is louder than the noise: all that can be told without a network. */
export function createLoudSpeech(): SpeechDetector {
  const floor = new NoiseFloor();
  let lastSample = 0;
  let run = 0;
  const emphasized = (samples: Float32Array) => {
    const before = lastSample;
    lastSample = samples[stepLength - 1] ?? 0;
    return samples.map((sample, i) => sample - preEmphasis * (samples[i - 1] ?? before));
  };
  return {
    preRollMs: 300 + stepsToBegin * stepMs,
    next({ heard }) {
      const db = levelDbfs(emphasized(heard));
      floor.update(db);
      const isAbove = (riseDb: number) => db > Math.max(floor.levelDb + riseDb, faintestSpeechDbfs);
      run = isAbove(beginDb) ? run + 1 : 0;
      return { begins: run >= stepsToBegin, speech: isAbove(ceaseDb) };
    },
  };
}
