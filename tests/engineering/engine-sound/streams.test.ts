import { describe, expect, it } from 'vitest';
import {
  bandCount,
  bandsHz,
  Streams,
  soundRateHz,
  streamRateHz,
} from '../../../src/engineering/engine-sound/streams.ts';

interface Sample {
  readonly values: readonly number[];
  readonly powers: readonly number[];
}

function streamed(samples: Float32Array): Sample[] {
  const all: Sample[] = [];
  new Streams().push(samples, (values, powers) => all.push({ values: [...values], powers: [...powers] }));
  return all;
}
const tone = (hz: number, seconds: number) =>
  Float32Array.from({ length: seconds * soundRateHz }, (_, i) =>
    Math.sin((2 * Math.PI * hz * i) / soundRateHz),
  );
const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;
const FLOOR = 1e-12;

describe('the streams of a sound', () => {
  it('have a sample for each millisecond, of the wave and of five bands, in blocks of any length', () => {
    const sound = tone(300, 0.1);
    const whole = streamed(sound);
    expect(whole).toHaveLength(0.1 * streamRateHz);
    expect(whole[0]?.values).toHaveLength(1 + bandCount);
    const parts: Sample[] = [];
    const streams = new Streams();
    for (let at = 0; at < sound.length; at += 77)
      streams.push(sound.subarray(at, at + 77), (values, powers) =>
        parts.push({ values: [...values], powers: [...powers] }),
      );
    expect(parts).toEqual(whole);
    expect(streamed(sound.subarray(0, 15))).toHaveLength(0);
    expect(streamed(sound.subarray(0, 16))).toHaveLength(1);
  });

  it('carry the wave up to 430 Hz, and nothing that would come back as a lower tone', () => {
    const loudness = (hz: number) =>
      Math.sqrt(
        2 *
          mean(
            streamed(tone(hz, 0.4))
              .slice(200)
              .map(({ values: [wave] }) => (wave ?? 0) ** 2),
          ),
      );
    expect(loudness(60)).toBeCloseTo(1, 2);
    expect(loudness(430)).toBeCloseTo(Math.SQRT1_2, 1);
    expect(loudness(1_940)).toBeLessThan(0.003);
  });

  it('have the power of a tone in the band that it lies in: half, of full scale', () => {
    bandsHz.forEach(([low, high], band) => {
      const powers = streamed(tone(Math.sqrt(low * high), 0.4)).slice(200);
      const means = bandsHz.map((_, other) => mean(powers.map(each => each.powers[other] ?? 0)));
      // What lies at the geometric middle of two corners so near loses a little at each.
      expect(means[band]).toBeGreaterThan(0.3);
      expect(means[band]).toBeLessThan(0.5);
      means.forEach((power, other) => {
        if (Math.abs(other - band) > 1) expect(power).toBeLessThan(0.04);
        if (other !== band) expect(power).toBeLessThan(0.5 * (means[band] ?? 0));
      });
    });
  });

  it('take the loudness of a band above a twentieth of its mean, which is what it begins with', () => {
    for (const { values, powers } of streamed(tone(400, 0.001)))
      powers.forEach((power, band) => {
        expect(values[1 + band]).toBeCloseTo(Math.log(1.05 * power + FLOOR), 9);
      });
  });

  it('let that mean follow by a thousandth each millisecond', () => {
    const samples = streamed(Float32Array.from([...tone(400, 0.2), ...new Float32Array(0.3 * soundRateHz)]));
    const means = new Array<number>(bandCount).fill(0);
    samples.forEach(({ values, powers }, ms) => {
      powers.forEach((power, band) => {
        const before = means[band] ?? 0;
        means[band] = ms === 0 ? power : 0.999 * before + 0.001 * power;
        expect(values[1 + band]).toBeCloseTo(Math.log(power + 0.05 * (means[band] ?? 0) + FLOOR), 6);
      });
    });
    // A dip between blows has a bottom: the mean of a loud band, not silence.
    expect(samples.at(-1)?.values[2]).toBeGreaterThan(Math.log(0.05 * 0.03));
  });

  it('are a floor and no number without end where there is nothing, or what is no number', () => {
    for (const nothing of [0, Number.NaN, Number.POSITIVE_INFINITY]) {
      const [first] = streamed(new Float32Array(16).fill(nothing));
      expect(first?.values).toEqual([0, ...Array.from({ length: bandCount }, () => Math.log(FLOOR))]);
      expect(first?.powers).toEqual(Array.from({ length: bandCount }, () => 0));
    }
  });
});
