import { describe, expect, test } from 'vitest';
import { rangeOf } from '../../src/bus/parameter-codec.ts';
import { PARAMETERS } from '../../src/bus/parameters.ts';
import {
  canBeRead,
  factsOf,
  isQuantity,
  type Quantity,
  quantities,
  quantityUnits,
  type SiUnit,
} from '../../src/engineering/quantities/table.ts';

/** Unit, and the suspect parameters of SAE J1939-71 that carry it (from memory), best first. */
const known: Readonly<Record<Quantity, readonly [unit: SiUnit, spns: readonly number[], ofEngine?: true]>> = {
  ambientTemperature: ['degC', [171]],
  coldestNight: ['degC', []],
  altitude: ['m', []],
  coolantFreezePoint: ['degC', []],
  oilQuantity: ['litre', []],
  fuelInTank: ['litre', []],
  biodieselShare: ['%', []],
  primerStrokes: ['count', []],
  batteryVoltage: ['V', [168, 158, 444]],
  chargingVoltage: ['V', [167, 168, 158, 444]],
  crankingVoltage: ['V', []],
  engineSpeed: ['rpm', [190], true],
  oilPressure: ['kPa', [100], true],
  coolantTemperature: ['degC', [110], true],
  suspectParameter: ['count', []],
  failureMode: ['count', []],
};
const each = Object.entries(known) as [Quantity, (typeof known)[Quantity]][];

describe('what may be read', () => {
  test('is listed here, and nothing else is', () => {
    expect(Object.keys(quantities).toSorted()).toEqual(Object.keys(known).toSorted());
    for (const name of Object.keys(known)) expect(isQuantity(name)).toBe(true);
    for (const name of ['', 'toString', 'oilpressure']) expect(isQuantity(name)).toBe(false);
  });

  test('ends on a bus where its parameter does', () => {
    const [spn] = quantities.oilPressure.bus.spns;
    const parameter = PARAMETERS.find(each => each.spn === spn);
    expect(quantities.oilPressure.bus.endsAt).toBe(parameter && rangeOf(parameter).max);
  });

  test.each(each)('%s has its unit, its source and its parameters', (quantity, [unit, spns, ofEngine]) => {
    const facts = factsOf(quantity);
    expect([facts.unit, quantityUnits[quantity]]).toEqual([unit, unit]);
    expect(facts.source).toMatch(/common practice, no published source|from memory|^a share$/);
    expect(facts.bus?.spns ?? []).toEqual(spns);
    expect(facts.bus?.ofEngine).toBe(ofEngine);
    expect(facts.tolerance).toBeGreaterThanOrEqual(0);
    if (facts.bus) expect(Math.min(facts.bus.tolerance, facts.bus.worth)).toBeGreaterThan(0);
  });

  test.each(each)('%s can be read from the lowest to the highest of its range, both included', quantity => {
    const [min, max] = factsOf(quantity).range;
    expect(min).toBeLessThan(max);
    expect([min, max].map(si => canBeRead(quantity, si))).toEqual([true, true]);
    expect([min - 0.001, max + 0.001].map(si => canBeRead(quantity, si))).toEqual([false, false]);
  });
});
