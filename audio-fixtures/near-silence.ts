/** Loudest sample of the noise: 3 steps of 16 bits, far below any speech, yet never digital silence. */
const PEAK = 3 / 32_768;

/**
 * Noise so low that nobody hears it, the same for the same seed: recognizers behave oddly on digital silence,
 * which no microphone delivers.
 * @param seed any whole number.
 */
export function nearSilence(samples: number, seed: number): Float32Array {
  let state = seed >>> 0;
  // Mulberry32, a small public-domain generator: the same numbers on every machine.
  const random = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return Float32Array.from({ length: samples }, () => (random() + random() - 1) * PEAK);
}
