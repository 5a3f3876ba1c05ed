import fc from 'fast-check';
import { medianAbsoluteDeviation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { OUTLIER_SCORE, scoreOutliers } from '../../src/engineering/outliers.ts';

const scoresOf = (values: readonly number[]) => {
  const result = scoreOutliers(values);
  if (!result.ok) throw new Error(result.issue.code);
  return result.value;
};
const outliersAmong = (values: readonly number[]) =>
  values.filter((_, index) => Math.abs(scoresOf(values).scores[index] ?? 0) > OUTLIER_SCORE);

describe('modified z-scores', () => {
  test('are 0.6745 (x - median) / MAD', () => {
    // By hand: median 2.3, deviations 0.2 0.1 0 0.1 5.7, their median 0.1.
    const { median, medianDeviation, scores } = scoresOf([2.1, 2.2, 2.3, 2.4, 8]);
    expect(median).toBe(2.3);
    expect(medianDeviation).toBeCloseTo(0.1, 12);
    [-1.349, -0.6745, 0, 0.6745, 38.4465].forEach((score, index) => {
      expect(scores[index]).toBeCloseTo(score, 9);
    });
  });

  test('use the same median deviation as the statistics library', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -999, max: 999 }), { minLength: 5, maxLength: 60 }), values => {
        expect(scoresOf(values).medianDeviation).toBe(medianAbsoluteDeviation(values));
      }),
    );
  });

  test('do not change when all values are moved, or given in another unit', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -99, max: 99 }), { minLength: 5, maxLength: 30 }), values => {
        const changed = scoresOf(values.map(value => value * 4 + 64)).scores;
        scoresOf(values).scores.forEach((score, index) => {
          expect(changed[index]).toBeCloseTo(score, 9);
        });
      }),
    );
  });

  test('find one far value, which a plain z-score of six values never could', () => {
    expect(outliersAmong([2, 2.1, 2.2, 2.3, 2.4, 60])).toEqual([60]);
  });

  test('find one far value among equal ones, where the median deviation is zero', () => {
    expect(outliersAmong([2, 2, 2, 2, 2, 2, 9])).toEqual([9]);
    expect(outliersAmong([2, 2, 2, 2, 2])).toEqual([]);
  });

  test('are not claimed from fewer than five values, nor from values that are none', () => {
    expect(scoreOutliers([1, 2, 3, 400])).toMatchObject({ ok: false, issue: { code: 'tooLittleData' } });
    expect(scoreOutliers([1, 2, 3, 4, Number.NaN])).toMatchObject({
      ok: false,
      issue: { code: 'notANumber' },
    });
  });
});
