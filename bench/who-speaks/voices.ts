import { concatenate } from '../../src/voice/concatenate.ts';
import { createHearingNetwork } from '../../src/voice/ear/hearing-network.ts';
import { stepLength } from '../../src/voice/ear/sound.ts';
import { SpokenPart } from '../../src/voice/ear/spoken-part.ts';
import type { Weights } from '../../src/voice/phone-network/weights.ts';
import { speechRateHz } from '../../src/voice/resample.ts';
import type { Voice } from '../../src/voice/who-speaks/voice-network.ts';
import type { Level } from '../hearing/accuracy.ts';
import { added, levelled, noiseAtSnr } from '../hearing/mix.ts';
import type { RecordedNoise } from '../hearing/people/clip-scenes.ts';
import { type Clip, soundOf } from '../hearing/people/recordings.ts';

const quiet = new Float32Array(0.4 * speechRateHz);
/** A reply is seldom longer. */
const longestSamples = 1.4 * speechRateHz;

const around = (loop: Float32Array, from: number, length: number): Float32Array =>
  Float32Array.from({ length }, (_, i) => loop[(from + i) % loop.length] ?? 0);

export interface Trial {
  readonly clip: Clip;
  readonly level: Level;
  readonly noise: RecordedNoise | undefined;
  readonly nth: number;
}

/** The voice of a clip beside a noise, as the ear makes it: of the part in which the phone network hears somebody. */
export function voiceOf(
  { clip, level, noise, nth }: Trial,
  weights: Weights,
  voiceIn: (samples: Float32Array) => Voice | null,
): Voice | null {
  const speech = concatenate([quiet, levelled(soundOf(clip).slice(0, longestSamples)), quiet]);
  const sound =
    level === 'clean' || noise === undefined
      ? speech
      : added(speech, noiseAtSnr(around(noise.loop, 7919 * nth, speech.length), level));
  const network = createHearingNetwork(weights);
  const spoken = new SpokenPart();
  for (let at = 0; at + stepLength <= sound.length; at += stepLength) {
    const raw = sound.subarray(at, at + stepLength);
    spoken.next({ raw, heard: raw, moments: network.next(raw) });
  }
  return voiceIn(spoken.samples());
}
