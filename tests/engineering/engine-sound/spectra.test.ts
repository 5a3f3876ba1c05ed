import { describe, expect, it } from 'vitest';
import { Spectra } from '../../../src/engineering/engine-sound/spectra.ts';

const shape = {
  length: 640,
  size: 1024,
  rateHz: 1000,
  bins: 450,
  reach: { share: 0.6, least: 6, most: 28 },
};
/** A tone whose frequency is `hz` in the middle and rises by a share of itself per second. */
const chirp = (hz: number, slope: number, seed: number) =>
  Float64Array.from({ length: shape.length }, (_, i) => {
    const t = (i - (shape.length - 1) / 2) / shape.rateHz;
    const turns = slope === 0 ? hz * t : (hz * (Math.exp(slope * t) - 1)) / slope;
    return Math.sin(2 * Math.PI * turns) + 0.01 * Math.sin(seed + i * i);
  });
const loudest = (powers: Float64Array) => powers.indexOf(Math.max(...powers)) * (shape.rateHz / shape.size);

function spectraOf(one: Float64Array, other: Float64Array, slope: number): [Float64Array, Float64Array] {
  const spectra = new Spectra(shape);
  const powers: [Float64Array, Float64Array] = [new Float64Array(shape.bins), new Float64Array(shape.bins)];
  spectra.pair(one, other, spectra.places(slope), powers);
  return powers;
}

describe('spectra of pieces of sound', () => {
  it('keeps two streams apart that go through one transform', () => {
    const [one, other] = spectraOf(chirp(60, 0, 1), chirp(145, 0, 2), 0);
    expect(loudest(one)).toBeCloseTo(60, -0.3);
    expect(loudest(other)).toBeCloseTo(145, -0.3);
    expect(one[Math.round(145 * 1.024)]).toBeLessThan(2);
  });

  it('lets a rising tone stand still where the rise is known', () => {
    const tone = chirp(200, 1.1, 3);
    const [still] = spectraOf(tone, tone, 1.1);
    const [smeared] = spectraOf(tone, tone, 0);
    expect(loudest(still)).toBeCloseTo(200, -0.3);
    expect(Math.max(...still)).toBeGreaterThan(Math.max(...smeared) + 1);
  });
});
