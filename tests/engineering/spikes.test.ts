import { describe, expect, test } from 'vitest';
import type { Reading } from '../../src/engineering/readings.ts';
import { withoutSpikes } from '../../src/engineering/spikes.ts';

/** A reading every ten seconds. */
const every10s = (...values: number[]): Reading[] => values.map((value, i) => ({ timeS: 10 * i, value }));
const kept = (readings: readonly Reading[], atLeast = 5): number[] =>
  withoutSpikes(readings, atLeast).map(({ value }) => value);

describe('a reading that jumps away from both its neighbours and back', () => {
  test('is set aside where it jumps by more than is asked for, up or down', () => {
    expect(kept(every10s(20, 21, 72, 23, 24))).toEqual([20, 21, 23, 24]);
    expect(kept(every10s(20, 21, 2, 23, 24))).toEqual([20, 21, 23, 24]);
    expect(kept(every10s(20, 21, 27, 23, 24))).toEqual([20, 21, 27, 23, 24]);
    expect(kept(every10s(20, 21, 27.1, 23, 24))).toEqual([20, 21, 23, 24]);
  });

  test('is kept where fewer than five were read', () => {
    expect(kept(every10s(20, 72, 22, 23))).toEqual([20, 72, 22, 23]);
  });

  test('is kept where the others scatter as much: by five standard deviations, 1.4826 of the median one each', () => {
    /** Two of three are 1.5 off the line through their neighbours, the third lies on it: the bound is 11.12. */
    const scattered = (at: number): Reading[] =>
      every10s(...Array.from({ length: 30 }, (_, i) => (i === 14 ? at : ([1, -1, 0][i % 3] ?? 0))));
    expect(kept(scattered(11.1), 1)).toContain(11.1);
    expect(kept(scattered(11.2), 1)).not.toContain(11.2);
  });

  test('is not the first, nor the last, nor one next to them: which of the two is off cannot be told', () => {
    for (const place of [0, 1, 6, 7]) {
      const readings = every10s(20, 20, 20, 20, 20, 20, 20, 20).map((each, i) =>
        i === place ? { ...each, value: 70 } : each,
      );
      expect(kept(readings)).toHaveLength(8);
    }
  });

  test('is one alone: two in a row may be real, the same way or against each other', () => {
    const same = [0, 0, 0, 0, 40, 40, 0, 0, 0, 0];
    expect(kept(every10s(...same))).toEqual(same);
    const against = [0, 0, 0, 0, -20, 40, 20, 0, 0, 0, 0];
    expect(kept(every10s(...against), 15)).toEqual(against);
  });

  test('is one off the line between its neighbours, however far apart in time', () => {
    const uneven = [0, 10, 100, 110, 300, 310, 320].map(timeS => ({ timeS, value: 20 + 0.2 * timeS }));
    expect(withoutSpikes(uneven, 1)).toEqual(uneven);
  });

  test('is set aside, too, where others were read at one moment', () => {
    const timesS = [0, 0, 0, 10, 20, 30, 40, 50, 60, 70];
    const readings = timesS.map(timeS => ({ timeS, value: timeS === 20 ? 70 : 20 }));
    expect(kept(readings)).toEqual(Array(9).fill(20));
  });
});
