import FFT from 'fft.js';

/** How a stretch of the streams is looked at. */
export interface SpectrumShape {
  /** Length of the stretch, samples of its rate. */
  readonly length: number;
  /** A power of two, not below it. */
  readonly size: number;
  readonly rateHz: number;
  /** Highest bin that is used. */
  readonly bins: number;
  /** How far around a bin, to either side, it is looked what is usual: as a share of the bin's own place, within bounds. */
  readonly reach: { readonly share: number; readonly least: number; readonly most: number };
}

/**
 * Spectra of pieces of sound whose speed may change within them: time is stretched first, so that what a steadily
 * rising speed smears comes to stand still. Each bin comes out as the natural logarithm of its power over what is usual around
 * it: noise of any colour has a mean power of about 1.
 */
export class Spectra {
  readonly shape: SpectrumShape;
  readonly #fft: FFT;
  readonly #window: Float64Array;
  readonly #in: Float64Array;
  readonly #out: Float64Array;
  readonly #logs: Float64Array;
  readonly #sums: Float64Array;

  constructor(shape: SpectrumShape) {
    this.shape = shape;
    this.#fft = new FFT(shape.size);
    this.#window = Float64Array.from(
      { length: shape.length },
      (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / shape.length),
    );
    this.#in = new Float64Array(2 * shape.size);
    this.#out = new Float64Array(2 * shape.size);
    this.#logs = new Float64Array(shape.bins);
    this.#sums = new Float64Array(shape.bins + 1);
  }

  /**
   * Where each sample of a stretch is read so that a speed rising by `slope` (of itself, per second) stands still: at
   * its middle nothing moves.
   */
  places(slope: number): Float64Array {
    const { length, rateHz } = this.shape;
    const middle = (length - 1) / 2;
    return Float64Array.from({ length }, (_, i) => {
      const u = (i - middle) / rateHz;
      const moved = slope === 0 ? u : Math.log(Math.max(1e-3, 1 + slope * u)) / slope;
      return Math.min(length - 1, Math.max(0, middle + moved * rateHz));
    });
  }

  /** Two real streams at once, as the real and the imaginary part of one transform. */
  pair(
    one: Float64Array,
    other: Float64Array,
    places: Float64Array,
    powers: [Float64Array, Float64Array],
  ): void {
    const { length, size, bins } = this.shape;
    const input = this.#in;
    const window = this.#window;
    let [meanOne, meanOther] = [0, 0];
    for (let i = 0; i < length; i++) {
      const place = places[i] as number;
      const at = Math.min(length - 2, Math.floor(place));
      const share = place - at;
      const a = (one[at] as number) + share * ((one[at + 1] as number) - (one[at] as number));
      const b = (other[at] as number) + share * ((other[at + 1] as number) - (other[at] as number));
      input[2 * i] = a;
      input[2 * i + 1] = b;
      meanOne += a;
      meanOther += b;
    }
    meanOne /= length;
    meanOther /= length;
    for (let i = 0; i < length; i++) {
      const w = window[i] as number;
      input[2 * i] = ((input[2 * i] as number) - meanOne) * w;
      input[2 * i + 1] = ((input[2 * i + 1] as number) - meanOther) * w;
    }
    const out = this.#out;
    this.#fft.transform(out, input);
    const [first, second] = powers;
    for (let k = 0; k < bins; k++) {
      const n = k === 0 ? 0 : size - k;
      const [ar, ai, br, bi] = [out[2 * k], out[2 * k + 1], out[2 * n], out[2 * n + 1]] as [
        number,
        number,
        number,
        number,
      ];
      first[k] = ((ar + br) * (ar + br) + (ai - bi) * (ai - bi)) / 4;
      second[k] = ((ai + bi) * (ai + bi) + (ar - br) * (ar - br)) / 4;
    }
    this.#whiten(first);
    this.#whiten(second);
  }

  /** Divides by what is usual around each bin: the geometric mean, which single lines hardly move. */
  #whiten(powers: Float64Array): void {
    const { bins, reach: around } = this.shape;
    const logs = this.#logs;
    const sums = this.#sums;
    for (let k = 0; k < bins; k++) {
      logs[k] = Math.log((powers[k] as number) + 1e-20);
      sums[k + 1] = (sums[k] as number) + (logs[k] as number);
    }
    for (let k = 0; k < bins; k++) {
      const reach = Math.max(around.least, Math.min(around.most, Math.floor(k * around.share)));
      const from = Math.max(1, k - reach);
      const to = Math.min(bins, k + reach + 1);
      const usual = ((sums[to] as number) - (sums[from] as number)) / (to - from);
      powers[k] = (logs[k] as number) - usual - EULER;
    }
  }
}

/** The mean of an exponentially distributed power is e^0.5772 of its geometric mean (closed form). */
const EULER = 0.5772;
