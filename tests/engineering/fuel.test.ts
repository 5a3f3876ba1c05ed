import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  blendCloudPoint,
  blendForNight,
  fillTank,
  fuelByPractice,
  gellingRisk,
} from '../../src/engineering/fuel.ts';
import { anyReading, between, expectSound, oneSpoilt, valueFrom } from './properties.ts';

const FUELS = { no1CloudC: -40, no2CloudC: -9, marginK: 3 };
const cloudC = between(-70, 30);
const litres = between(0.1, 1000);

describe('the cloud point of a blend', () => {
  test('lies between those of its parts, and the order of filling does not matter', () => {
    fc.assert(
      fc.property(litres, cloudC, litres, cloudC, (la, ca, lb, cb) => {
        const [a, b] = [
          { litres: la, cloudC: ca },
          { litres: lb, cloudC: cb },
        ];
        const blend = valueFrom(blendCloudPoint([a, b]));
        expect(blend).toBeGreaterThanOrEqual(Math.min(ca, cb) - 1e-9);
        expect(blend).toBeLessThanOrEqual(Math.max(ca, cb) + 1e-9);
        expect(Math.abs(blend - valueFrom(blendCloudPoint([b, a])))).toBeLessThan(1e-9);
      }),
    );
  });

  test('lies above the plain average: a little No. 2 spoils more than its share', () => {
    const half = blendCloudPoint([
      { litres: 1, cloudC: -40 },
      { litres: 1, cloudC: 0 },
    ]);
    expect(valueFrom(half)).toBeGreaterThan(-20);
  });

  test('is the twentieth root of the mean twentieth power of the temperature in kelvin', () => {
    const half = blendCloudPoint([
      { litres: 1, cloudC: -40 },
      { litres: 1, cloudC: -9 },
    ]);
    expect(valueFrom(half)).toBeCloseTo(((233.15 ** 20 + 264.15 ** 20) / 2) ** 0.05 - 273.15, 9);
  });

  test('needs some fuel', () => {
    expect(blendCloudPoint([])).toMatchObject({ issue: { code: 'missing', input: 'litres' } });
    expect(blendCloudPoint([{ litres: 0, cloudC: 0 }])).toMatchObject({ issue: { code: 'missing' } });
  });
});

describe('the blend for the coldest night', () => {
  test('is straight No. 2 while that is enough, and never has less No. 1 for a colder night', () => {
    expect(valueFrom(blendForNight({ ...FUELS, nightLowC: -5 })).no1Share).toBe(0);
    const night = between(-37, 50);
    fc.assert(
      fc.property(night, night, (a, b) => {
        const share = (nightLowC: number) => valueFrom(blendForNight({ ...FUELS, nightLowC })).no1Share;
        expect(share(Math.min(a, b))).toBeGreaterThanOrEqual(share(Math.max(a, b)));
      }),
    );
  });

  test('clouds no warmer than the night less the margin, and only just so when No. 1 is needed', () => {
    fc.assert(
      fc.property(between(-37, 50), nightLowC => {
        const { no1Share, cloudC } = valueFrom(blendForNight({ ...FUELS, nightLowC }));
        const mixed = blendCloudPoint([
          { litres: no1Share, cloudC: FUELS.no1CloudC },
          { litres: 1 - no1Share, cloudC: FUELS.no2CloudC },
        ]);
        expect(valueFrom(mixed)).toBeCloseTo(cloudC, 9);
        expect(cloudC).toBeLessThanOrEqual(nightLowC - FUELS.marginK + 1e-9);
        if (no1Share > 0) expect(Math.abs(cloudC - (nightLowC - FUELS.marginK))).toBeLessThan(1e-6);
      }),
    );
  });

  test('is refused when even No. 1 would cloud, or when No. 1 is no better than No. 2', () => {
    expect(blendForNight({ ...FUELS, nightLowC: -38 })).toMatchObject({ issue: { code: 'noSolution' } });
    expect(blendForNight({ ...FUELS, no1CloudC: -9, nightLowC: 0 })).toMatchObject({
      issue: { code: 'contradictory', input: 'no1CloudC' },
    });
    expect(blendForNight(FUELS)).toMatchObject({ issue: { code: 'missing', input: 'nightLowC' } });
  });
});

