import { silentDbfs } from '../levels.ts';

/** First-order high-pass: engine and mains rumble lie below the voice. */
const preEmphasis = 0.95;

/**
 * Measures a stream piece by piece where the voice lies.
 * @returns mean power of each piece, full scale being 1
 */
export function createVoicePower(): (samples: Float32Array) => number {
  let last = 0;
  return samples => {
    let sum = 0;
    for (const sample of samples) {
      const risen = sample - preEmphasis * last;
      sum += risen * risen;
      last = sample;
    }
    return sum / Math.max(1, samples.length);
  };
}

/** Decibels of a power, relative to full scale; `silentDbfs` at least. */
export const powerDbfs = (power: number): number =>
  Math.max(silentDbfs, 10 * Math.log10(Math.max(power, 1e-12)));
