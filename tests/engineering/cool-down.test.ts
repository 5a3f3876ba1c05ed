import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coolForS, estimateCoolDown } from '../../src/engineering/cool-down.ts';
import type { Reading } from '../../src/engineering/readings.ts';
import { valueFrom } from './properties.ts';

const cooling =
  (startC: number, ambientC: number, tauS: number) =>
  (timeS: number): number =>
    ambientC + (startC - ambientC) * Math.exp(-timeS / tauS);

const every = (stepS: number, count: number, coolantC: (timeS: number) => number): Reading[] =>
  Array.from({ length: count }, (_, i) => ({ timeS: i * stepS, value: coolantC(i * stepS) }));

describe('cool-down after key-off', () => {
  test('finds the time to the recheck temperature of exact readings (closed form)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 75, max: 110 }),
        fc.integer({ min: -30, max: 35 }),
        fc.integer({ min: 1500, max: 6000 }),
        (startC, ambientC, tauS) => {
          const result = estimateCoolDown(every(tauS / 15, 8, cooling(startC, ambientC, tauS)), ambientC, 50);
          fc.pre(result.ok && result.value.state === 'cooling');
          if (!result.ok || result.value.state !== 'cooling') return;
          const exact = tauS * Math.log((startC - ambientC) / (50 - ambientC));
          expect(Math.abs(result.value.reached.bestS / exact - 1)).toBeLessThan(1e-4);
          expect(result.value.reached.lowS).toBeLessThanOrEqual(exact);
          expect(result.value.lookAgainS).toBeGreaterThanOrEqual(60);
          expect(result.value.lookAgainS).toBeLessThanOrEqual(600);
        },
      ),
    );
  });

  test('leaves out the climb of the heat soak before the peak', () => {
    const soak = [88, 91, 93, 94].map((value, i) => ({ timeS: i * 60, value }));
    const after = every(60, 12, cooling(94, 20, 3000)).map(({ timeS, value }) => ({
      timeS: timeS + 240,
      value,
    }));
    const result = estimateCoolDown([...soak, ...after], 20, 50);
    expect(result).toMatchObject({ ok: true, value: { state: 'cooling', peakC: 94 } });
    if (result.ok && result.value.state === 'cooling') expect(result.value.tauS).toBeCloseTo(3000, 0);
  });

  test('has no estimate while the coolant still climbs, and looks again within a minute', () => {
    expect(
      estimateCoolDown(
        every(30, 8, t => 88 + t / 60),
        20,
        50,
      ),
    ).toMatchObject({
      value: { state: 'noEstimateYet', lookAgainS: 60 },
    });
  });

  test('of an engine that is far from cool says no sooner than it can be, also from two readings', () => {
    const celsius = (degF: number) => ((degF - 32) * 5) / 9;
    const looks = [182, 168, 155, 144].map((degF, i) => ({ timeS: i * 780, value: celsius(degF) }));
    for (const count of [2, 3, 4])
      expect(estimateCoolDown(looks.slice(0, count), 20, celsius(113))).toMatchObject({
        value: { state: 'noEstimateYet', lookAgainS: 600 },
      });
    const near = [celsius(116), celsius(115), celsius(114)].map((value, i) => ({ timeS: i * 60, value }));
    expect(estimateCoolDown(near, 20, celsius(113))).toMatchObject({ value: { lookAgainS: 60 } });
  });

  test('counts as cool only when the last two readings both say so', () => {
    const hot = every(600, 6, cooling(95, 20, 4000));
    const once = [...hot, { timeS: 3600, value: 40 }];
    expect(estimateCoolDown(once, 20, 50)).not.toMatchObject({ value: { state: 'cool' } });
    expect(estimateCoolDown([...once, { timeS: 3659, value: 40 }], 20, 50)).not.toMatchObject({
      value: { state: 'cool' },
    });
    expect(estimateCoolDown([...once, { timeS: 3660, value: 40 }], 20, 50)).toMatchObject({
      value: { state: 'cool' },
    });
  });

  test('is cool since the first of the readings behind which none is hotter', () => {
    const cool = (...values: number[]) =>
      coolForS(
        values.map((value, i) => ({ timeS: 30 * i, value })),
        50,
      );
    expect(cool()).toBeNull();
    expect(cool(50.1)).toBeNull();
    expect(cool(50)).toBe(0);
    expect(cool(90, 50, 40, 45)).toBe(60);
    expect(cool(40, 51, 40)).toBe(0);
    expect(cool(40, 40, 51)).toBeNull();
    expect(cool(40, Number.NaN, 40)).toBe(0);
  });

  test('refuses a recheck temperature that the air never allows, and too few readings', () => {
    expect(
      estimateCoolDown(
        every(60, 8, () => 80),
        49,
        50,
      ),
    ).toMatchObject({
      issue: { code: 'contradictory', input: 'recheckC' },
    });
    expect(estimateCoolDown([{ timeS: 0, value: 30 }], 20, 50)).toMatchObject({
      issue: { code: 'tooLittleData' },
    });
    expect(estimateCoolDown([], undefined, 50)).toMatchObject({
      issue: { code: 'missing', input: 'ambientC' },
    });
    expect(estimateCoolDown([], 20, Number.NaN)).toMatchObject({
      issue: { code: 'notANumber', input: 'recheckC' },
    });
  });

  test('counts the time that is left from the last reading', () => {
    const readings = every(60, 9, cooling(95, 20, 2500));
    const result = valueFrom(estimateCoolDown(readings, 20, 50));
    if (result.state !== 'cooling') throw new Error(result.state);
    expect(result.left.bestS).toBeCloseTo(result.reached.bestS - 480, 6);
    expect(result.left.lowS).toBeCloseTo(result.reached.lowS - 480, 6);
  });

  test('takes a recheck temperature 2 K above the air, and none nearer to it', () => {
    const readings = every(60, 8, cooling(90, 30, 2000));
    expect(estimateCoolDown(readings, 38, 40).ok).toBe(true);
    expect(estimateCoolDown(readings, 38.1, 40)).toEqual({
      ok: false,
      issue: {
        code: 'contradictory',
        input: 'recheckC',
        given: 40,
        allowed: 'at least 2 K above ambientC, 38.1 degC',
      },
    });
  });

  test('is cool at the recheck temperature itself', () => {
    const readings = [60, 50, 50].map((value, i) => ({ timeS: 60 * i, value }));
    expect(estimateCoolDown(readings, 20, 50)).toMatchObject({ value: { state: 'cool' } });
  });

  test('says which reading no coolant has, and how many are needed', () => {
    const readings = [90, 151].map((value, i) => ({ timeS: 60 * i, value }));
    expect(estimateCoolDown(readings, 20, 50)).toEqual({
      ok: false,
      issue: { code: 'outOfRange', input: 'coolantC 2', given: 151, allowed: '-60 to 150 degC' },
    });
    expect(estimateCoolDown([], 20, 50)).toEqual({
      ok: false,
      issue: { code: 'tooLittleData', input: 'coolantC', given: '0 readings', allowed: 'at least 2' },
    });
    expect(estimateCoolDown(readings.slice(0, 1), 20, 50)).toMatchObject({ issue: { given: '1 readings' } });
  });

  /** In a straight line from 80 degC, which so short a piece of any cooling nearly is. */
  const falling = (count: number, overS: number, byK: number): Reading[] =>
    Array.from({ length: count }, (_, i) => ({
      timeS: (overS * i) / (count - 1),
      value: 80 - (byK * i) / (count - 1),
    }));
  const stateOf = (readings: readonly Reading[]) => valueFrom(estimateCoolDown(readings, 20, 50)).state;

  test('has an estimate from five readings over two minutes, some degrees below the peak, and from no less', () => {
    expect(stateOf(falling(5, 120, 4))).toBe('cooling');
    expect(stateOf(falling(4, 120, 4))).toBe('noEstimateYet');
    expect(stateOf(falling(5, 119, 4))).toBe('noEstimateYet');
    expect(stateOf(falling(9, 240, 1.9))).toBe('noEstimateYet');
  });
});
