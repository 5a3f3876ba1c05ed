import FFT from 'fft.js';
import { soundRateHz } from './streams.ts';

const LENGTH = 256;
/** Samples from one frame to the next. */
export const bankHop = 128;
/** As often as the loudness of each band is taken. */
export const bankRateHz = soundRateHz / bankHop;

const LOWEST_HZ = 60;
const HIGHEST_HZ = 7_600;
export const bankBands = 14;
const BIN_HZ = soundRateHz / LENGTH;

/** First bin of each band, and behind the last: of the same share of an octave each, and at least one bin wide. */
const edges = (() => {
  const all = [Math.round(LOWEST_HZ / BIN_HZ)];
  for (let band = 1; band <= bankBands; band++) {
    const hz = LOWEST_HZ * (HIGHEST_HZ / LOWEST_HZ) ** (band / bankBands);
    all.push(Math.max((all.at(-1) ?? 0) + 1, Math.round(hz / BIN_HZ)));
  }
  return all;
})();

const FLOOR_SHARE = 0.05;
const MEAN_S = 1;

/**
 * The loudness of many narrow bands: whoever talks, or whatever hammers, fills some of them for a moment and never all, and
 * in the others a slow engine is heard beating on.
 */
export class Bank {
  readonly #fft = new FFT(LENGTH);
  readonly #window = Float64Array.from(
    { length: LENGTH },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / LENGTH),
  );
  readonly #last = new Float64Array(LENGTH);
  readonly #in = new Array<number>(LENGTH);
  readonly #out = this.#fft.createComplexArray();
  readonly #means = new Float64Array(bankBands);
  readonly #values = new Float64Array(bankBands);
  #filled = 0;
  #started = false;

  /**
   * @param samples mono at 16 kHz, any number of them
   * @param onFrame called `bankRateHz` times a second with the logarithm of the power of each band; the array is used again
   */
  push(samples: Float32Array, onFrame: (values: Float64Array) => void): void {
    for (const sample of samples) {
      this.#last[LENGTH - bankHop + this.#filled] = Number.isFinite(sample) ? sample : 0;
      if (++this.#filled < bankHop) continue;
      this.#filled = 0;
      this.#take();
      this.#last.copyWithin(0, bankHop);
      onFrame(this.#values);
    }
  }

  #take(): void {
    this.#last.forEach((sample, i) => {
      this.#in[i] = sample * (this.#window[i] as number);
    });
    this.#fft.realTransform(this.#out, this.#in);
    const forget = this.#started ? 1 / (MEAN_S * bankRateHz) : 1;
    this.#started = true;
    this.#means.forEach((before, band) => {
      let power = 0;
      for (let k = edges[band] as number; k < (edges[band + 1] as number); k++)
        power += (this.#out[2 * k] as number) ** 2 + (this.#out[2 * k + 1] as number) ** 2;
      const mean = before + forget * (power - before);
      this.#means[band] = mean;
      this.#values[band] = Math.log(power + FLOOR_SHARE * mean + 1e-9);
    });
  }
}
