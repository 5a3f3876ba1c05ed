import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { freezePoint, massShareOf, shareForNight } from '../../src/engineering/glycol.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

const glycol = fc.constantFrom('ethylene' as const, 'propylene' as const);
const share = between(0, 0.578);

describe('the freezing point of a mix', () => {
  test('falls, and the mass share rises, with every bit of glycol', () => {
    fc.assert(
      fc.property(glycol, share, share, (kind, a, b) => {
        const [weak, strong] = [Math.min(a, b), Math.max(a, b)];
        expect(valueFrom(freezePoint(kind, weak))).toBeGreaterThanOrEqual(
          valueFrom(freezePoint(kind, strong)),
        );
        expect(valueFrom(massShareOf(kind, weak))).toBeLessThanOrEqual(valueFrom(massShareOf(kind, strong)));
      }),
    );
  });

  test('is the coldest night less the margin when the share was chosen for that', () => {
    const night = between(-40, 0);
    fc.assert(
      fc.property(glycol, night, between(0.01, 8), (kind, nightLowC, marginK) => {
        const chosen = valueFrom(shareForNight(kind, { nightLowC, marginK }));
        expect(Math.abs(valueFrom(freezePoint(kind, chosen)) - (nightLowC - marginK))).toBeLessThan(1e-9);
      }),
    );
  });

  test('needs no glycol where water would not freeze', () => {
    expect(valueFrom(shareForNight('ethylene', { nightLowC: 10, marginK: 5 }))).toBe(0);
  });

  test('is not promised beyond the table', () => {
    expect(shareForNight('ethylene', { nightLowC: -45, marginK: 5 })).toMatchObject({
      issue: { code: 'noSolution' },
    });
    expect(freezePoint('ethylene', 0.58)).toMatchObject({
      issue: { code: 'outOfRange', input: 'glycolShare' },
    });
    expect(freezePoint('propylene', undefined)).toMatchObject({ issue: { code: 'missing' } });
  });

  test('is never a number that is not finite, whatever is entered', () => {
    fc.assert(
      fc.property(glycol, anyReading, anyReading, (kind, a, b) => {
        expectSound(freezePoint(kind, a));
        expectSound(massShareOf(kind, a));
        expectSound(shareForNight(kind, { nightLowC: a, marginK: b }));
      }),
    );
  });
});
