import { voiceLanguage } from '../../voice/languages/index.ts';
import type { SpokenLanguage } from '../../voice/ports.ts';
import { type ChosenVoice, chooseVoice } from '../../voice/speakers/choose-voice.ts';
import { readInSilence } from '../../voice/speakers/read-in-silence.ts';
import type { RunOptions } from './options.ts';

/** The voice, already loading in its own thread: its first sentence would be late otherwise. */
export function warmVoice(language: SpokenLanguage): ChosenVoice {
  const voice = chooseVoice(language);
  // A voice that fails says so with the first real sentence.
  if (voiceLanguage(language).voice === 'embedded') voice.synthesizer.synthesize('ready').catch(() => {});
  return voice;
}

/** The voice that these options ask for: where nothing is to be heard nothing is made into sound, only its time passes. */
export const voiceFor = (
  { silent, speakTo }: Pick<RunOptions, 'silent' | 'speakTo'>,
  language: SpokenLanguage,
): ChosenVoice =>
  silent && speakTo === undefined ? { synthesizer: readInSilence, soundless: true } : warmVoice(language);
