import { NoiseFloor } from './noise-floor.ts';
import { stepMs } from './sound.ts';
import type { SpeechDetector } from './speech-detector.ts';
import { createVoicePower, powerDbfs } from './voice-power.ts';

/** Rise above the noise floor that counts as speech, and below which it has ceased. */
const beginDb = 12;
const ceaseDb = 8;
/** Speech steps in a row that begin an utterance: a click or a dropped spanner is shorter. */
const stepsToBegin = 3;
/** Quieter than this is never speech, however silent the line. */
const faintestSpeechDbfs = -62;

/** Speech is what is louder than the noise: all that can be told without a network. */
export function createLoudSpeech(): SpeechDetector {
  const floor = new NoiseFloor();
  const voicePower = createVoicePower();
  let run = 0;
  return {
    preRollMs: 300 + stepsToBegin * stepMs,
    next({ heard }) {
      const db = powerDbfs(voicePower(heard));
      floor.update(db);
      const isAbove = (riseDb: number) => db > Math.max(floor.levelDb + riseDb, faintestSpeechDbfs);
      run = isAbove(beginDb) ? run + 1 : 0;
      return { begins: run >= stepsToBegin, speech: isAbove(ceaseDb) };
    },
  };
}
