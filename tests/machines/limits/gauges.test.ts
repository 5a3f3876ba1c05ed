import { describe, expect, it } from 'vitest';
import { judgeSpoken } from '../../../machines/limits/agreement.ts';
import { canBeRead } from '../../../machines/limits/gauges.ts';
import { type Quantity, quantityUnits } from '../../../machines/vocabulary.ts';
import { demoSix } from '../helpers/profiles.ts';
import { sessionAt } from './sessions.ts';

/** What somebody at an engine may well read, and what nobody can: said so, it was misheard, mistyped, or another unit. */
interface Gauge {
  readonly reads: Readonly<Record<string, number>>;
  readonly neverReads: Readonly<Record<string, number>>;
}

/** World Weather and Climate Extremes Archive of the WMO (from memory), and where people start engines. */
const air: Gauge = {
  reads: { 'the hottest air ever measured': 56.7, 'a winter night in Yakutia': -55, 'melting ice': 0 },
  neverReads: {
    '98 degrees Fahrenheit': 98,
    'the coldest air ever measured, on the Antarctic plateau': -89.2,
  },
};

const volts: Gauge = {
  reads: { 'a cable that is off': 0, 'a car that is charged': 14.4, 'a lorry that is charged': 28.8 },
  neverReads: { 'leads the wrong way round': -12.6, '12.6 without its point': 126, 'a traction battery': 48 },
};

/** SI. Common practice, no published source, where none is named. */
const gauges: Readonly<Record<Quantity, Gauge>> = {
  ambientTemperature: air,
  coldestNight: air,
  // Heights from memory.
  altitude: {
    reads: { 'the shore of the Dead Sea': -430, 'the highest road': 5800 },
    neverReads: { 'the summit of Everest': 8849, 'the deepest mine': -3900 },
  },
  coolantFreezePoint: {
    reads: {
      'plain water': 0,
      'half and half': -37,
      'the lowest that any mix has, about two thirds glycol': -69,
    },
    neverReads: { 'a melting point above that of water': 4, 'dry air that liquefies': -190 },
  },
  oilQuantity: {
    reads: { 'a drained sump': 0, 'a lorry': 38, 'a ship’s auxiliary': 600 },
    neverReads: { 'less than nothing': -1, '38 hundred': 3800 },
  },
  fuelInTank: {
    reads: { 'an empty tank': 0, 'a lorry with two tanks': 1500, 'a mining truck': 4500 },
    neverReads: { 'less than nothing': -1, 'a tanker’s load': 30_000 },
  },
  biodieselShare: {
    reads: { none: 0, B20: 20, neat: 100 },
    neverReads: { 'less than nothing': -1, 'more than all of it': 101 },
  },
  primerStrokes: {
    reads: { 'firm at once': 0, 'a long dry line': 400 },
    neverReads: { 'less than nothing': -1, 'an hour of pumping': 3600 },
  },
  batteryVoltage: volts,
  chargingVoltage: volts,
  crankingVoltage: volts,
  engineSpeed: {
    reads: { 'it stands': 0, idle: 700, 'a small diesel at its governor': 5200 },
    neverReads: { 'it turns backwards': -700, 'idle with a zero too many': 7000 },
  },
  oilPressure: {
    reads: { 'it stands': 0, 'cold oil at its relief valve': 900 },
    neverReads: { 'a vacuum': -1, '400 with a zero too many': 4000 },
  },
  coolantTemperature: {
    reads: { 'as cold as that night': -55, 'boiling under a cap of one bar, half glycol': 130 },
    neverReads: { 'water boiling in degrees Fahrenheit': 212, 'dry ice': -78.5 },
  },
  // Nineteen bits and five: SAE J1939-73, diagnostic trouble codes.
  suspectParameter: {
    reads: { first: 0, last: 2 ** 19 - 1 },
    neverReads: { before: -1, 'one bit more': 2 ** 19 },
  },
  failureMode: {
    reads: { first: 0, last: 2 ** 5 - 1 },
    neverReads: { before: -1, 'one bit more': 2 ** 5 },
  },
};
const each = Object.entries(gauges) as [Quantity, Gauge][];

describe('a gauge', () => {
  it.each(each)(
    'of %s shows what people read, and is not believed beyond',
    (quantity, { reads, neverReads }) => {
      for (const [what, si] of Object.entries(reads)) expect(canBeRead(quantity, si), what).toBe(true);
      for (const [what, si] of Object.entries(neverReads)) expect(canBeRead(quantity, si), what).toBe(false);
      expect(canBeRead(quantity, Number.NaN)).toBe(false);
    },
  );

  it('that shows what none can was misheard: it is neither read back nor judged', () => {
    const asking = sessionAt(demoSix, 'signOff.cool.asking');
    expect(asking.fork([]).value('coolantTemperature', -60).lines).toEqual(['doubted']);
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

  it('agree above the end of what a bus can show of oil pressure, and nowhere else', () => {
    expect(judgeSpoken('oilPressure', 1310, 1000)).toMatchObject({ met: true });
    expect(judgeSpoken('oilPressure', 1310, 996)).toMatchObject({ met: false });
    expect(judgeSpoken('oilPressure', 900, 1000)).toMatchObject({ met: false });
  });

  it('cannot be held against each other where the bus shows nothing, or never does', () => {
    expect(judgeSpoken('engineSpeed', 800, undefined)).toBe(null);
    for (const [quantity] of each)
      if (!apart.some(([known]) => known === quantity)) expect(judgeSpoken(quantity, 1, 1)).toBe(null);
  });
});
