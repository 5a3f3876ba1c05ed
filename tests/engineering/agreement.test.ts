import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeAgreement } from '../../src/engineering/agreement.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

const at = (value: number | undefined, tolerance: number | undefined) => ({ value, tolerance });

describe('two readings of one quantity', () => {
  test('agree up to the sum of their tolerances, whichever comes first', () => {
    expect(valueFrom(judgeAgreement(at(100, 4), at(107, 3), 'kPa'))).toMatchObject({ met: true, max: 7 });
    expect(valueFrom(judgeAgreement(at(107, 3), at(99, 4), 'kPa')).met).toBe(false);
  });

  test('each off the truth by no more than its tolerance always agree', () => {
    fc.assert(
      fc.property(
        fc.tuple(
          between(-100, 4000),
          between(0.1, 50),
          between(0.1, 50),
          between(-0.999, 0.999),
          between(-0.999, 0.999),
        ),
        ([truth, one, other, e1, e2]) => {
          const verdict = valueFrom(
            judgeAgreement(at(truth + e1 * one, one), at(truth + e2 * other, other), 'x'),
          );
          expect(verdict.met).toBe(true);
        },
      ),
    );
  });

  test('that are no numbers, or have no tolerance, do not agree by chance: there is no verdict', () => {
    expect(judgeAgreement(at(Number.NaN, 1), at(1, 1), 'V').ok).toBe(false);
    expect(judgeAgreement(at(1, undefined), at(1, 1), 'V').ok).toBe(false);
    expect(judgeAgreement(at(1, 1), at(1, -1), 'V').ok).toBe(false);
    fc.assert(
      fc.property(anyReading, anyReading, (one, other) =>
        expectSound(judgeAgreement(at(one, 1), at(other, 1), 'V')),
      ),
    );
  });
});
