import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heaterWait, judgeHeaterLamp } from '../../src/engineering/intake-heater.ts';
import { anyReading, between, expectSound, valueFrom } from './properties.ts';

const TABLE = [
  { temperatureC: -30, seconds: 30 },
  { temperatureC: -10, seconds: 20 },
  { temperatureC: 0, seconds: 10 },
  { temperatureC: 15, seconds: 0 },
];

describe('the wait for the intake heater', () => {
  test('is the table at its rows and never grows with warmth between them', () => {
    for (const { temperatureC, seconds } of TABLE) {
      expect(valueFrom(heaterWait(TABLE, temperatureC))).toBe(seconds);
    }
    expect(valueFrom(heaterWait(TABLE, 7.5))).toBe(5);
    const t = between(-30, 60);
    fc.assert(
      fc.property(t, t, (a, b) => {
        const cold = valueFrom(heaterWait(TABLE, Math.min(a, b)));
        expect(cold).toBeGreaterThanOrEqual(valueFrom(heaterWait(TABLE, Math.max(a, b))));
      }),
    );
  });

  test('is nothing above a last row of nothing, but unknown above any other last row and below the first', () => {
    expect(valueFrom(heaterWait(TABLE, 40))).toBe(0);
    expect(heaterWait(TABLE.slice(0, 3), 1)).toMatchObject({
      issue: { code: 'outOfRange', input: 'temperatureC' },
    });
    expect(heaterWait(TABLE, -31)).toMatchObject({ issue: { code: 'outOfRange' } });
  });

  test('may stay the same over a stretch of temperatures', () => {
    const level = [
      { temperatureC: -30, seconds: 20 },
      { temperatureC: 0, seconds: 20 },
    ];
    expect(valueFrom(heaterWait(level, -15))).toBe(20);
  });

  test('is not read from a table that is too short, out of order, or has holes', () => {
    expect(heaterWait(TABLE.slice(0, 1), -30)).toMatchObject({
      issue: { code: 'tooLittleData', input: 'table' },
    });
    const twice = [TABLE[0], TABLE[0]].flatMap(row => row ?? []);
    expect(heaterWait(twice, -30)).toMatchObject({ issue: { code: 'contradictory' } });
    expect(heaterWait([...TABLE].reverse(), 0)).toMatchObject({
      issue: { code: 'contradictory', input: 'table[1].temperatureC' },
    });
    expect(
      heaterWait(
        [
          { temperatureC: 0, seconds: 1 },
          { temperatureC: 5, seconds: 2 },
        ],
        0,
      ),
    ).toMatchObject({
      issue: { code: 'contradictory', input: 'table[1].seconds' },
    });
    expect(heaterWait([{ temperatureC: 0, seconds: 1 }, { temperatureC: 5 }], 0)).toMatchObject({
      issue: { code: 'missing', input: 'table[1].seconds' },
    });
  });

  test('makes a fault of a lamp that outlasts it, just after the tolerance and not before', () => {
    const lamp = (lampOnS: number) =>
      valueFrom(judgeHeaterLamp(TABLE, { temperatureC: -5, lampOnS, toleranceS: 5 }));
    expect(lamp(20).met).toBe(true);
    expect(lamp(20.1).met).toBe(false);
    expect(judgeHeaterLamp(TABLE, { temperatureC: -5, lampOnS: 20 })).toMatchObject({
      issue: { code: 'missing', input: 'toleranceS' },
    });
  });

  test('is never a number that is not finite, whatever is entered', () => {
    const rows = fc.array(fc.record({ temperatureC: anyReading, seconds: anyReading }), { maxLength: 4 });
    fc.assert(
      fc.property(
        fc.oneof(rows, fc.constant(TABLE)),
        anyReading,
        anyReading,
        anyReading,
        (table, t, on, tol) => {
          expectSound(heaterWait(table, t));
          expectSound(judgeHeaterLamp(table, { temperatureC: t, lampOnS: on, toleranceS: tol }));
        },
      ),
    );
  });
});
