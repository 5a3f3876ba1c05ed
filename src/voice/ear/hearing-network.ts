import { createPhoneNetwork, momentMs, phonesLateMomentsOf } from '../phone-network/network.ts';
import type { Weights } from '../phone-network/weights.ts';
import type { HearingNetwork } from './moment.ts';

/**
 * The network that listens to one stream.
 * @throws VoiceError `modelUnusable` when the weights are not those of this network.
 */
export const createHearingNetwork = (weights: Weights): HearingNetwork => ({
  momentMs,
  phonesLateMoments: phonesLateMomentsOf(weights),
  next: createPhoneNetwork(weights),
});
