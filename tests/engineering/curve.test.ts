import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { interpolate, invertFalling } from '../../src/engineering/curve.ts';
import { between } from './properties.ts';

const FALLING = [
  [0, 10],
  [1, 4],
  [5, -2],
] as const;

describe('reading a curve', () => {
  test('stays between the two points on either side', () => {
    fc.assert(
      fc.property(between(0, 5), x => {
        const y = interpolate(FALLING, x);
        const [low, high] = x <= 1 ? [4, 10] : [-2, 4];
        expect(y).toBeGreaterThanOrEqual(low);
        expect(y).toBeLessThanOrEqual(high);
      }),
    );
  });

  test('gives the points themselves exactly', () => {
    for (const [x, y] of FALLING) expect(interpolate(FALLING, x)).toBe(y);
  });

  test.each([-0.1, 5.1, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    'gives nothing at %d, where there is no curve',
    x => expect(interpolate(FALLING, x)).toBeUndefined(),
  );

  test('gives nothing from no points at all', () => {
    expect(interpolate([], 0)).toBeUndefined();
  });

  test('backwards gives x for y', () => {
    fc.assert(
      fc.property(between(0, 5), x => {
        const back = interpolate(invertFalling(FALLING), interpolate(FALLING, x) ?? Number.NaN);
        expect(back).toBeCloseTo(x, 9);
      }),
    );
  });
});
