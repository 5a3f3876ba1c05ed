import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coldestAfter, heatBounds } from '../../src/engineering/heat-bounds.ts';
import { between } from './properties.ts';

const six = { displacementL: 6.8, coolantL: 24, oilL: 15 };

describe('heat bounds', () => {
  test('of 6.8 litres with 24 of coolant: 30.6 kW of fuel into 81.6 kJ/K; 295.5 kJ/K over 107.7 W/K', () => {
    const bounds = heatBounds(six);
    expect(bounds.ok && bounds.value.warmingKPerS).toBeCloseTo(30_600 / 81_600, 6);
    expect(bounds.ok && bounds.value.coolingS).toBeCloseTo(295_530 / (25 * 1.2 * 6.8 ** (2 / 3)), 3);
  });

  test('more coolant warms and cools more slowly', () => {
    fc.assert(
      fc.property(between(0.5, 100), between(2, 290), (displacementL, coolantL) => {
        const less = heatBounds({ displacementL, coolantL, oilL: 10 });
        const more = heatBounds({ displacementL, coolantL: coolantL + 5, oilL: 10 });
        expect(less.ok && more.ok && more.value.warmingKPerS < less.value.warmingKPerS).toBe(true);
        expect(less.ok && more.ok && more.value.coolingS > less.value.coolingS).toBe(true);
      }),
    );
  });

  test.each(['displacementL', 'coolantL', 'oilL'])('are refused without a possible %s', input => {
    for (const value of [undefined, Number.NaN, 0, -1, 1000])
      expect(heatBounds({ ...six, [input]: value })).toMatchObject({ ok: false, issue: { input } });
  });
});

describe('the coldest that it can have become', () => {
  test('is what it was at first, and the air after a long time', () => {
    expect(coldestAfter(90, 10, 0, 3000)).toBe(90);
    expect(coldestAfter(90, 10, 3000, 3000)).toBeCloseTo(10 + 80 / Math.E, 9);
    expect(coldestAfter(90, 10, 1e6, 3000)).toBeCloseTo(10, 9);
  });

  test('does not rise towards warmer air: that is no bound from below', () => {
    expect(coldestAfter(5, 10, 1e6, 3000)).toBe(5);
  });
});
