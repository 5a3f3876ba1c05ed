import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Reading } from '../../src/engineering/readings.ts';
import { judgeWarmUpHold, readWarmUp } from '../../src/engineering/warm-up.ts';
import { noise } from '../helpers/noise.ts';

const THERMOSTAT = { opensC: 82, fullyOpenC: 95, toleranceK: 4 };
const OPENS_AT_S = -500 * Math.log((110 - 82) / 100);

const heating =
  (finalC: number, tauS: number) =>
  (timeS: number): number =>
    finalC - (finalC - 10) * Math.exp(-timeS / tauS);

/** Read to whole degrees at uneven moments, as somebody at the gauge would. */
function spoken(coolantC: (timeS: number) => number, count: number, spanS: number, seed = 1): Reading[] {
  const normal = noise(seed);
  return Array.from({ length: count }, (_, i) => {
    const inner = i > 0 && i < count - 1;
    const timeS = ((i + (inner ? 0.3 * Math.sin(7 * i) : 0)) * spanS) / (count - 1);
    return { timeS, value: Math.round(coolantC(timeS) + 0.4 * normal()) };
  });
}

const opening = (timeS: number): number =>
  timeS < OPENS_AT_S ? heating(110, 500)(timeS) : 82 + (timeS - OPENS_AT_S) * 0.012;

const stateOf = (readings: readonly Reading[]) => {
  const result = readWarmUp(readings, THERMOSTAT);
  return result.ok ? result.value.state : result.issue.code;
};

