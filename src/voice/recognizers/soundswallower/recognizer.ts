import type { SoundRecognizer } from '../../ports.ts';
import { createEar, type EarOptions } from './ear.ts';
import { loadEngine, packagedModel } from './load-node.ts';

/**
 * The embedded recognizer in Node.
 * @param options.model directory of another acoustic model of the same kind than the packaged one
 * @throws VoiceError `modelUnusable` when the model is missing or damaged.
 */
export async function createEmbeddedRecognizer({
  model,
  ...options
}: EarOptions & { readonly model?: string } = {}): Promise<SoundRecognizer> {
  return createEar(await loadEngine(model ?? packagedModel(options.language)), options);
}
