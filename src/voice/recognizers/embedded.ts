import { hearingOf } from '../languages/index.ts';
import { loadWeights, packagedNetwork } from '../phone-network/load-node.ts';
import type { HeardLanguage, SoundRecognizer } from '../ports.ts';
import { loadVoiceWeights } from '../who-speaks/load-node.ts';
import { createVoiceNetwork } from '../who-speaks/voice-network.ts';
import { createNetworkEar } from './by-network.ts';

export interface EmbeddedOptions {
  /** What is spoken: English when it is not named. */
  readonly language?: HeardLanguage;
  /** Silence that ends a reply which could go on, where it is not the usual one. */
  readonly trailingSilenceMs?: number | undefined;
}

/**
 * What listens in Node with nothing brought along: the phone network of the language, and the one that tells voices apart.
 * @throws VoiceError `modelUnusable` when the file of one is missing or damaged.
 */
export async function createEmbeddedRecognizer({
  language = 'en',
  trailingSilenceMs,
}: EmbeddedOptions = {}): Promise<SoundRecognizer> {
  const { pronounce, leastCertainty, nearBounds } = hearingOf(language);
  const [weights, voices] = await Promise.all([loadWeights(packagedNetwork(language)), loadVoiceWeights()]);
  const voiceIn = createVoiceNetwork(voices);
  return createNetworkEar(weights, pronounce, { leastCertainty, nearBounds, trailingSilenceMs, voiceIn });
}
