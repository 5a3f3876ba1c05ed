import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sayNumber } from '../../../src/voice/number-words/say.ts';
import { numberReader } from '../../../src/voice/number-words/slot.ts';

describe('how the tool says a number', () => {
  it.each([
    [42, 0, 'forty two', 'four two'],
    [180, 0, 'one hundred eighty', 'one eight zero'],
    [12.6, 1, 'twelve point six', 'one two point six'],
    [12, 1, 'twelve point zero', 'one two point zero'],
    [-5, 0, 'minus five', 'minus five'],
    [-0.04, 1, 'zero point zero', 'zero point zero'],
    [1800, 0, 'one thousand eight hundred', 'one eight zero zero'],
  ])('says %d with %d decimals grouped and digit by digit', (value, decimals, grouped, digits) => {
    expect(sayNumber(value, 'grouped', decimals)).toBe(grouped);
    expect(sayNumber(value, 'digitByDigit', decimals)).toBe(digits);
  });

  it('is understood again in both styles, for any value that is listened for', () => {
    const reader = numberReader({ id: 'n', leads: [], units: [], min: -40, max: 400, step: 0.1 });
    fc.assert(
      fc.property(
        fc.integer({ min: -400, max: 4000 }),
        fc.constantFrom('grouped', 'digitByDigit'),
        (n, style) => {
          expect(reader.read(sayNumber(n / 10, style, 1))).toEqual([n / 10]);
        },
      ),
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e6])('refuses to say %d', value => {
    expect(() => sayNumber(value, 'grouped')).toThrow(RangeError);
  });
});
