import type { Pcm } from '../../src/voice/ports.ts';

/** A pure tone. */
export function tone(
  durationS: number,
  {
    frequencyHz = 440,
    sampleRateHz = 16_000,
    peak = 0.5,
  }: { frequencyHz?: number; sampleRateHz?: number; peak?: number } = {},
): Pcm {
  const samples = Float32Array.from(
    { length: Math.round(durationS * sampleRateHz) },
    (_, i) => peak * Math.sin((2 * Math.PI * frequencyHz * i) / sampleRateHz),
  );
  return { samples, sampleRateHz };
}

/** Root mean square of a sound. */
export const rms = ({ samples }: Pcm): number =>
  Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length);

/** Blocks put end to end. */
export function joined(blocks: readonly Pcm[]): Float32Array {
  const all = new Float32Array(blocks.reduce((length, block) => length + block.samples.length, 0));
  let at = 0;
  for (const { samples } of blocks) {
    all.set(samples, at);
    at += samples.length;
  }
  return all;
}
