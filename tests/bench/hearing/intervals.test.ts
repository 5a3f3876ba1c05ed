import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countInterval, shareInterval } from '../../../bench/hearing/intervals.ts';

describe('the interval of a share', () => {
  it('is that of the worked example of 81 of 263 (Newcombe 1998): 25.5 to 36.6 %', () => {
    const [low, high] = shareInterval(81, 263);
    expect(low).toBeCloseTo(0.2553, 4);
    expect(high).toBeCloseTo(0.3662, 4);
  });

  it('holds the share, stays a share, and is narrower the more was counted', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (whole, p) => {
          const part = Math.round(p * whole);
          const [low, high] = shareInterval(part, whole);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(high).toBeLessThanOrEqual(1);
          expect(part / whole).toBeGreaterThanOrEqual(low - 1e-9);
          expect(part / whole).toBeLessThanOrEqual(high + 1e-9);
          const [closerLow, closerHigh] = shareInterval(part * 4, whole * 4);
          expect(closerHigh - closerLow).toBeLessThan(high - low);
        },
      ),
    );
  });

  it('says nothing where nothing was counted', () => {
    expect(shareInterval(0, 0)).toEqual([0, 1]);
  });
});

describe('the interval of a count', () => {
  it('is near the exact one of a Poisson count: less than 3.7 for none, 4.8 to 18.4 for ten', () => {
    // Exact: 0 to 3.69 (two-sided), 4.80 to 18.39; Byar's is within a few in a hundred from one on.
    const [noneLow, noneHigh] = countInterval(0);
    expect(noneLow).toBe(0);
    expect(noneHigh).toBeGreaterThan(3);
    expect(noneHigh).toBeLessThan(3.9);
    const [low, high] = countInterval(10);
    expect(low).toBeCloseTo(4.8, 1);
    expect(high).toBeCloseTo(18.4, 1);
  });
});
