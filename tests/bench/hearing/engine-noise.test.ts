import { describe, expect, it } from 'vitest';
import { engineNoise, firingHz } from '../../../bench/hearing/engine-noise.ts';
import { meanPower } from '../../../bench/hearing/mix.ts';

const rateHz = 16_000;

/** Share of the power that one frequency has. */
function shareAt(samples: Float32Array, hz: number): number {
  let [re, im] = [0, 0];
  samples.forEach((sample, i) => {
    re += sample * Math.cos((2 * Math.PI * hz * i) / rateHz);
    im += sample * Math.sin((2 * Math.PI * hz * i) / rateHz);
  });
  return (2 * (re * re + im * im)) / samples.length ** 2 / meanPower(samples);
}

describe('the firing frequency of a four-stroke engine', () => {
  // Each cylinder fires once in two turns of the crankshaft: arithmetic, no source needed.
  it.each([
    { rpm: 600, cylinders: 6, hz: 30 },
    { rpm: 1800, cylinders: 4, hz: 60 },
    { rpm: 2100, cylinders: 8, hz: 140 },
  ])('is $hz Hz at $rpm rpm with $cylinders cylinders', ({ rpm, cylinders, hz }) => {
    expect(firingHz(rpm, cylinders)).toBeCloseTo(hz, 9);
  });
});

describe('synthesized engine noise', () => {
  const options = { cylinders: 6, rpmAt: () => 800, seconds: 1, seed: 3 };

  it('has its lines at the harmonics of the firing frequency, and not between them', () => {
    const noise = engineNoise(options);
    // The governor hunts a little, so a line is looked for within 2 % of its place.
    const near = (hz: number) =>
      Math.max(
        ...[-2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2].map(percent => shareAt(noise, hz * (1 + percent / 100))),
      );
    for (const harmonic of [1, 2, 3]) {
      const line = near(harmonic * firingHz(800, 6));
      expect(line, `harmonic ${harmonic}`).toBeGreaterThan(10 * near((harmonic + 0.5) * firingHz(800, 6)));
    }
  });

  it('is the same for the same seed, and another for another', () => {
    const short = { ...options, seconds: 0.1 };
    expect(engineNoise(short)).toEqual(engineNoise(short));
    expect(engineNoise(short)).not.toEqual(engineNoise({ ...short, seed: 4 }));
  });
});
