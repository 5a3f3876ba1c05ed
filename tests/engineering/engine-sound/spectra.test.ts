import { describe, expect, it } from 'vitest';
import { uniform } from '../../../audio-fixtures/random.ts';
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

/** A stretch of which a tone may fit in whole periods: it then lies in its own bin and the two beside it, and nowhere else. */
const even = { length: 256, size: 256, rateHz: 1000, bins: 128, reach: { share: 0.6, least: 6, most: 28 } };
/** The mean logarithm of noise lies so far below the logarithm of its mean (Euler's constant). */
const EULER = 0.5772;
const inBin = (bin: number, amplitude = 1, offset = 0) =>
  Float64Array.from(
    { length: even.length },
    (_, i) => offset + amplitude * Math.sin((2 * Math.PI * bin * (i + 0.37)) / even.length),
  );
/** Of a tone of full scale under a raised cosine, above what counts as nothing (1e-20): its own bin, and each beside it. */
const OWN = Math.log(64 ** 2) - Math.log(1e-20);
const BESIDE = Math.log(32 ** 2) - Math.log(1e-20);

function evenSpectra(
  one: Float64Array,
  other: Float64Array,
  more: Partial<typeof even> = {},
  places?: Float64Array,
) {
  const spectra = new Spectra({ ...even, ...more });
  const powers: [Float64Array, Float64Array] = [new Float64Array(even.bins), new Float64Array(even.bins)];
  spectra.pair(one, other, places ?? spectra.places(0), powers);
  return powers;
}

describe('what stands out of a spectrum', () => {
  it('is told against the mean of the logarithms around it: 0.6 of its place to either side, 6 to 28 bins', () => {
    const [powers] = evenSpectra(inBin(60), inBin(60));
    for (const [bin, above] of [
      [60, OWN - (OWN + 2 * BESIDE) / 57],
      [61, BESIDE - (OWN + 2 * BESIDE) / 57],
      [36, 0],
      [37, -BESIDE / 45],
      [38, -(OWN + BESIDE) / 45],
      [39, -(OWN + 2 * BESIDE) / 47],
      [87, -(OWN + 2 * BESIDE) / 57],
      [88, -(OWN + BESIDE) / 57],
      [89, -BESIDE / 57],
      [90, 0],
    ] as const)
      expect([bin, powers[bin]]).toEqual([bin, expect.closeTo(above - EULER, 5)]);
  });

  it('is held at the ends of the spectrum against what there is of it, the lowest bin left out', () => {
    const [low, high] = evenSpectra(inBin(12), inBin(120));
    for (const [bin, above] of [
      [4, 0],
      [5, -BESIDE / 11],
      [6, -(OWN + BESIDE) / 12],
    ] as const)
      expect([bin, low[bin]]).toEqual([bin, expect.closeTo(above - EULER, 5)]);
    expect(high[127]).toBeCloseTo(-(OWN + 2 * BESIDE) / 29 - EULER, 5);
    expect(high[100]).toBeCloseTo(-(OWN + 2 * BESIDE) / 56 - EULER, 5);
    const [lowest] = evenSpectra(inBin(1), inBin(1));
    expect(lowest[1]).toBeCloseTo(OWN - (OWN + BESIDE) / 7 - EULER, 5);
    expect(lowest[7]).toBeCloseTo(-(OWN + BESIDE) / 13 - EULER, 5);
    expect(lowest[8]).toBeCloseTo(-BESIDE / 13 - EULER, 5);
  });

  it('is that of each of two streams alone, however loud the other', () => {
    const [one, other] = evenSpectra(inBin(60), inBin(100, 0.01));
    const [alone, otherAlone] = evenSpectra(inBin(60), inBin(100, 0.01, 0.5));
    one.forEach((power, bin) => {
      expect(power).toBeCloseTo(alone[bin] ?? 0, 4);
    });
    other.forEach((power, bin) => {
      expect(power).toBeCloseTo(otherAlone[bin] ?? 0, 4);
    });
    expect(one[100]).toBeCloseTo(-EULER, 5);
    expect(other[60]).toBeCloseTo(-EULER, 5);
    expect(other[100]).toBeCloseTo(
      OWN + Math.log(1e-4) - (OWN + 2 * BESIDE + 3 * Math.log(1e-4)) / 56 - EULER,
      4,
    );
  });

  it('is no stream by itself that only lies above or below zero', () => {
    const [one, other] = evenSpectra(inBin(60, 1, 3), inBin(60, 1, -2));
    const [flat] = evenSpectra(inBin(60), inBin(60));
    for (let bin = 1; bin < even.bins; bin++) {
      expect(one[bin]).toBeCloseTo(flat[bin] ?? 0, 4);
      expect(other[bin]).toBeCloseTo(flat[bin] ?? 0, 4);
    }
  });

  it('is a mean power of about 1 in noise', () => {
    const random = uniform(4);
    const noise = () =>
      Float64Array.from({ length: even.length }, () => random() + random() + random() - 1.5);
    let sum = 0;
    for (let times = 0; times < 20; times++)
      for (const powers of evenSpectra(noise(), noise()))
        for (let bin = 20; bin < 120; bin++) sum += Math.exp(powers[bin] ?? 0) / 4_000;
    expect(sum).toBeGreaterThan(0.92);
    expect(sum).toBeLessThan(1.12);
  });

  it('is read between samples along the straight line from one to the next', () => {
    // At half the speed: of what lies between, a tone of 16 degrees a sample leaves an image of tan(4 degrees) squared.
    const [one, other] = evenSpectra(
      inBin(11.5),
      inBin(11.5, 2),
      { reach: { share: 0, least: 1000, most: 1000 } },
      Float64Array.from({ length: even.length }, (_, i) => i / 2),
    );
    const degrees = (360 * 11.5) / 256;
    const image = 4 * Math.log(Math.tan(((degrees / 4) * Math.PI) / 180));
    for (const powers of [one, other]) {
      const around = (bin: number) =>
        Math.log([-1, 0, 1].reduce((sum, d) => sum + Math.exp(powers[bin + d] ?? 0), 0));
      expect(loudest(powers) * (shape.size / shape.rateHz)).toBeCloseTo(6, -0.3);
      expect(around(122) - around(6)).toBeCloseTo(image, 0);
    }
  });
});

