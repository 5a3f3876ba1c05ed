import { defaultEndpointing, Endpointer, type SpeechEvent } from '../../endpointing.ts';
import { defaultNear, NearEndpointer } from '../../phone-network/near-endpointer.ts';
import { createPhoneNetwork, momentMs } from '../../phone-network/network.ts';
import type { Pronounce } from '../../phone-network/phone-graph.ts';
import { createMomentSpotter } from '../../phone-network/stop-spotter.ts';
import type { Weights } from '../../phone-network/weights.ts';

/** Where speech begins and ends in the stream, and the stop wordings that are heard on the way. */
export interface Attention {
  readonly speaking: boolean;
  listen(stop: readonly string[]): void;
  /** The next piece as it came in, and as it is listened to, and whether it is noisy there. */
  next(
    raw: Float32Array,
    heard: Float32Array,
    noisy: boolean,
  ): { readonly events: readonly SpeechEvent[]; readonly stop: string | undefined };
}

/** Speech is what is louder than the noise. */
export function attentionByLevel(trailingSilenceMs: number): Attention {
  const endpointer = new Endpointer({ ...defaultEndpointing, trailingSilenceMs });
  return {
    get speaking() {
      return endpointer.speaking;
    },
    listen: () => {},
    next: (_raw, heard) => ({ events: endpointer.next(heard), stop: undefined }),
  };
}

/**
 * In noise speech is what the network takes for somebody near, and it listens for the stop wordings too. In a quiet room
 * it rests: there speech is what is louder than the room, and the recognizer hears people better than a network that
 * has never met one.
 */
export function attentionByNetwork(
  weights: Weights,
  pronounce: Pronounce,
  trailingSilenceMs: number,
): Attention {
  const network = createPhoneNetwork(weights);
  const momentsToEnd = Math.max(defaultNear.momentsToPause + 1, Math.floor(trailingSilenceMs / momentMs));
  const near = new NearEndpointer({ ...defaultNear, momentsToEnd });
  const byLevel = new Endpointer({ ...defaultEndpointing, trailingSilenceMs });
  const spotter = createMomentSpotter(pronounce);
  let inNoise = false;
  const speaking = () => (inNoise ? near : byLevel).speaking;
  return {
    get speaking() {
      return speaking();
    },
    listen: stop => spotter.listen(stop),
    next(raw, heard, noisy) {
      // An utterance ends by what it began by.
      if (!speaking()) inNoise = noisy;
      const moments = noisy || inNoise ? network(raw) : [];
      const stop = moments.map(moment => spotter.next(moment)).find(text => text !== undefined);
      const [far, close] = [byLevel.next(heard), near.next(heard, moments)];
      return { events: inNoise ? close : far, stop: noisy ? stop : undefined };
    },
  };
}