describe('filling a tank that holds some fuel', () => {
  test('adds exactly what the tank lacks, and the full tank is clear of the night', () => {
    fc.assert(
      fc.property(
        between(1, 800),
        between(0, 1),
        cloudC,
        between(-37, 30),
        (tankLitres, filled, inTankCloudC, nightLowC) => {
          const inTankLitres = tankLitres * filled;
          const plan = fillTank({ ...FUELS, tankLitres, inTankLitres, inTankCloudC, nightLowC });
          if (!plan.ok) {
            expect(plan.issue.code).toBe('noSolution');
            return;
          }
          const { no1Litres, no2Litres, cloudC } = plan.value;
          expect(no1Litres).toBeGreaterThanOrEqual(0);
          expect(no2Litres).toBeGreaterThanOrEqual(0);
          expect(Math.abs(inTankLitres + no1Litres + no2Litres - tankLitres)).toBeLessThan(1e-9 * tankLitres);
          expect(cloudC).toBeLessThanOrEqual(nightLowC - FUELS.marginK + 1e-6);
        },
      ),
    );
  });

  test('takes more No. 1 on top of summer fuel than into an empty tank', () => {
    const night = { ...FUELS, tankLitres: 100, inTankCloudC: 2, nightLowC: -10 };
    const empty = valueFrom(fillTank({ ...night, inTankLitres: 0 }));
    const some = valueFrom(fillTank({ ...night, inTankLitres: 20 }));
    expect(some.no1Litres / 80).toBeGreaterThan(empty.no1Litres / 100);
  });

  test('is refused when the old fuel cannot be saved, or when there is more of it than the tank holds', () => {
    const night = { ...FUELS, tankLitres: 100, inTankCloudC: 2, nightLowC: -25 };
    expect(fillTank({ ...night, inTankLitres: 90 })).toMatchObject({ issue: { code: 'noSolution' } });
    expect(fillTank({ ...night, inTankLitres: 101 })).toMatchObject({
      issue: { code: 'contradictory', input: 'inTankLitres' },
    });
  });

  test('is never planned with numbers that are not finite', () => {
    const inputs = fc.record({
      tankLitres: anyReading,
      inTankLitres: anyReading,
      inTankCloudC: anyReading,
      no1CloudC: anyReading,
      no2CloudC: anyReading,
      nightLowC: anyReading,
      marginK: anyReading,
    });
    const sound = { ...FUELS, tankLitres: 100, inTankLitres: 20, inTankCloudC: -5, nightLowC: -15 };
    fc.assert(fc.property(fc.oneof(inputs, oneSpoilt(sound)), i => expectSound(fillTank(i))));
    const part = fc.record({ litres: anyReading, cloudC: anyReading });
    fc.assert(fc.property(fc.array(part), parts => expectSound(blendCloudPoint(parts))));
  });
});

describe('common practice', () => {
  test.each([
    [5, 'no2'],
    [0, 'no2'],
    [-1, 'blend'],
    [-25, 'blend'],
    [-26, 'no1'],
  ])('fills for a night of %d degC: %s', (nightLowC, fuel) => {
    expect(valueFrom(fuelByPractice({ nightLowC, straightNo1BelowC: -25 }))).toBe(fuel);
  });
});

describe('the risk of gelling', () => {
  const FUEL = { cloudC: -9, pourC: -20, marginK: 3 };

  test.each([
    [0, 'clear'],
    [-6, 'clear'],
    [-7, 'nearCloud'],
    [-9, 'belowCloud'],
    [-19, 'belowCloud'],
    [-20, 'belowPour'],
  ])('at %d degC is %s', (nightLowC, risk) => {
    expect(valueFrom(gellingRisk({ ...FUEL, nightLowC }))).toBe(risk);
  });

  test('is read also of a fuel that sets where it clouds, and is clear only by the whole margin', () => {
    expect(valueFrom(gellingRisk({ ...FUEL, pourC: -9, nightLowC: -9 }))).toBe('belowPour');
    expect(valueFrom(gellingRisk({ ...FUEL, nightLowC: -6.1 }))).toBe('nearCloud');
  });

  test('is no worse than below the cloud point when the pour point is not known', () => {
    expect(valueFrom(gellingRisk({ cloudC: -9, marginK: 3, nightLowC: -60 }))).toBe('belowCloud');
  });

  test('is refused when the pour point contradicts the cloud point, and never judged on bad readings', () => {
    expect(gellingRisk({ ...FUEL, pourC: -8, nightLowC: 0 })).toMatchObject({
      issue: { code: 'contradictory' },
    });
    const inputs = fc.record({
      nightLowC: anyReading,
      cloudC: anyReading,
      pourC: anyReading,
      marginK: anyReading,
    });
    fc.assert(fc.property(inputs, i => expectSound(gellingRisk(i))));
    expect(gellingRisk({ ...FUEL, pourC: Number.NaN, nightLowC: 0 })).toMatchObject({
      issue: { code: 'notANumber' },
    });
  });
});
