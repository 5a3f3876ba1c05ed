import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { conversionOf, fromSi, toSi } from '../../src/engineering/units.ts';
import { between } from './properties.ts';

const units = [
  ...(['degC', 'degF', 'm', 'ft'] as const),
  ...(['kPa', 'bar', 'psi', 'litre', 'usQuart', 'usGallon'] as const),
];
const anyUnit = fc.constantFrom(...units);

describe('user units', () => {
  test('there and back gives the same value', () => {
    fc.assert(
      fc.property(anyUnit, between(-200, 1e6), (unit, valueSi) => {
        const user = fromSi(valueSi, unit);
        const back = user.ok ? toSi(user.value, unit) : user;
        expect(back.ok && Math.abs(back.value - valueSi)).toBeLessThanOrEqual(
          1e-12 * (1000 + Math.abs(valueSi)),
        );
      }),
    );
  });

  test('more in one unit is more in the other', () => {
    const value = between(-200, 1e6);
    fc.assert(
      fc.property(anyUnit, value, value, (unit, a, b) => {
        const [low, high] = [toSi(Math.min(a, b), unit), toSi(Math.max(a, b), unit)];
        expect(low.ok && high.ok && low.value <= high.value).toBe(true);
      }),
    );
  });

  test('no double whatever gives a value that is not finite', () => {
    fc.assert(
      fc.property(anyUnit, fc.double(), (unit, value) => {
        for (const result of [toSi(value, unit), fromSi(value, unit)]) {
          expect(!result.ok || Number.isFinite(result.value)).toBe(true);
        }
      }),
    );
  });

  test('nothing is colder than absolute zero', () => {
    expect(toSi(-460, 'degF')).toMatchObject({ ok: false, issue: { code: 'outOfRange', input: 'degF' } });
    expect(fromSi(-274, 'degF')).toMatchObject({ ok: false, issue: { code: 'outOfRange', input: 'degC' } });
  });

  test('each unit says which SI unit it is kept in', () => {
    expect(units.map(unit => conversionOf(unit).si)).toEqual([
      ...['degC', 'degC', 'm', 'm'],
      ...['kPa', 'kPa', 'kPa', 'litre', 'litre', 'litre'],
    ]);
  });
});
