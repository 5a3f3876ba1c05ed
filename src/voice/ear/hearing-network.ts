import { createPhoneNetwork, momentMs } from '../phone-network/network.ts';
import type { Weights } from '../phone-network/weights.ts';
import type { HearingNetwork } from './moment.ts';

/**
 * The network that listens to one stream.
 * @throws VoiceError `modelUnusable` when the weights are not those of this network.
 */
export function createHearingNetwork(weights: Weights): HearingNetwork {
  const next = createPhoneNetwork(weights);
  return {
    momentMs,
    phonesLateMoments: 0,
    next: samples => next(samples).map(moment => ({ ...moment, early: moment.phones })),
  };
}
