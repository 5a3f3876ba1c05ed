import { describe, expect, it } from 'vitest';
import { Bank, bankBands, bankHop, bankRateHz } from '../../../src/engineering/engine-sound/bank.ts';

const LENGTH = 256;
/** First bin of each band, of 62.5 Hz, and behind the last: 60 Hz to 7,600 Hz in 14 like shares of an octave, rounded. */
const EDGES = [1, 2, 3, 4, 5, 6, 8, 11, 15, 22, 30, 43, 61, 86, 122];
const FLOOR = 1e-9;

function banked(samples: Float32Array, block = samples.length): number[][] {
  const bank = new Bank();
  const all: number[][] = [];
  for (let at = 0; at < samples.length; at += block)
    bank.push(samples.subarray(at, at + block), values => all.push([...values]));
  return all;
}
const bandOf = (bin: number) =>
  EDGES.findIndex((_, band) => bin < (EDGES[band + 1] ?? Number.POSITIVE_INFINITY));
const toneInBin = (bin: number, frames: number) =>
  Float32Array.from({ length: frames * bankHop }, (_, i) =>
    Math.sin((2 * Math.PI * bin * (i + 0.3)) / LENGTH),
  );

describe('the loudness of many narrow bands', () => {
  it('is told 125 times a second, in blocks of any length', () => {
    expect(bankRateHz).toBe(125);
    const sound = toneInBin(9, 12);
    expect(banked(sound)).toHaveLength(12);
    expect(banked(sound, 77)).toEqual(banked(sound));
    expect(banked(sound.subarray(0, bankHop - 1))).toHaveLength(0);
    expect(banked(sound.subarray(0, bankHop))).toHaveLength(1);
  });

  it('is greatest in the band that a tone lies in, whichever bin of it', () => {
    for (let bin = EDGES[0] ?? 0; bin < (EDGES.at(-1) ?? 0); bin++) {
      const values = banked(toneInBin(bin, 3))[2] ?? [];
      expect([bin, values.indexOf(Math.max(...values))]).toEqual([bin, bandOf(bin)]);
    }
  });

  it('hears nothing above 7,600 Hz', () => {
    for (const bin of [124, 127])
      for (const value of banked(toneInBin(bin, 3))[2] ?? []) expect(value).toBeLessThan(Math.log(20));
    // In the last of its bins a tone of full scale has a power of 64 squared, and a quarter of that to either side.
    expect(banked(toneInBin(115, 3))[2]?.at(-1)).toBeGreaterThan(Math.log(64 ** 2 + 2 * 32 ** 2));
  });

  it('is the power of all bins of a band under a raised cosine, above a twentieth of its mean', () => {
    // A click is alike in all bins: each has the square of the window at its place, 192.5 and then 64.5 of 256 samples.
    const click = new Float32Array(4 * bankHop);
    click[64] = 1;
    const [first, second, third, fourth] = banked(click);
    const [late, early] = [0.49386, 0.50614].map(window => window ** 2);
    let mean = 0;
    for (let band = 0; band < bankBands; band++) {
      const bins = (EDGES[band + 1] ?? 0) - (EDGES[band] ?? 0);
      mean = bins * (late ?? 0);
      expect(first?.[band]).toBeCloseTo(Math.log(1.05 * mean), 4);
      mean += (bins * (early ?? 0) - mean) / 125;
      expect(second?.[band]).toBeCloseTo(Math.log(bins * (early ?? 0) + 0.05 * mean), 4);
      mean -= mean / 125;
      expect(third?.[band]).toBeCloseTo(Math.log(0.05 * mean), 4);
      mean -= mean / 125;
      expect(fourth?.[band]).toBeCloseTo(Math.log(0.05 * mean), 4);
    }
  });

  it('is a floor where there is nothing, or what is no number', () => {
    for (const nothing of [0, Number.NaN, Number.POSITIVE_INFINITY])
      expect(banked(new Float32Array(bankHop).fill(nothing))).toEqual([
        Array.from({ length: bankBands }, () => Math.log(FLOOR)),
      ]);
  });
});