describe('where a stretch is read so that a rising speed stands still', () => {
  it('is each sample at its place where nothing rises', () => {
    new Spectra(shape).places(0).forEach((place, i) => {
      expect(place).toBeCloseTo(i, 9);
    });
  });

  it('is the logarithm of one plus the rise, over the rise, from the middle on, and never outside of the stretch', () => {
    // 319.5 ms behind the middle: ln(1 + 0.4 * 0.3195) / 0.4 = 0.30066 s; before it: ln(1 - 0.1278) / 0.4 = -0.34184 s.
    const rising = new Spectra(shape).places(0.4);
    expect(rising[639]).toBeCloseTo(319.5 + 300.66, 1);
    expect(rising[0]).toBe(0);
    // 219.5 ms before it: ln(1 - 0.0878) / 0.4 = -0.22974 s.
    expect(rising[100]).toBeCloseTo(319.5 - 229.74, 1);
    expect(((rising[319] ?? 0) + (rising[320] ?? 0)) / 2).toBeCloseTo(319.5, 2);
    const falling = new Spectra(shape).places(-0.4);
    falling.forEach((place, i) => {
      expect(place).toBeCloseTo(639 - (rising[639 - i] ?? 0), 6);
    });
    expect(falling[639]).toBe(639);
  });

  it('is its beginning where the speed would have been none', () => {
    const places = new Spectra({ ...shape, length: 2_000, size: 2_048 }).places(1.1);
    expect(places[0]).toBe(0);
    expect(places.every((place, i) => place >= (places[i - 1] ?? 0))).toBe(true);
  });
});
