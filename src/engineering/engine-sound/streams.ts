import { Biquads, highPass, lowPass } from './filters.ts';

/** What the tracker listens at. */
export const soundRateHz = 16_000;
/** What it keeps of it: enough for lines up to 450 Hz. */
export const streamRateHz = 1_000;
const DECIMATION = soundRateHz / streamRateHz;
const WAVE_UP_TO_HZ = 430;

/**
 * Bands whose loudness beats with the firings: where a high-pass takes the firing frequency itself, they still carry it.
 * Blows of combustion ring in the upper ones, the exhaust in the lowest.
 */
export const bandsHz = [
  [60, 250],
  [250, 700],
  [700, 1_600],
  [1_600, 3_500],
  [3_500, 7_200],
] as const;

export const bandCount = bandsHz.length;
export const streamCount = 1 + bandCount;

/** A band's loudness is taken above this share of its mean, so that silence between blows is no dip without end. */
const FLOOR_SHARE = 0.05;
const MEAN_S = 1;

/** Sound at 16 kHz made into streams at 1 kHz: the wave itself, and of each band the logarithm of its power. */
export class Streams {
  readonly #wave = new Biquads([
    lowPass(WAVE_UP_TO_HZ, soundRateHz, 0.54),
    lowPass(WAVE_UP_TO_HZ, soundRateHz, 1.31),
  ]);
  readonly #bands = bandsHz.map(
    ([low, high]) => new Biquads([highPass(low, soundRateHz), lowPass(high, soundRateHz)]),
  );
  readonly #sums = new Float64Array(bandCount);
  readonly #means = new Float64Array(bandCount);
  readonly #values = new Float64Array(streamCount);
  readonly #powers = new Float64Array(bandCount);
  #filled = 0;
  #started = false;

  /**
   * @param onSample called for each millisecond with the value of each stream and the power of each band; both arrays
   * are used again
   */
  push(samples: Float32Array, onSample: (values: Float64Array, powers: Float64Array) => void): void {
    for (const sample of samples) {
      const x = Number.isFinite(sample) ? sample : 0;
      const wave = this.#wave.next(x);
      for (let band = 0; band < bandCount; band++) {
        const y = (this.#bands[band] as Biquads).next(x);
        this.#sums[band] = (this.#sums[band] as number) + y * y;
      }
      if (++this.#filled < DECIMATION) continue;
      this.#filled = 0;
      this.#values[0] = wave;
      this.#take();
      onSample(this.#values, this.#powers);
    }
  }

  #take(): void {
    const forget = this.#started ? 1 / (MEAN_S * streamRateHz) : 1;
    this.#started = true;
    this.#sums.forEach((sum, band) => {
      const power = sum / DECIMATION;
      const mean = (this.#means[band] as number) + forget * (power - (this.#means[band] as number));
      this.#means[band] = mean;
      this.#powers[band] = power;
      this.#values[1 + band] = Math.log(power + FLOOR_SHARE * mean + 1e-12);
    });
    this.#sums.fill(0);
  }
}
