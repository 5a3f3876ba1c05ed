import { loadWeights } from '../../phone-network/load-node.ts';
import type { SoundRecognizer } from '../../ports.ts';
import { createEar, type EarOptions } from './ear.ts';
import { loadEngine, packagedModel } from './load-node.ts';

/**
 * The embedded recognizer in Node. For English the phone network listens with it, unless the sound is to be heard as it
 * is (`denoise: false`).
 * @param options.model directory of another acoustic model of the same kind than the packaged one
 * @throws VoiceError `modelUnusable` when a model is missing or damaged.
 */
export async function createEmbeddedRecognizer({
  model,
  ...options
}: EarOptions & { readonly model?: string } = {}): Promise<SoundRecognizer> {
  const engine = await loadEngine(model ?? packagedModel(options.language));
  const withNetwork = (options.language ?? 'en') === 'en' && options.denoise !== false;
  return createEar(engine, withNetwork ? { network: await loadWeights(), ...options } : options);
}
