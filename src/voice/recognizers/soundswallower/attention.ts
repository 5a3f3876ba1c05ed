import { defaultEndpointing, Endpointer, type SpeechEvent } from '../../endpointing.ts';
import { levelDbfs } from '../../levels.ts';
import { defaultNear, NearEndpointer } from '../../phone-network/near-endpointer.ts';
import { createPhoneNetwork, type Moment, momentMs } from '../../phone-network/network.ts';
import type { Pronounce } from '../../phone-network/phone-graph.ts';
import { createMomentSpotter } from '../../phone-network/stop-spotter.ts';
import type { Weights } from '../../phone-network/weights.ts';
import { speechRateHz } from '../../resample.ts';

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

/** Louder than a quiet room, and than what a headset makes of one. */
const loudDbfs = -55;
/** A sound is nobody's speech when the network heard nobody so long before it and after. */
const besideMs = 600;
/** A place is noisy so long after such a sound. */
const noisyForMs = 8_000;
/** A stop counts when somebody was near so shortly before it ended. */
const nearForStopMs = 600;

/** Knows from loud sounds that are nobody's speech, bursts with rests between them too, that a place is noisy. */
class NoisyPlace {
  private readonly loudAtMs: number[] = [];
  private nowMs = 0;
  private nearAtMs = Number.NEGATIVE_INFINITY;
  private noisyUntilMs = Number.NEGATIVE_INFINITY;

  next(samples: Float32Array, moments: readonly Moment[]): void {
    this.nowMs += (samples.length / speechRateHz) * 1000;
    if (moments.some(({ near }) => near >= defaultNear.beginsAt)) this.nearAtMs = this.nowMs;
    if (levelDbfs(samples) > loudDbfs) this.loudAtMs.push(this.nowMs);
    for (let at = this.loudAtMs[0]; at !== undefined && at <= this.nowMs - besideMs; at = this.loudAtMs[0]) {
      this.loudAtMs.shift();
      if (this.nearAtMs < at - besideMs) this.noisyUntilMs = this.nowMs + noisyForMs;
    }
  }

  get noisy(): boolean {
    return this.nowMs < this.noisyUntilMs;
  }

  get somebodyNear(): boolean {
    return this.nowMs - this.nearAtMs <= nearForStopMs;
  }
}

/**
 * In noise speech is what the network takes for somebody near, and it listens for the stop wordings too. In a quiet room
 * speech is what is louder than the room: the recognizer hears people better than a network that has never met one.
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
  const place = new NoisyPlace();
  let inNoise = false;
  let begun = false;
  /** Without what belongs to an utterance that began unnoticed, while the other one was listened to. */
  const whole = (events: readonly SpeechEvent[]) =>
    events.filter(({ kind }) => {
      const counts = begun !== (kind === 'begin');
      if (kind === 'begin' || kind === 'end') begun = kind === 'begin';
      return counts;
    });
  return {
    get speaking() {
      return (inNoise ? near : byLevel).speaking;
    },
    listen: stop => spotter.listen(stop),
    next(raw, heard, noisy) {
      const moments = network(raw);
      place.next(raw, moments);
      const stop = moments.map(moment => spotter.next(moment)).find(text => text !== undefined);
      const nowInNoise = noisy || place.noisy;
      // What the noise began is nobody's answer; what somebody began ends by what it began by.
      const noiseBegan = nowInNoise && !inNoise && byLevel.speaking && !near.speaking;
      if (noiseBegan || !(inNoise ? near : byLevel).speaking) inNoise = nowInNoise;
      const [louder, nearer] = [byLevel.next(heard), near.next(heard, moments)];
      const cut: readonly SpeechEvent[] = noiseBegan ? [{ kind: 'end', cause: 'tooLong' }] : [];
      return {
        events: whole([...cut, ...(inNoise ? nearer : louder)]),
        stop: nowInNoise && place.somebodyNear ? stop : undefined,
      };
    },
  };
}
