import { loadEngine, packagedModel } from '../decoders/soundswallower/load-node.ts';
import { voiceLanguage } from '../languages/index.ts';
import { loadWeights, packagedNetwork } from '../phone-network/load-node.ts';
import type { SoundRecognizer, SpokenLanguage } from '../ports.ts';
import { createNetworkEar } from './by-network.ts';
import { createSoundSwallowerEar } from './by-soundswallower.ts';

export interface EmbeddedOptions {
  /** What is spoken: English when it is not named. */
  readonly language?: SpokenLanguage;
  /** Silence that ends a reply which could go on, where it is not the usual one. */
  readonly trailingSilenceMs?: number | undefined;
  /** Directory of an acoustic model for SoundSwallower, which then listens instead of the network. */
  readonly model?: string;
  /** Whether SoundSwallower takes noise out first; it does unless this is false. */
  readonly denoise?: boolean;
}

/**
 * What listens in Node with nothing brought along: the phone network where the language has one, else SoundSwallower.
 * @throws VoiceError `modelUnusable` when a model is missing or damaged.
 */
export async function createEmbeddedRecognizer({
  language = 'en',
  model,
  denoise = true,
  trailingSilenceMs,
}: EmbeddedOptions = {}): Promise<SoundRecognizer> {
  const { pronounce, leastCertainty } = voiceLanguage(language).hearing;
  if (pronounce !== undefined && model === undefined) {
    return createNetworkEar(await loadWeights(packagedNetwork(language)), pronounce, {
      leastCertainty,
      trailingSilenceMs,
    });
  }
  const engine = await loadEngine(model ?? packagedModel(language));
  return createSoundSwallowerEar(engine, { language, denoise, trailingSilenceMs });
}
