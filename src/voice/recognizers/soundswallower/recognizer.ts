import type { SoundRecognizer, SpokenLanguage } from '../../ports.ts';
import { createEar } from './ear.ts';
import { loadEngine, packagedModel } from './load-node.ts';

/**
 * The embedded recognizer in Node.
 * @param options.model directory of another acoustic model of the same kind than the packaged one
 * @param options.language what is spoken: English when it is not named
 * @throws VoiceError `modelUnusable` when the model is missing or damaged.
 */
export async function createEmbeddedRecognizer({
  model,
  language = 'en',
}: {
  readonly model?: string;
  readonly language?: SpokenLanguage;
} = {}): Promise<SoundRecognizer> {
  return createEar(await loadEngine(model ?? packagedModel(language)), language);
}
