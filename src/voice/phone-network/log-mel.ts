import { createPowerSpectrum } from './fourier.ts';

/** 10 ms and 25 ms at 16 kHz; the transform is longer than the window, and filled up with nothing. */
export const hopSamples = 160;
const windowSamples = 400;
const transformSamples = 512;
const sampleRateHz = 16_000;

export const bandCount = 64;
const lowestHz = 60;
const highestHz = 7_800;
/** Each band is set against its mean over the last three seconds: what is always there is no speech. */
const meanRows = 300;
/** The means themselves tell how loud the place is; they are brought to about -1 to 1. */
const meanMiddle = -5;
const meanSpread = 2;
/** Added to each power: silence has a level too. */
const floor = 1e-9;

const hann = Float64Array.from(
  { length: windowSamples },
  (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / windowSamples),
);

const melOf = (hz: number) => 2_595 * Math.log10(1 + hz / 700);
const hzOf = (mel: number) => 700 * (10 ** (mel / 2_595) - 1);

/** What a band takes from each frequency, from `first` on. */
interface Band {
  readonly first: number;
  readonly weights: Float64Array;
}

/** Triangles that are even on the mel scale (O'Shaughnessy, Speech Communication, 1987, from memory). */
const bands: readonly Band[] = Array.from({ length: bandCount }, (_, band) => {
  const corner = (nth: number) =>
    hzOf(melOf(lowestHz) + ((melOf(highestHz) - melOf(lowestHz)) * nth) / (bandCount + 1));
  const [low, middle, high] = [corner(band), corner(band + 1), corner(band + 2)];
  const binHz = sampleRateHz / transformSamples;
  const first = Math.ceil(low / binHz);
  const weights = Float64Array.from({ length: Math.floor(high / binHz) - first + 1 }, (_, i) => {
    const hz = (first + i) * binHz;
    return Math.max(0, Math.min((hz - low) / (middle - low), (high - hz) / (high - middle)));
  });
  return { first, weights };
});

/** Log power of each band, a row each 10 ms, of sound at 16 kHz that comes in pieces of any length. */
export function createLogMel(): (samples: Float32Array) => readonly Float32Array[] {
  const spectrum = createPowerSpectrum(transformSamples);
  const windowed = new Float32Array(transformSamples);
  let pending = new Float32Array(0);

  function row(start: number): Float32Array {
    for (let i = 0; i < windowSamples; i++) windowed[i] = (pending[start + i] ?? 0) * (hann[i] ?? 0);
    const power = spectrum(windowed);
    return Float32Array.from(bands, ({ first, weights }) => {
      let sum = 0;
      for (let i = 0; i < weights.length; i++) sum += (weights[i] ?? 0) * (power[first + i] ?? 0);
      return Math.log10(sum + floor);
    });
  }

  return samples => {
    const all = new Float32Array(pending.length + samples.length);
    all.set(pending);
    all.set(samples, pending.length);
    pending = all;
    const rows: Float32Array[] = [];
    let start = 0;
    for (; start + windowSamples <= pending.length; start += hopSamples) rows.push(row(start));
    pending = pending.slice(start);
    return rows;
  };
}

/** Each band against its mean over the last rows, this one with them, and behind them these means. */
export function createCentring(): (row: Float32Array) => Float32Array {
  const past = Array.from({ length: meanRows }, () => new Float32Array(bandCount));
  const sums = new Float64Array(bandCount);
  const result = new Float32Array(2 * bandCount);
  let rows = 0;
  return row => {
    const oldest = past[rows % meanRows] as Float32Array;
    rows += 1;
    const count = Math.min(rows, meanRows);
    for (let band = 0; band < bandCount; band++) {
      const value = row[band] as number;
      sums[band] = (sums[band] as number) + value - (oldest[band] as number);
      const mean = (sums[band] as number) / count;
      result[band] = value - mean;
      result[bandCount + band] = (mean - meanMiddle) / meanSpread;
    }
    oldest.set(row);
    return result;
  };
}