describe('warm-up', () => {
  test('tells from ten spoken readings when the thermostat will open, within its interval', () => {
    const result = readWarmUp(spoken(heating(110, 500), 10, 450), THERMOSTAT);
    if (!result.ok || result.value.state !== 'warming') throw new Error(JSON.stringify(result));
    const { thermostat, left } = result.value;
    expect(thermostat.lowS).toBeLessThan(OPENS_AT_S);
    expect(thermostat.highS ?? Number.POSITIVE_INFINITY).toBeGreaterThan(OPENS_AT_S);
    expect(left.bestS).toBeCloseTo(thermostat.bestS - 450, 6);
  });

  test('is not misled by the first minute, in which cold metal takes up the heat', () => {
    const lags = (timeS: number): number =>
      timeS < 60 ? 10 + 0.03 * timeS : heating(110, 500)(timeS - 60) + 1.8;
    const reachedS = 60 - 500 * Math.log((110 - 80.2) / 100);
    let held = 0;
    for (let seed = 1; seed <= 50; seed += 1) {
      const result = readWarmUp(spoken(lags, 20, 500, seed), THERMOSTAT);
      if (!result.ok || result.value.state !== 'warming') continue;
      const { lowS, highS } = result.value.thermostat;
      if (lowS <= reachedS && (highS ?? Number.POSITIVE_INFINITY) >= reachedS) held += 1;
    }
    expect(held).toBeGreaterThanOrEqual(45);
  });

  test('sees the thermostat open by the bend of a close recording, near the right moment', () => {
    const result = readWarmUp(spoken(opening, 800, OPENS_AT_S + 120), THERMOSTAT);
    if (!result.ok || result.value.state !== 'opened') throw new Error(JSON.stringify(result));
    expect(Math.abs(result.value.opening.atS - OPENS_AT_S)).toBeLessThan(40);
    expect(Math.abs(result.value.opening.value - 82)).toBeLessThan(3);
    expect(result.value.opening.slopeAfterPerS).toBeLessThan(result.value.opening.slopeBeforePerS / 2);
  });

  test('sees it open when cold coolant makes the reading dip as well', () => {
    const dips = (timeS: number): number =>
      opening(timeS) - (timeS < OPENS_AT_S ? 0 : 5 * Math.exp(-(timeS - OPENS_AT_S) / 40));
    expect(stateOf(spoken(dips, 60, OPENS_AT_S + 150))).toBe('opened');
  });

  test('says no more than that the thermostat should open when the bend is not yet to be seen', () => {
    expect(stateOf(spoken(heating(110, 500), 12, OPENS_AT_S + 30))).toBe('atThermostat');
  });

  test('suspects a thermostat stuck open when the coolant levels off well below it', () => {
    expect(stateOf(spoken(heating(65, 250), 14, 900))).toBe('stuckOpenSuspected');
  });

  test('suspects a thermostat stuck open when a sudden bend comes well below it', () => {
    const bends = (timeS: number): number =>
      timeS < 250 ? heating(110, 500)(timeS) : heating(110, 500)(250) + 0.01 * (timeS - 250);
    expect(stateOf(spoken(bends, 40, 500))).toBe('stuckOpenSuspected');
  });

  test('suspects a thermostat stuck shut beyond fully open, even from very few readings', () => {
    expect(stateOf(spoken(heating(130, 500), 20, 1200))).toBe('stuckShutSuspected');
    expect(stateOf([{ timeS: 0, value: 101 }])).toBe('stuckShutSuspected');
  });

  test('a single misheard reading is set aside and changes nothing', () => {
    const readings = spoken(heating(110, 500), 12, 450).map((reading, i) =>
      i === 6 ? { ...reading, value: reading.value - 40 } : reading,
    );
    const result = readWarmUp(readings, THERMOSTAT);
    expect(result).toMatchObject({ ok: true, value: { state: 'warming', setAside: 1 } });
  });

  test.each([
    ['five readings', spoken(heating(110, 500), 5, 300)],
    ['half a minute', spoken(heating(110, 500), 12, 30)],
    ['an engine that does not warm', spoken(() => 20, 12, 300)],
    ['a rise lost in its scatter', spoken(t => 20 + t / 30 + 8 * Math.sin(t), 12, 300)],
    ['a bend after a rise of 3 K', spoken(t => 20 + Math.min(3, t / 50), 60, 600)],
    ['a cooling engine', spoken(t => 70 - t / 10, 12, 300)],
    ['an engine that cools faster and faster', spoken(t => 70 - (t < 150 ? t / 50 : t / 10 - 12), 40, 300)],
  ])('claims nothing from %s', (_, readings) => {
    expect(stateOf(readings)).toBe('tooLittleData');
  });

  test('suspects it stuck shut from fully open and the tolerance on, not a tenth below', () => {
    expect(stateOf([{ timeS: 0, value: 99 }])).toBe('stuckShutSuspected');
    expect(stateOf([{ timeS: 0, value: 98.9 }])).toBe('tooLittleData');
  });

  test('wants six readings over a minute, and no more', () => {
    const close = (count: number, spanS: number) =>
      Array.from({ length: count }, (_, i) => {
        const timeS = (i * spanS) / (count - 1);
        return { timeS, value: heating(110, 500)(timeS) };
      });
    expect(stateOf(close(6, 60))).not.toBe('tooLittleData');
    expect(stateOf(close(5, 60))).toBe('tooLittleData');
    expect(stateOf(close(6, 59.9))).toBe('tooLittleData');
  });

  test('says what was too little', () => {
    const given = (readings: readonly Reading[]) => {
      const result = readWarmUp(readings, THERMOSTAT);
      return result.ok ? result.value.state : result.issue.given;
    };
    expect(given(spoken(() => 20, 12, 300))).toMatch(/^a rise of -?\d\.\d K$/);
    expect(given(spoken(heating(110, 500), 5, 300))).toBe('5 readings over 300 s');
  });

  test('draws the curve that the readings lie on, from its first reading', () => {
    const readings = Array.from({ length: 20 }, (_, i) => ({
      timeS: 100 + 25 * i,
      value: heating(110, 500)(25 * i),
    }));
    const result = readWarmUp(readings, THERMOSTAT);
    if (!result.ok || result.value.state !== 'warming') throw new Error(JSON.stringify(result));
    const { curve, thermostat } = result.value;
    expect(curve.startC - 10).toBeCloseTo(0, 0);
    expect(curve.finalC / 110).toBeCloseTo(1, 1);
    expect(curve.tauS / 500).toBeCloseTo(1, 1);
    expect(curve.fromS).toBe(100);
    expect(curve.scatterK).toBeLessThan(0.5);
    expect(thermostat.bestS).toBeCloseTo(100 + OPENS_AT_S, -1);
  });

  test('suspects no thermostat of a curve that may yet come within its tolerance', () => {
    const near = (timeS: number): number => 80 - 70 * Math.exp(-timeS / 250);
    expect(stateOf(Array.from({ length: 14 }, (_, i) => ({ timeS: 70 * i, value: near(70 * i) })))).not.toBe(
      'stuckOpenSuspected',
    );
  });

  test('names what is wrong with its inputs', () => {
    expect(readWarmUp([], THERMOSTAT)).toMatchObject({ issue: { code: 'missing', input: 'coolantC' } });
    expect(readWarmUp([{ timeS: 0, value: 400 }], THERMOSTAT)).toMatchObject({
      issue: { code: 'outOfRange' },
    });
    expect(readWarmUp([], { ...THERMOSTAT, opensC: Number.NaN })).toMatchObject({
      issue: { code: 'notANumber', input: 'opensC' },
    });
    expect(readWarmUp([], { ...THERMOSTAT, fullyOpenC: 80 })).toMatchObject({
      issue: { code: 'contradictory', input: 'fullyOpenC' },
    });
  });

  test('whatever the readings, the answer is a finite one or an issue', () => {
    const wild = fc.array(
      fc.record({
        timeS: fc.double({ min: 0, max: 3600, noNaN: true }),
        value: fc.double({ min: -60, max: 150, noNaN: true }),
      }),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(wild, readings => {
        const inOrder = readings.toSorted((a, b) => a.timeS - b.timeS);
        const result = readWarmUp(inOrder, THERMOSTAT);
        const numbers: number[] = [];
        JSON.stringify(result, (_, value: unknown) => {
          if (typeof value === 'number') numbers.push(value);
          return value;
        });
        expect(numbers.every(Number.isFinite)).toBe(true);
      }),
    );
  });
});

describe('hold at idle before the first sweep', () => {
  test('is met at its end and not a second before', () => {
    expect(judgeWarmUpHold(179, 180)).toMatchObject({ value: { met: false, margin: -1 } });
    expect(judgeWarmUpHold(180, 180)).toMatchObject({ value: { met: true } });
  });

  test('is refused below three minutes', () => {
    expect(judgeWarmUpHold(200, 60)).toMatchObject({ issue: { code: 'outOfRange', input: 'holdS' } });
  });
});
