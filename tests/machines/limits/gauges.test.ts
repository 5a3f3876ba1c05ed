import { describe, expect, it } from 'vitest';
import { judgeSpoken } from '../../../machines/limits/agreement.ts';
import { canBeRead } from '../../../machines/limits/gauges.ts';
import { type Quantity, quantityUnits } from '../../../machines/vocabulary.ts';
import { demoSix } from '../helpers/profiles.ts';
import { sessionAt } from './sessions.ts';

/** What any gauge can show, in SI; common practice, no published source, written down here a second time. */
const shows: Readonly<Record<Quantity, readonly [least: number, most: number]>> = {
  ambientTemperature: [-60, 60],
  coldestNight: [-60, 60],
  altitude: [-500, 6000],
  coolantFreezePoint: [-60, 0],
  oilQuantity: [0, 1000],
  fuelInTank: [0, 5000],
  biodieselShare: [0, 100],
  primerStrokes: [0, 1000],
  batteryVoltage: [0, 40],
  chargingVoltage: [0, 40],
  crankingVoltage: [0, 40],
  engineSpeed: [0, 6000],
  oilPressure: [0, 2000],
  coolantTemperature: [-60, 150],
  suspectParameter: [0, 524_287],
  failureMode: [0, 31],
};
const each = Object.entries(shows) as [Quantity, readonly [number, number]][];

describe('a gauge', () => {
  it.each(each)('of %s shows %j at most', (quantity, [least, most]) => {
    expect(canBeRead(quantity, least)).toBe(true);
    expect(canBeRead(quantity, most)).toBe(true);
    expect(canBeRead(quantity, least - 0.01)).toBe(false);
    expect(canBeRead(quantity, most + 0.01)).toBe(false);
    expect(canBeRead(quantity, Number.NaN)).toBe(false);
  });

  it('that shows what none can was misheard: it is neither read back nor judged', () => {
    const asking = sessionAt(demoSix, 'signOff.cool.asking');
    const seen = asking.fork([]).value('coolantTemperature', -60);
    expect(
      seen.name === 'signOff.cool.readingBack' || seen.notes.some(({ kind }) => kind === 'doubted'),
    ).toBe(true);
    const misheard = asking.fork([]).value('coolantTemperature', -60.1);
    expect(misheard.name).toBe('signOff.cool.asking');
    expect(misheard.notes).toEqual([]);
  });

  it('of another kind than was asked for answers nothing', () => {
    const asking = sessionAt(demoSix, 'signOff.cool.asking');
    expect(asking.value('ambientTemperature', 20).name).toBe('signOff.cool.asking');
  });
});

describe('what is spoken and what the bus shows', () => {
  /** Half a division of the gauge, and the tolerance of the sensor with one step of its parameter (SAE J1939-71). */
  const apart: readonly (readonly [Quantity, spoken: number, bus: number])[] = [
    ['engineSpeed', 50, 10.125],
    ['oilPressure', 35, 24],
    ['coolantTemperature', 4, 3],
    ['batteryVoltage', 0.2, 0.25],
    ['chargingVoltage', 0.2, 0.25],
    ['ambientTemperature', 3, 4.03125],
  ];

  it.each(apart)('of %s agree while they are %d and %d apart together', (quantity, spoken, bus) => {
    // A binary fraction, so that no digit is lost.
    const shown = 64;
    for (const side of [1, -1]) {
      const at = (difference: number) => judgeSpoken(quantity, shown + side * difference, shown);
      expect(at((spoken + bus) * 0.999)).toMatchObject({ met: true, unit: quantityUnits[quantity] });
      expect(at((spoken + bus) * 1.001)).toMatchObject({ met: false });
    }
  });

  it('cannot be held against each other where the bus shows nothing, or never does', () => {
    expect(judgeSpoken('engineSpeed', 800, undefined)).toBe(null);
    for (const [quantity] of each)
      if (!apart.some(([known]) => known === quantity)) expect(judgeSpoken(quantity, 1, 1)).toBe(null);
  });
});
