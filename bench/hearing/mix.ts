const frameLength = 320;
/** Frames this far under the loudest are pauses, not speech. */
const pauseDb = 35;

export function meanPower(samples: Float32Array): number {
  let sum = 0;
  for (const sample of samples) sum += sample * sample;
  return sum / Math.max(1, samples.length);
}

/** Mean power of the frames (20 ms at 16 kHz) in which somebody speaks: pauses and the ends do not count. */
export function speechPower(samples: Float32Array): number {
  const powers: number[] = [];
  for (let at = 0; at + frameLength <= samples.length; at += frameLength) {
    powers.push(meanPower(samples.subarray(at, at + frameLength)));
  }
  const least = Math.max(...powers, 0) / 10 ** (pauseDb / 10);
  const spoken = powers.filter(power => power > 0 && power >= least);
  return spoken.reduce((sum, power) => sum + power, 0) / Math.max(1, spoken.length);
}

export const scaled = (samples: Float32Array, gain: number): Float32Array =>
  samples.map(sample => sample * gain);

/** The sound at a given mean power. */
export const atPower = (samples: Float32Array, power: number, measured = meanPower(samples)): Float32Array =>
  scaled(samples, measured === 0 ? 0 : Math.sqrt(power / measured));

/** How loud speech is made, dB relative to full scale: room enough above it for its peaks. */
const speechDbfs = -26;
const powerOfDb = (db: number): number => 10 ** (db / 10);

/** Speech at the one level that all tests use. */
export const levelled = (speech: Float32Array): Float32Array =>
  atPower(speech, powerOfDb(speechDbfs), speechPower(speech));

/**
 * A stretch of noise so loud that levelled speech stands `snrDb` above it, both measured from 0 to 8 kHz without
 * weighting, the noise over its whole length.
 */
export const noiseAtSnr = (noise: Float32Array, snrDb: number): Float32Array =>
  atPower(noise, powerOfDb(speechDbfs - snrDb));

export function added(a: Float32Array, b: Float32Array): Float32Array {
  return a.map((sample, i) => sample + (b[i] ?? 0));
}
