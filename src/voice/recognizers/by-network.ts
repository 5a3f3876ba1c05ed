import type { NetworkDecoderOptions } from '../decoders/network/decoder.ts';
import { createDecoderTellingFar } from '../decoders/network/telling-far.ts';
import { createCallSpotter } from '../ear/call-spotter.ts';
import { createEar, type EarParts } from '../ear/ear.ts';
import { createHearingNetwork } from '../ear/hearing-network.ts';
import { createNearSpeech } from '../ear/near-speech.ts';
import { createStopSpotter } from '../ear/stop-spotter.ts';
import { createPlainFrontEnd } from '../front-end.ts';
import type { Pronounce } from '../phone-network/phone-graph.ts';
import type { Weights } from '../phone-network/weights.ts';
import type { SoundRecognizer } from '../ports.ts';

/** What any ear of a language with a network has, whatever decodes: near speech, and stops at any moment. */
export function hearingBy(
  weights: Weights,
  pronounce: Pronounce,
): Required<Pick<EarParts<unknown>, 'stops' | 'speech'>> {
  return {
    speech: createNearSpeech(),
    stops: {
      network: createHearingNetwork(weights),
      spotter: createStopSpotter(pronounce),
      calls: createCallSpotter(pronounce),
    },
  };
}

export interface NetworkEarOptions
  extends Pick<NetworkDecoderOptions, 'onDecision' | 'leastCertainty' | 'nearBounds'> {
  readonly trailingSilenceMs?: number | undefined;
  readonly voiceIn?: EarParts<unknown>['voiceIn'];
}

/**
 * Hears with the phone network alone, in Node or in a browser's worker.
 * @throws VoiceError `modelUnusable` when the weights are not those of this network.
 */
export function createNetworkEar(
  weights: Weights,
  pronounce: Pronounce,
  { trailingSilenceMs, voiceIn, ...options }: NetworkEarOptions = {},
): SoundRecognizer {
  const { speech, stops } = hearingBy(weights, pronounce);
  const { phonesLateMoments } = stops.network;
  return createEar({
    frontEnd: createPlainFrontEnd(),
    decoder: createDecoderTellingFar({ pronounce, phonesLateMoments, ...options }),
    speech,
    stops,
    voiceIn,
    trailingSilenceMs,
  });
}
