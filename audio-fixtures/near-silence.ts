import { uniform } from './random.ts';

/** Loudest sample of the noise: 3 steps of 16 bits, far below any speech, yet never digital silence. */
const PEAK = 3 / 32_768;

/**
 * Noise so low that nobody hears it, the same for the same seed: recognizers behave oddly on digital silence,
 * which no microphone delivers.
 * @param seed any whole number.
 */
export function nearSilence(samples: number, seed: number): Float32Array {
  const random = uniform(seed);
  return Float32Array.from({ length: samples }, () => (random() + random() - 1) * PEAK);
}
