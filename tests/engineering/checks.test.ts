import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { describeRange, okWithin, refuse } from '../../src/engineering/checks.ts';

const RANGE = { min: -40, max: 50, unit: 'degC' };

describe('input guards', () => {
  test('an absent input is missing, and the issue says what would be allowed', () => {
    expect(refuse({ ambientC: [undefined, RANGE] })).toEqual({
      ok: false,
      issue: { code: 'missing', input: 'ambientC', allowed: '-40 to 50 degC' },
    });
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])(
    '%s is not a usable number, and is given as text',
    value => {
      expect(refuse({ ambientC: [value, RANGE] })?.issue).toMatchObject({
        code: 'notANumber',
        given: String(value),
      });
    },
  );

  test('the first input at fault is the one named', () => {
    expect(refuse({ a: [0, RANGE], b: [51, RANGE], c: [Number.NaN, RANGE] })?.issue).toMatchObject({
      code: 'outOfRange',
      input: 'b',
      given: 51,
    });
  });

  test('any double passes exactly when it lies within the range, ends included', () => {
    fc.assert(
      fc.property(fc.double(), value => {
        const passes = value >= RANGE.min && value <= RANGE.max;
        expect(refuse({ x: [value, RANGE] }) === undefined).toBe(passes);
      }),
    );
    expect(refuse({ x: [RANGE.min, RANGE], y: [RANGE.max, RANGE] })).toBeUndefined();
  });

  test('a worked-out value outside the stated results is refused', () => {
    const rule = { id: 'r', source: 's', validity: 'v' };
    expect(okWithin(3, RANGE, rule, 'x')).toEqual({ ok: true, value: 3, rule });
    expect(okWithin(Number.NaN, RANGE, rule, 'x')).toMatchObject({
      ok: false,
      issue: { code: 'notANumber' },
    });
    expect(okWithin(51, RANGE, rule, 'x')).toMatchObject({ ok: false, issue: { code: 'outOfRange' } });
  });

  test('a range without a unit reads without a trailing space', () => {
    expect(describeRange({ min: 0, max: 1, unit: '' })).toBe('0 to 1');
  });
});
