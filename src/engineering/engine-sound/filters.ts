/** Second-order sections in a row, each one's state kept between blocks. */
export class Biquads {
  readonly #b: Float64Array;
  readonly #z: Float64Array;
  readonly #count: number;

  /** @param sections b0, b1, b2, a1, a2 of each; a0 is 1 */
  constructor(sections: readonly (readonly [number, number, number, number, number])[]) {
    this.#count = sections.length;
    this.#b = Float64Array.from(sections.flat());
    this.#z = new Float64Array(2 * sections.length);
  }

  next(sample: number): number {
    const b = this.#b;
    const z = this.#z;
    let x = sample;
    for (let i = 0, c = 0, s = 0; i < this.#count; i++, c += 5, s += 2) {
      const y = (b[c] as number) * x + (z[s] as number);
      z[s] = (b[c + 1] as number) * x - (b[c + 3] as number) * y + (z[s + 1] as number);
      z[s + 1] = (b[c + 2] as number) * x - (b[c + 4] as number) * y;
      x = y;
    }
    return x;
  }
}

const BUTTERWORTH = Math.SQRT1_2;

/** Second-order sections by the bilinear transform, as any text on digital filters has them. */
function parts(hz: number, rateHz: number, q: number) {
  const angle = (2 * Math.PI * hz) / rateHz;
  const alpha = Math.sin(angle) / (2 * q);
  return { cosine: Math.cos(angle), a0: 1 + alpha, alpha };
}

export function lowPass(hz: number, rateHz: number, q = BUTTERWORTH) {
  const { cosine, a0, alpha } = parts(hz, rateHz, q);
  const b = (1 - cosine) / 2 / a0;
  return [b, 2 * b, b, (-2 * cosine) / a0, (1 - alpha) / a0] as const;
}

export function highPass(hz: number, rateHz: number, q = BUTTERWORTH) {
  const { cosine, a0, alpha } = parts(hz, rateHz, q);
  const b = (1 + cosine) / 2 / a0;
  return [b, -2 * b, b, (-2 * cosine) / a0, (1 - alpha) / a0] as const;
}
