import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normal } from '../../../audio-fixtures/random.ts';
import { through } from '../../../bench/hearing/microphones.ts';
import { levelled, meanPower, noiseAtSnr, speechPower } from '../../../bench/hearing/mix.ts';
import { tone } from '../../helpers/tones.ts';

const noiseOf = (seed: number, gain: number): Float32Array => {
  const gauss = normal(seed);
  return Float32Array.from({ length: 4_000 }, () => gain * gauss());
};

describe('speech and noise', () => {
  it('stand exactly as far apart as is asked for, however loud they were', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -5, max: 30 }),
        fc.double({ min: 0.001, max: 0.9, noNaN: true }),
        fc.integer({ min: 1, max: 99 }),
        (snrDb, gain, seed) => {
          const speech = levelled(tone(0.2, { peak: gain }).samples);
          const noise = noiseAtSnr(noiseOf(seed, gain), snrDb);
          expect(10 * Math.log10(speechPower(speech) / meanPower(noise))).toBeCloseTo(snrDb, 3);
        },
      ),
    );
  });

  it('are measured without the pauses of the speech', () => {
    const { samples } = tone(0.2, { peak: 0.5 });
    const withPause = new Float32Array(samples.length * 4);
    withPause.set(samples);
    expect(speechPower(withPause)).toBeCloseTo(speechPower(samples), 6);
  });

  it('stay silent when there is nothing to bring to a level', () => {
    expect(Math.max(...levelled(new Float32Array(1_000)))).toBe(0);
  });
});

describe('a microphone', () => {
  it('of a telephone headset lets little through below 300 Hz', () => {
    const passed = (frequencyHz: number) => {
      const { samples } = tone(0.5, { frequencyHz });
      return meanPower(through('bandLimited', samples)) / meanPower(samples);
    };
    expect(passed(100)).toBeLessThan(0.01);
    expect(passed(1_000)).toBeGreaterThan(0.8);
    expect(passed(7_000)).toBeLessThan(0.01);
  });

  it('that clips cuts the peaks off at full scale', () => {
    const clipped = through('clipped', tone(0.1, { peak: 0.5 }).samples);
    expect(Math.max(...clipped)).toBe(1);
  });

  it('in a bare room goes on hearing after the sound has ended', () => {
    const sound = new Float32Array(8_000);
    sound.set(tone(0.1).samples);
    expect(meanPower(sound.subarray(1_700, 3_000))).toBe(0);
    expect(meanPower(through('reverberant', sound).subarray(1_700, 3_000))).toBeGreaterThan(1e-5);
  });
});
