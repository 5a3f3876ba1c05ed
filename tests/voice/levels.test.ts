import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isClipping, levelDbfs, silentDbfs } from '../../src/voice/levels.ts';
import { tone } from '../helpers/tones.ts';

describe('the level of a block', () => {
  it('of a tone at full scale is 3 dB below it', () => {
    expect(levelDbfs(tone(1, { peak: 1 }).samples)).toBeCloseTo(-3.01, 2);
  });

  it('falls by 6 dB with half the amplitude', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1, noNaN: true }), peak => {
        const fall =
          levelDbfs(tone(0.1, { peak }).samples) - levelDbfs(tone(0.1, { peak: peak / 2 }).samples);
        expect(fall).toBeCloseTo(6.02, 2);
      }),
    );
  });

  it.each([
    ['silence', new Float32Array(320)],
    ['no samples', new Float32Array(0)],
    ['what is fainter than 16 bits can hold', new Float32Array(320).fill(1e-6)],
    ['samples that are no numbers', new Float32Array(320).fill(Number.NaN)],
  ])('of %s is the lowest there is', (_, samples) => {
    expect(levelDbfs(samples)).toBe(silentDbfs);
  });
});

describe('clipping', () => {
  it('is three samples at the edge, above or below', () => {
    expect(isClipping(Float32Array.of(0, 1, 0.2, -1, 0.999))).toBe(true);
    expect(isClipping(Float32Array.of(0, 1, 0.2, -1, 0.99))).toBe(false);
  });

  it('is not a loud tone that fits, and is one that does not', () => {
    expect(isClipping(tone(0.1, { peak: 0.99 }).samples)).toBe(false);
    expect(isClipping(tone(0.1, { peak: 1.5 }).samples)).toBe(true);
  });
});
