import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FEWEST_OTHERS, standingAmong } from '../../src/engineering/normal-range.ts';
import { seeded } from '../../src/rehearsal/random.ts';

const TWELVE = [5, 5.5, 6, 6, 6, 6.5, 6.5, 7, 7, 7.5, 8, 8];
const standing = (value: number, others: readonly number[] = TWELVE, resolution = 0.5) => {
  const result = standingAmong(value, others, resolution);
  return result.ok ? result.value : result.issue.code;
};

describe('a value among others of its kind', () => {
  test('is told with how many are below and above it, and what is normal among them', () => {
    // The median is 6.5, the median deviation 0.5: 3.5 * 0.5 / 0.6745 = 2.594...
    expect(standing(11)).toEqual({
      others: 12,
      below: 12,
      above: 0,
      median: 6.5,
      min: expect.closeTo(3.9055, 3),
      max: expect.closeTo(9.0945, 3),
      within: false,
    });
    expect(standing(9)).toMatchObject({ within: true });
    expect(standing(9.1)).toMatchObject({ within: false });
    expect(standing(3.9)).toMatchObject({ below: 0, above: 12, within: false });
  });

  test('is never called unlike for less than two readings of the same may differ by', () => {
    const same = Array.from({ length: 12 }, () => 14.2);
    expect(standing(14.5, same, 0.3)).toMatchObject({
      within: true,
      min: expect.closeTo(13.9),
      max: expect.closeTo(14.5),
    });
    expect(standing(14.51, same, 0.3)).toMatchObject({ within: false });
  });

  test('hears nothing of a few odd ones', () => {
    const odd = [...TWELVE, 60, 80];
    expect(standing(11, odd)).toMatchObject({ below: 12, above: 2, others: 14, within: false });
  });

  test('is not spoken of among too few, or among what is no number', () => {
    expect(standing(11, TWELVE.slice(1))).toBe('tooLittleData');
    expect(standing(11, [...TWELVE, Number.NaN])).toBe('notANumber');
    expect(standing(Number.NaN)).toBe('notANumber');
    expect(standing(11, TWELVE, -1)).toBe('outOfRange');
    expect(standingAmong(undefined, TWELVE, 1)).toMatchObject({ issue: { code: 'missing' } });
  });

  test('stands the same whatever the order and the unit of all', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: FEWEST_OTHERS, maxLength: 60 }),
        fc.integer({ min: 0, max: 1000 }),
        (others, value) => {
          const one = standing(value, others, 4);
          expect(standing(value, others.toReversed(), 4)).toEqual(one);
          expect(
            standing(
              value * 8,
              others.map(other => other * 8),
              32,
            ),
          ).toMatchObject(
            typeof one === 'string' ? {} : { below: one.below, above: one.above, within: one.within },
          );
        },
      ),
    );
  });

  test('that is one of them is called unlike them in at most 4 of 100 cases, from the fewest on', () => {
    const random = seeded(1, 'normal');
    // Twelve evenly spread numbers add up to nearly a normal one.
    const some = () => Array.from({ length: 12 }, () => random.next()).reduce((sum, each) => sum + each, 0);
    const cases = 2000;
    let called = 0;
    for (let turn = 0; turn < cases; turn += 1) {
      const result = standingAmong(some(), Array.from({ length: FEWEST_OTHERS }, some), 0);
      if (result.ok && !result.value.within) called += 1;
    }
    expect(called / cases).toBeLessThan(0.04);
    expect(called).toBeGreaterThan(0);
  });
});
