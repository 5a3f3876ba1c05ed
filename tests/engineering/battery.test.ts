import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chargingWindow, crankingFloor, stateOfCharge } from '../../src/engineering/battery.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

const temperatureC = between(-40, 60);
const restV = between(10.5, 13);
const nominal = fc.constantFrom(12 as const, 24 as const);

describe('the state of charge', () => {
  test('rises with the voltage at rest and stays between empty and full', () => {
    fc.assert(
      fc.property(restV, restV, temperatureC, (a, b, batteryC) => {
        const charge = (restVoltageV: number) => valueFrom(stateOfCharge(12, { restVoltageV, batteryC }));
        expect(charge(Math.min(a, b))).toBeLessThanOrEqual(charge(Math.max(a, b)));
        expect(charge(a)).toBeGreaterThanOrEqual(0);
        expect(charge(a)).toBeLessThanOrEqual(1);
      }),
    );
  });

  test('is the same for two batteries in series at twice the voltage', () => {
    fc.assert(
      fc.property(restV, temperatureC, (restVoltageV, batteryC) => {
        const one = valueFrom(stateOfCharge(12, { restVoltageV, batteryC }));
        const two = valueFrom(stateOfCharge(24, { restVoltageV: restVoltageV * 2, batteryC }));
        expect(two).toBeCloseTo(one, 9);
      }),
    );
  });

  test('is higher in the cold at the same voltage, by 1.2 mV a kelvin from 26.7 degC', () => {
    // 12.24 V is half full at 26.7 degC; the next 0.21 V up are a quarter.
    const coldC = 26.7 - 50;
    const charge = valueFrom(stateOfCharge(12, { restVoltageV: 12.24, batteryC: coldC }));
    expect(charge).toBeCloseTo(0.5 + (0.25 * 0.06) / 0.21, 9);
  });

  test('is not read from a battery with a dead cell, one on charge, or one of another voltage', () => {
    for (const restVoltageV of [10.4, 13.1, 25.2]) {
      expect(stateOfCharge(12, { restVoltageV, batteryC: 20 })).toMatchObject({
        issue: { code: 'outOfRange', input: 'restVoltageV' },
      });
    }
    expect(stateOfCharge(24, { restVoltageV: 12.6, batteryC: 20 })).toMatchObject({ ok: false });
    expect(stateOfCharge(12, { restVoltageV: 12.6 })).toMatchObject({
      issue: { code: 'missing', input: 'batteryC' },
    });
  });
});

describe('the floor while cranking', () => {
  test('never rises as the battery gets colder, and is not lowered below the coldest row', () => {
    fc.assert(
      fc.property(temperatureC, temperatureC, (a, b) => {
        const floor = (batteryC: number) => valueFrom(crankingFloor(12, batteryC));
        expect(floor(Math.min(a, b))).toBeLessThanOrEqual(floor(Math.max(a, b)));
      }),
    );
    expect(valueFrom(crankingFloor(12, -40))).toBe(8.5);
    expect(valueFrom(crankingFloor(24, -40))).toBe(17);
  });
});

describe('the charging window', () => {
  const profile = { setpointV: 14.1, toleranceV: 0.4 };

  test('moves up as the battery gets colder, and keeps its width', () => {
    const mild = between(-40, 50);
    fc.assert(
      fc.property(mild, mild, (a, b) => {
        const window = (batteryC: number) => valueFrom(chargingWindow(12, { ...profile, batteryC }));
        const [cold, warm] = [window(Math.min(a, b)), window(Math.max(a, b))];
        expect(cold.minV).toBeGreaterThanOrEqual(warm.minV);
        expect(cold.maxV - cold.minV).toBeCloseTo(0.8, 9);
      }),
    );
  });

  test("is the profile's own at 25 degC and 18 mV a kelvin higher below", () => {
    const at = (batteryC: number) => valueFrom(chargingWindow(12, { ...profile, batteryC }));
    expect(at(25)).toEqual({ minV: 14.1 - 0.4, maxV: 14.1 + 0.4 });
    expect(at(-15).minV).toBeCloseTo(13.7 + 0.72, 9);
    expect(at(-15).maxV).toBeCloseTo(14.5 + 0.72, 9);
  });

  test('is twice as high and twice as wide for two batteries in series', () => {
    const [one, two] = [12 as const, 24 as const].map(nominalV =>
      valueFrom(chargingWindow(nominalV, { ...profile, batteryC: 5 })),
    );
    expect(two).toEqual({ minV: (one?.minV ?? 0) * 2, maxV: (one?.maxV ?? 0) * 2 });
  });

  test('never takes in a battery at rest', () => {
    expect(chargingWindow(12, { setpointV: 13.3, toleranceV: 0.4, batteryC: 25 })).toMatchObject({
      issue: { code: 'contradictory', input: 'toleranceV' },
    });
  });

  test('is, like all of a battery, never judged on numbers that are not finite', () => {
    fc.assert(
      fc.property(nominal, anyReading, anyReading, anyReading, (nominalV, a, b, batteryC) => {
        expectSound(stateOfCharge(nominalV, { restVoltageV: a, batteryC }));
        expectSound(crankingFloor(nominalV, batteryC));
        expectSound(chargingWindow(nominalV, { setpointV: a, toleranceV: b, batteryC }));
      }),
    );
  });
});
