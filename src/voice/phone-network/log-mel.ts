import { createPowerSpectrum } from './fourier.ts';

/** 10 ms and 25 ms at 16 kHz; the transform is longer than the window, and filled up with nothing. */
export const hopSamples = 160;
const windowSamples = 400;
const transformSamples = 512;
const sampleRateHz = 16_000;

export const bandCount = 40;
const lowestHz = 80;
const highestHz = 7_600;
/** The mean of each band over about a second is taken off: what is always there is no speech. */
const forgetting = 0.99;
/** What a mean begins with is that of the first rows. */
const firstRows = 10;
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

/** Takes from each row the mean of the rows so far, the latest counting most. The first rows come together. */
export function createCentring(): (row: Float32Array) => readonly Float32Array[] {
  const waiting: Float32Array[] = [];
  let means: Float64Array | undefined;
  const centred = (row: Float32Array, mean: Float64Array) =>
    row.map((value, band) => {
      mean[band] = forgetting * (mean[band] ?? 0) + (1 - forgetting) * value;
      return value - mean[band];
    });
  return row => {
    if (means !== undefined) return [centred(row, means)];
    waiting.push(row);
    if (waiting.length < firstRows) return [];
    const begun = Float64Array.from(row, (_, band) => {
      return waiting.reduce((sum, each) => sum + (each[band] ?? 0), 0) / firstRows;
    });
    means = begun;
    return waiting.map(each => centred(each, begun));
  };
}
