import { describe, expect, test } from 'vitest';
import { anyCurve } from '../../src/engineering/first-order-family.ts';
import { fitFirstOrder } from '../../src/engineering/first-order-fit.ts';
import { gather } from '../../src/engineering/first-order-points.ts';
import { findLateStart, findSlopeBreak } from '../../src/engineering/slope-break.ts';

const STEP_S = 30;
const ORIGIN_S = 1000;
const LAST_S = 29 * STEP_S;
const BREAK_S = 600;

/** The unbroken curve through a reading every half minute, from a clock that has run for a while. */
function fitted(valueAt: (sinceS: number) => number) {
  const readings = Array.from({ length: 30 }, (_, i) => ({
    timeS: ORIGIN_S + STEP_S * i,
    value: valueAt(STEP_S * i),
  }));
  const fit = fitFirstOrder(anyCurve(gather(readings)), readings, 0);
  if (!fit) throw new Error('No curve fits these readings.');
  return fit;
}

const curve = (sinceS: number): number => 110 - 100 * Math.exp(-sinceS / 500);
/** Of that curve, per second. */
const slopeOf = (sinceS: number): number => (100 / 500) * Math.exp(-sinceS / 500);
/** The curve until ten minutes, and from there on a line with this share of its slope. */
const bent = (share: number) => (sinceS: number) =>
  sinceS <= BREAK_S ? curve(sinceS) : curve(BREAK_S) + share * slopeOf(BREAK_S) * (sinceS - BREAK_S);
const found = (valueAt: (sinceS: number) => number, shortfall = 2) =>
  findSlopeBreak(fitted(valueAt), 0, shortfall);

describe('the moment when a rise suddenly flattens', () => {
  test('is that of the last reading on the curve, with the slopes before and after it', () => {
    const at = found(bent(0));
    expect(at?.atS).toBe(ORIGIN_S + BREAK_S);
    expect(at?.value).toBeCloseTo(curve(BREAK_S), 0);
    expect(Math.abs((at?.slopeBeforePerS ?? 0) / slopeOf(BREAK_S) - 1)).toBeLessThan(0.05);
    expect(at?.slopeAfterPerS).toBeCloseTo(0, 9);
  });

  test('leaves at most half of the slope', () => {
    expect(found(bent(0.4))?.atS).toBe(ORIGIN_S + BREAK_S);
    expect(found(bent(0.4))?.slopeAfterPerS).toBeCloseTo(0.4 * slopeOf(BREAK_S), 6);
    expect(found(bent(0.6), 0.5)?.atS).not.toBe(ORIGIN_S + BREAK_S);
  });

  test('may be followed by a fall', () => {
    expect(found(bent(-1))?.slopeAfterPerS).toBeCloseTo(-slopeOf(BREAK_S), 6);
  });

  test('leaves the last reading below where the curve was going by as much as is asked for', () => {
    const shortfall = curve(LAST_S) - curve(BREAK_S);
    expect(found(bent(0), 0.9 * shortfall)).toBeDefined();
    expect(found(bent(0), 1.1 * shortfall)).toBeUndefined();
  });

  test('is one of a rise: what falls and then falls faster has none', () => {
    const cooling = (sinceS: number): number => 20 + 80 * Math.exp(-sinceS / 500);
    const falls = (sinceS: number): number =>
      sinceS <= BREAK_S ? cooling(sinceS) : cooling(BREAK_S) - 0.5 * (sinceS - BREAK_S);
    expect(found(falls, -100)).toBeUndefined();
  });
});

describe('the moment when a rise takes hold', () => {
  /** Between the readings at 300 s and at 330 s. */
  const LATE_S = 315;
  const late = (slopePerS: number) => (sinceS: number) =>
    sinceS < LATE_S ? 10 - slopePerS * (LATE_S - sinceS) : curve(sinceS - LATE_S);

  test('is that of the first reading on the curve', () => {
    expect(findLateStart(fitted(late(0)), 0)).toBe(ORIGIN_S + 330);
  });

  test('is none where it began no flatter than it went on', () => {
    expect(findLateStart(fitted(curve), 0)).toBeUndefined();
    expect(findLateStart(fitted(late(0.6 * slopeOf(0))), 0)).not.toBe(ORIGIN_S + 330);
  });
});
