import type { Pcm } from '../ports.ts';

/** Sound is handed on in pieces of this length: short enough that a stop word is not held up. */
export const BLOCK_MS = 20;

/** How long a sound lasts. */
export const durationMs = (sound: Pcm): number => (sound.samples.length / sound.sampleRateHz) * 1000;

/** Cuts a sound into pieces of 20 ms; the last may be shorter. */
export function* blocksOf(sound: Pcm): Generator<Pcm> {
  const length = Math.round((sound.sampleRateHz * BLOCK_MS) / 1000);
  for (let at = 0; at < sound.samples.length; at += length) {
    yield { samples: sound.samples.subarray(at, at + length), sampleRateHz: sound.sampleRateHz };
  }
}
