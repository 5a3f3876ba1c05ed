import { voiceLanguage } from '../languages/index.ts';
import type { SpokenLanguage, Synthesizer } from '../ports.ts';
import { type Surroundings, thisComputer } from '../programs.ts';
import { FliteSynthesizer } from './flite.ts';
import { readInSilence } from './read-in-silence.ts';
import { firstInstalled, SystemVoice } from './system-voice.ts';

export interface ChosenVoice {
  readonly synthesizer: Synthesizer;
  /** It makes no sound at all: sentences are only shown. */
  readonly soundless: boolean;
  /** What people have to know about it: one sentence. */
  readonly remark?: string;
}

/**
 * The embedded voice, which is English, or a synthesizer that is installed on the computer. With neither,
 * sentences are silent. What is not embedded is said in `remark`.
 */
export function chooseVoice(
  language: SpokenLanguage,
  surroundings: Surroundings = thisComputer,
): ChosenVoice {
  const { voice: possible, englishName } = voiceLanguage(language);
  if (possible === 'embedded') return { synthesizer: new FliteSynthesizer(), soundless: false };
  const found = firstInstalled(possible, surroundings);
  const lacking = `There is no embedded ${englishName} voice`;
  if (found) {
    return {
      synthesizer: new SystemVoice(found, surroundings.env),
      soundless: false,
      remark: `${lacking}; this computer's ${found.program} speaks.`,
    };
  }
  const looked = possible.map(({ program }) => program).join(' and ');
  return {
    synthesizer: readInSilence,
    soundless: true,
    remark: `${lacking}, and this computer has none (looked for ${looked}); read the screen, or install espeak-ng.`,
  };
}
