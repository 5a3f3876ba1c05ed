import fc from 'fast-check';
import { linearRegression } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { fitLine, spearmanCritical, student975 } from '../../src/engineering/statistics.ts';

const numbers = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 3, maxLength: 40 });

describe('a line through points', () => {
  test('is the same as the statistics library finds', () => {
    fc.assert(
      fc.property(numbers, numbers, (xs, ys) => {
        const count = Math.min(xs.length, ys.length);
        const [x, y] = [xs.slice(0, count), ys.slice(0, count)];
        fc.pre(new Set(x).size > 1);
        const theirs = linearRegression(x.map((each, i) => [each, y[i] ?? 0]));
        const ours = fitLine(x, y);
        expect(ours?.slope).toBeCloseTo(theirs.m, 9);
        expect(ours?.intercept).toBeCloseTo(theirs.b, 6);
      }),
    );
  });

  test('is not claimed from two points, nor from points above one another', () => {
    expect(fitLine([1, 2], [1, 2])).toBeUndefined();
    expect(fitLine([3, 3, 3], [1, 2, 3])).toBeUndefined();
  });

  test('has no error when the points lie on it', () => {
    expect(fitLine([0, 1, 2, 5], [1, 3, 5, 11])).toEqual({
      slope: 2,
      intercept: 1,
      slopeError: 0,
      residualDeviation: 0,
    });
  });
});

describe('critical values', () => {
  test("Student's t falls towards the normal deviate as freedom grows", () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 10_000 }), degrees => {
        expect(student975(degrees)).toBeGreaterThan(student975(degrees + 1));
        expect(student975(degrees)).toBeGreaterThan(1.9599);
      }),
    );
  });

  test("Student's t claims nothing below three degrees of freedom", () => {
    expect(student975(2)).toBeNaN();
    expect(student975(Number.NaN)).toBeNaN();
  });

  test('the rank correlation that chance reaches falls with more pairs, and joins its large-sample form', () => {
    for (let pairs = 5; pairs < 60; pairs += 1) {
      expect(spearmanCritical(pairs)).toBeGreaterThan(spearmanCritical(pairs + 1) ?? 1);
    }
  });

  test.each([4, 0, Number.NaN])('%s pairs are too few for any rank correlation', pairs => {
    expect(spearmanCritical(pairs)).toBeUndefined();
  });
});
