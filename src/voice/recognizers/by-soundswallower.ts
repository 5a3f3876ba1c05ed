import { createSoundSwallowerDecoder } from '../decoders/soundswallower/decoder.ts';
import type { Engine } from '../decoders/soundswallower/engine.ts';
import { createDenoisingFrontEnd } from '../denoise/denoising-front-end.ts';
import { createEar } from '../ear/ear.ts';
import { createLoudSpeech } from '../ear/loud-speech.ts';
import { createPlainFrontEnd } from '../front-end.ts';
import type { SoundRecognizer, SpokenLanguage } from '../ports.ts';

export interface SoundSwallowerEarOptions {
  readonly language: SpokenLanguage;
  /** Whether noise is taken out first; it is unless this is false. */
  readonly denoise?: boolean;
  readonly trailingSilenceMs?: number | undefined;
}

/**
 * Hears with SoundSwallower on a loaded engine: speech is what is louder than the noise, and stops are heard in it.
 * @throws VoiceError `modelUnusable` when the model is damaged.
 */
export async function createSoundSwallowerEar(
  engine: Engine,
  { language, denoise = true, trailingSilenceMs }: SoundSwallowerEarOptions,
): Promise<SoundRecognizer> {
  const decoder = await createSoundSwallowerDecoder(engine, language);
  return createEar({
    frontEnd: denoise ? createDenoisingFrontEnd() : createPlainFrontEnd(),
    decoder,
    speech: createLoudSpeech(),
    trailingSilenceMs,
  });
}
