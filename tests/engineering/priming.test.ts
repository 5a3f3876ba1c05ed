import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { primingTime } from '../../src/engineering/priming.ts';
import { between, expectSound, oneSpoilt, valueFrom } from './properties.ts';

const ENGINE = {
  pumpLitrePerTurn: 0.06,
  pumpTurnsPerCrankTurn: 1.5,
  crankingRpm: 150,
  fillLitres: 2.5,
  fillSpreadShare: 0.2,
  leastEfficiency: 0.6,
  greatestEfficiency: 0.9,
  viscosityFactor: 1,
  giveUpMultiple: 3,
};

describe('the cranking time until oil pressure shows', () => {
  test('is expected between its earliest and its latest, and given up at the multiple', () => {
    const { earliestS, expectedS, latestS, giveUpS } = valueFrom(primingTime(ENGINE));
    expect(earliestS).toBeLessThan(expectedS);
    expect(expectedS).toBeLessThan(latestS);
    expect(giveUpS).toBeCloseTo(3 * expectedS, 12);
  });

  test('pumps exactly the volume to fill, and goes up with the volume, down with speed', () => {
    const rpm = between(30, 250);
    const fill = between(0.01, 50);
    fc.assert(
      fc.property(rpm, fill, (crankingRpm, fillLitres) => {
        const expected = (change: object) =>
          valueFrom(primingTime({ ...ENGINE, crankingRpm, fillLitres, ...change })).expectedS;
        const litresPerS = ((0.06 * 1.5 * crankingRpm) / 60) * 0.75;
        expect(expected({}) * litresPerS).toBeCloseTo(fillLitres, 9);
        expect(expected({ crankingRpm: crankingRpm * 2 })).toBeLessThan(expected({}));
        expect(expected({ fillLitres: fillLitres * 2 })).toBeGreaterThan(expected({}));
        expect(expected({ viscosityFactor: 2 })).toBeCloseTo(2 * expected({}), 9);
      }),
    );
  });

  test('has no spread when nothing is uncertain', () => {
    const sure = { ...ENGINE, fillSpreadShare: 0, leastEfficiency: 0.8, greatestEfficiency: 0.8 };
    const { earliestS, latestS } = valueFrom(primingTime(sure));
    expect(earliestS).toBeCloseTo(latestS, 12);
  });

  test('is refused for efficiencies the wrong way round, or when any figure is missing', () => {
    expect(primingTime({ ...ENGINE, leastEfficiency: 0.95 })).toMatchObject({
      issue: { code: 'contradictory', input: 'leastEfficiency' },
    });
    for (const input of Object.keys(ENGINE)) {
      expect(primingTime({ ...ENGINE, [input]: undefined })).toMatchObject({
        issue: { code: 'missing', input },
      });
    }
  });

  test('is never a number that is not finite, whatever one figure is', () => {
    fc.assert(fc.property(oneSpoilt(ENGINE), inputs => expectSound(primingTime(inputs))));
  });
});
