import fc from 'fast-check';
import { expect, it } from 'vitest';
import { shapeForNoise } from '../../../src/voice/speakers/for-noise.ts';
import { rms, tone } from '../../helpers/tones.ts';

const levelOf = (frequencyHz: number) =>
  rms({ samples: shapeForNoise(joinedTones(frequencyHz)), sampleRateHz: 16_000 });

/** A tone beside a louder one that sets the peak. */
function joinedTones(frequencyHz: number): Float32Array {
  const { samples } = tone(1, { frequencyHz, peak: 0.1 });
  samples[0] = 1;
  return samples;
}

it('whatever the sound, it is as long as before and stays within full scale', () => {
  const sound = fc.float32Array({ min: -1, max: 1, noNaN: true, maxLength: 300 });
  fc.assert(
    fc.property(sound, samples => {
      const shaped = shapeForNoise(samples);
      expect(shaped.length).toBe(samples.length);
      expect(shaped.every(sample => Math.abs(sample) <= 0.981)).toBe(true);
    }),
  );
});

it('silence stays silence', () => {
  expect(shapeForNoise(new Float32Array(100))).toEqual(new Float32Array(100));
});

it('a sound that was soft beside a louder one becomes louder', () => {
  expect(levelOf(2_000)).toBeGreaterThan(2 * rms(tone(1, { peak: 0.1 })));
});

it('low tones are lowered against high ones', () => {
  expect(levelOf(150)).toBeLessThan(0.5 * levelOf(2_000));
});
