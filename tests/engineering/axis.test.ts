import { describe, expect, test } from 'vitest';
import { linear, nearLimits, roomy, ticks, timeTicks } from '../../src/engineering/axis.ts';

describe('a place along an axis', () => {
  test('lies as far between its ends as the value does between those of the range', () => {
    const scale = linear(10, 30, 100, 500);
    expect([10, 15, 30].map(scale.at)).toEqual([100, 200, 500]);
    expect(scale).toMatchObject({ from: 10, to: 30 });
    expect(linear(0, 10, 200, 0).at(2)).toBe(160);
  });

  test('is never outside: what is out of the range is put at its end', () => {
    expect([-50, 90].map(linear(10, 30, 100, 500).at)).toEqual([100, 500]);
  });

  test('of a range of one value is in the middle', () => {
    expect(linear(7, 7, 100, 500).at(7)).toBe(300);
    expect(linear(8, 7, 100, 500).at(7)).toBe(300);
  });
});

describe('round values along an axis', () => {
  test('are ones, twos or fives of a power of ten, about as many as are wanted', () => {
    expect(ticks(0, 10, 5)).toEqual([0, 2, 4, 6, 8, 10]);
    expect(ticks(3, 21, 4)).toEqual([5, 10, 15, 20]);
    expect(ticks(0, 900, 9)).toEqual([0, 100, 200, 300, 400, 500, 600, 700, 800, 900]);
    expect(ticks(-30, 30, 6)).toEqual([-30, -20, -10, -0, 10, 20, 30].map(value => value + 0));
    expect(ticks(0, 90, 12).length).toBeGreaterThan(8);
    expect(ticks(0.1, 0.3, 2)).toEqual([0.1, 0.2, expect.closeTo(0.3, 9)]);
  });

  test('are one at least, however few are wanted, and thirteen at the most', () => {
    expect(ticks(0, 10, 0)).toEqual([0, 10]);
    expect(ticks(0, 1000, 100)).toHaveLength(13);
  });

  test('of a range of one value are that value, and of none nothing', () => {
    expect(ticks(5, 5, 4)).toEqual([5]);
    expect(ticks(9, 5, 4)).toEqual([9]);
    expect(ticks(5, Number.POSITIVE_INFINITY, 4)).toEqual([5]);
    expect(ticks(Number.NaN, 5, 4)).toEqual([]);
  });
});

describe('times along an axis', () => {
  const minutes = (...values: number[]) => values.map(value => value * 60_000);

  test('are whole seconds, minutes and hours, as a clock has them', () => {
    expect(timeTicks(0, 3000, 3)).toEqual([0, 1000, 2000, 3000]);
    expect(timeTicks(...(minutes(0, 25) as [number, number]), 5)).toEqual(minutes(0, 5, 10, 15, 20, 25));
    expect(timeTicks(...(minutes(1, 60) as [number, number]), 4)).toEqual(minutes(15, 30, 45, 60));
    expect(timeTicks(...(minutes(60, 300) as [number, number]), 4)).toEqual(minutes(60, 120, 180, 240, 300));
    expect(timeTicks(0, 10, 0)).toEqual([0]);
  });

  test('of more than a week are round numbers of milliseconds', () => {
    expect(timeTicks(0, 1e9, 4)).toEqual([0, 5e8, 1e9]);
  });
});

describe('the range of an axis', () => {
  test('has a twelfth of air, or as much as its least span asks for, on either side', () => {
    expect(roomy([10, 20, 15], 5)).toEqual({ from: expect.closeTo(9.2, 9), to: expect.closeTo(20.8, 9) });
    expect(roomy([10, 20], 30)).toEqual({ from: 0, to: 30 });
  });

  test('is never empty: of one value a little around it, of none its least span', () => {
    expect(roomy([7], 4)).toEqual({ from: 5, to: 9 });
    const { from, to } = roomy([-1e12], 0);
    expect([from, to]).toEqual([-1e12 - 1000, -1e12 + 1000]);
    expect(roomy([], 4)).toEqual({ from: 0, to: 4 });
    expect(roomy([Number.NaN, Number.POSITIVE_INFINITY], 4)).toEqual({ from: 0, to: 4 });
    expect(roomy([Number.NaN, 10, 20], 5)).toEqual(roomy([10, 20], 5));
  });
});

describe('the limits beside readings', () => {
  test('are shown up to four times their spread away', () => {
    expect(nearLimits([100, 120, 105], [20, 21, 105, 199, 200])).toEqual([21, 105, 199]);
    expect(nearLimits([120, 100], [20, 200])).toEqual([]);
  });

  test('are shown as if the readings spread by 15 % of the highest, where that is more', () => {
    expect(nearLimits([100], [39, 41, 159, 161])).toEqual([41, 159]);
    expect(nearLimits([-100], [-161, -159, -41, -39])).toEqual([-159, -41]);
  });
});
