import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeCapOpening, judgeHeatSoak } from '../../src/engineering/heat-soak.ts';

const HOT = { coolantC: 92, soakRiseK: 10, capKpa: 100, altitudeM: 0, marginK: 5 };

describe('heat soak', () => {
  test('a working cap holds hot coolant off the boil where an open one would not', () => {
    const result = judgeHeatSoak({ ...HOT, coolantC: 98 });
    expect(result).toMatchObject({ ok: true, value: { underCap: { met: true }, capOff: { met: false } } });
  });

  test('coolant too hot for the cap has a negative margin', () => {
    const result = judgeHeatSoak({ ...HOT, coolantC: 112 });
    expect(result.ok && result.value.underCap.margin).toBeLessThan(0);
  });

  test('height, a weaker cap and hotter coolant each only lessen the margin', () => {
    fc.assert(
      fc.property(
        fc.record({
          coolantC: fc.integer({ min: 20, max: 120 }),
          soakRiseK: fc.integer({ min: 0, max: 20 }),
          capKpa: fc.integer({ min: 10, max: 150 }),
          altitudeM: fc.integer({ min: 0, max: 4000 }),
          marginK: fc.integer({ min: 0, max: 10 }),
        }),
        inputs => {
          const margin = (changed: Partial<typeof inputs>): number => {
            const result = judgeHeatSoak({ ...inputs, ...changed });
            return result.ok ? result.value.underCap.margin : Number.NaN;
          };
          const now = margin({});
          expect(margin({ altitudeM: inputs.altitudeM + 500 })).toBeLessThan(now);
          expect(margin({ capKpa: inputs.capKpa - 10 })).toBeLessThan(now);
          expect(margin({ coolantC: inputs.coolantC + 1 })).toBeCloseTo(now - 1, 9);
          expect(margin({ soakRiseK: inputs.soakRiseK + 1 })).toBeCloseTo(now - 1, 9);
        },
      ),
    );
  });

  test.each([
    [{ coolantC: undefined }, 'missing', 'coolantC'],
    [{ capKpa: Number.NaN }, 'notANumber', 'capKpa'],
    [{ soakRiseK: -1 }, 'outOfRange', 'soakRiseK'],
    [{ altitudeM: undefined }, 'missing', 'altitudeM'],
  ])('an input at fault is named: %o', (changed, code, input) => {
    expect(judgeHeatSoak({ ...HOT, ...changed })).toMatchObject({ ok: false, issue: { code, input } });
  });
});

describe('opening the cap', () => {
  test('is allowed up to the limit and never above', () => {
    expect(judgeCapOpening(50, 50)).toMatchObject({ value: { met: true } });
    expect(judgeCapOpening(50.1, 50)).toMatchObject({ value: { met: false } });
  });

  test('cannot be allowed hot by any profile', () => {
    expect(judgeCapOpening(80, 90)).toMatchObject({ issue: { code: 'outOfRange', input: 'openBelowC' } });
  });
});
