import type { SpokenLanguage, Synthesizer } from '../ports.ts';
import { type Surroundings, thisComputer } from '../programs.ts';
import { FliteSynthesizer } from './flite.ts';
import { ReadingPace } from './reading-pace.ts';
import { firstInstalled, type SystemSynthesizer, SystemVoice } from './system-voice.ts';

export interface ChosenVoice {
  readonly synthesizer: Synthesizer;
  /** It makes no sound at all: sentences are only shown. */
  readonly soundless: boolean;
  /** What people have to know about it: one sentence. */
  readonly remark?: string;
}

/** Synthesizers of the system for languages that have no embedded voice; `say` was not tried. */
const systemSynthesizers: Readonly<Record<Exclude<SpokenLanguage, 'en'>, readonly SystemSynthesizer[]>> = {
  fr: [
    { program: 'espeak-ng', args: path => ['-v', 'fr', '-s', '150', '--stdin', '-w', path] },
    { program: 'say', args: path => ['-v', 'Thomas', '--data-format=LEI16@22050', '-o', path, '-f', '-'] },
  ],
};

const names: Readonly<Record<Exclude<SpokenLanguage, 'en'>, string>> = { fr: 'French' };

/**
 * The embedded voice, which is English, or a synthesizer that is installed on the computer. With neither,
 * sentences are silent. What is not embedded is said in `remark`.
 */
export function chooseVoice(
  language: SpokenLanguage,
  surroundings: Surroundings = thisComputer,
): ChosenVoice {
  if (language === 'en') return { synthesizer: new FliteSynthesizer(), soundless: false };
  const possible = systemSynthesizers[language];
  const found = firstInstalled(possible, surroundings);
  const lacking = `There is no embedded ${names[language]} voice`;
  if (found) {
    return {
      synthesizer: new SystemVoice(found, surroundings.env),
      soundless: false,
      remark: `${lacking}; this computer's ${found.program} speaks.`,
    };
  }
  const looked = possible.map(({ program }) => program).join(' and ');
  return {
    synthesizer: new ReadingPace(),
    soundless: true,
    remark: `${lacking}, and this computer has none (looked for ${looked}); read the screen, or install espeak-ng.`,
  };
}
