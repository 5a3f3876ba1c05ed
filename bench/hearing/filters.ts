import { speechRateHz } from '../../src/voice/resample.ts';

export type Filter = (sample: number) => number;

/** A second-order section; a0 is 1. */
function biquad(b: readonly [number, number, number], a: readonly [number, number]): Filter {
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return x => {
    const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[0] * y1 - a[1] * y2;
    [x1, x2, y1, y2] = [x, x1, y, y1];
    return y;
  };
}

/** Coefficients by the bilinear transform of second-order prototypes, as any text on digital filters has them. */
function parts(frequencyHz: number, q: number) {
  const angle = (2 * Math.PI * frequencyHz) / speechRateHz;
  return { cosine: Math.cos(angle), alpha: Math.sin(angle) / (2 * q) };
}

const butterworth = Math.SQRT1_2;

export function lowPass(frequencyHz: number, q = butterworth): Filter {
  const { cosine, alpha } = parts(frequencyHz, q);
  const a0 = 1 + alpha;
  const b = (1 - cosine) / 2 / a0;
  return biquad([b, 2 * b, b], [(-2 * cosine) / a0, (1 - alpha) / a0]);
}

export function highPass(frequencyHz: number, q = butterworth): Filter {
  const { cosine, alpha } = parts(frequencyHz, q);
  const a0 = 1 + alpha;
  const b = (1 + cosine) / 2 / a0;
  return biquad([b, -2 * b, b], [(-2 * cosine) / a0, (1 - alpha) / a0]);
}

/** Rings at a frequency; the gain there is 1. */
export function resonator(frequencyHz: number, q: number): Filter {
  const { cosine, alpha } = parts(frequencyHz, q);
  const a0 = 1 + alpha;
  return biquad([alpha / a0, 0, -alpha / a0], [(-2 * cosine) / a0, (1 - alpha) / a0]);
}

/** One filter after the other. */
export const chain =
  (...filters: readonly Filter[]): Filter =>
  sample =>
    filters.reduce((value, filter) => filter(value), sample);
