import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Context, Reading } from '../../../machines/context.ts';
import { runsFromRpm, shownRpm, showsRunning } from '../../../machines/limits/running.ts';
import { warmthOf } from '../../../machines/limits/warmth.ts';
import type { Look } from '../../../machines/toolkit.ts';
import { demoSix } from '../helpers/profiles.ts';
import { knowing, readAt } from './known.ts';

const AIR_C = 5;
const coolant = (points: readonly (readonly [seconds: number, si: number])[]): Reading[] =>
  readAt('checks.coolant', points);
const air = readAt('job.ambient', [[0, AIR_C]], 'ambientTemperature');
const fired = (seconds: number): Context['bursts'] => [
  { step: 'firstFire.crank', startMs: seconds * 1000 - 3000, endMs: seconds * 1000 },
];
const warmth = (readings: readonly Reading[], known: Partial<Context> = {}) =>
  warmthOf(knowing(demoSix, {}, { readings, done: ['firstFire.crank'], runsSinceMs: null, ...known }));

describe('how warm the engine is', () => {
  it('is as cold as the air where its coolant was never read, and unknown where the air was not either', () => {
    expect(warmth(air)).toEqual({ coldestC: AIR_C, warmestC: AIR_C });
    expect(warmth([])).toBeUndefined();
  });

  it('is what was read last, where it has run on since, or was never fired', () => {
    const read = [
      ...air,
      ...coolant([
        [10, 30],
        [20, 60],
      ]),
    ];
    expect(warmth(read)).toEqual({ coldestC: 60, warmestC: 60 });
    for (const firedS of [5, 20])
      expect(warmth(read, { bursts: fired(firedS) })).toEqual({ coldestC: 60, warmestC: 60 });
  });

  const before = [...air, ...coolant([[100, 80]])];

  it('read before it was fired last, it has cooled since, by no more than it can', () => {
    const { coldestC, warmestC } = warmth(before, { bursts: fired(3700) }) ?? { coldestC: 0, warmestC: 0 };
    expect(warmestC).toBe(80);
    expect(coldestC).toBeGreaterThan(AIR_C);
    expect(coldestC).toBeLessThan(80);
  });

  it('has cooled by the time that the clock of the session did not count as well', () => {
    const coldest = (absences: Context['absences']) =>
      warmth(before, { bursts: fired(200), absences })?.coldestC;
    const away = (atS: number, seconds: number | null) => ({ atMs: atS * 1000, seconds });
    const none = coldest([]) ?? 0;
    expect(coldest([away(150, 3600)])).toBeLessThan(none - 5);
    expect(coldest([away(150, 1800), away(160, 1800)])).toBeCloseTo(coldest([away(150, 3600)]) ?? 0, 9);
    // At either end it counts, and outside of it not.
    expect(coldest([away(100, 3600)])).toBe(coldest([away(150, 3600)]));
    expect(coldest([away(200, 3600)])).toBe(coldest([away(150, 3600)]));
    expect(coldest([away(99, 3600), away(201, 3600)])).toBe(none);
  });

  it('may be as cold as the air after an absence that nobody measured', () => {
    const absences = [{ atMs: 150_000, seconds: null }];
    expect(warmth(before, { bursts: fired(200), absences })).toEqual({ coldestC: AIR_C, warmestC: 80 });
  });

  it('cools to no colder than the air, and never warms by standing: at any time', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 110, noNaN: true }),
        fc.integer({ min: 101, max: 200_000 }),
        (si, s) => {
          const found = warmth([...air, ...coolant([[100, si]])], { bursts: fired(s) });
          expect(found?.warmestC).toBe(si);
          expect(found?.coldestC).toBeLessThanOrEqual(si);
          expect(found?.coldestC).toBeGreaterThanOrEqual(Math.min(si, AIR_C));
        },
      ),
    );
  });

  it('is taken as it was read where nobody told the air', () => {
    expect(warmth(coolant([[100, 80]]), { bursts: fired(3700) })).toEqual({ coldestC: 80, warmestC: 80 });
  });
});

describe('whether the engine runs', () => {
  const at = (event: object): Look => ({
    context: knowing(demoSix, {}),
    event: { type: 'reply', id: 'engineOff', by: 'technician', via: 'voice', atMs: 0, ...event },
  });
  const between = (demoSix.starter.crankingRpm + demoSix.idle.warm.minRpm) / 2;

  it('is told by a speed half way from what the starter does to the slowest idle', () => {
    expect(runsFromRpm(demoSix)).toBe(between);
    expect(runsFromRpm({ ...demoSix, starter: { ...demoSix.starter, crankingRpm: 200 } })).toBe(between + 25);
  });

  it('is shown by the bus, by ear where there is none, and by nothing where neither tells', () => {
    expect(shownRpm(at({ bus: { speedRpm: 700 }, ear: { speedRpm: 100 } }))).toBe(700);
    expect(shownRpm(at({ ear: { speedRpm: 640 } }))).toBe(640);
    expect(shownRpm(at({}))).toBe(0);
    // A number that is told beside it says nothing of whether it runs.
    expect(shownRpm(at({ type: 'value', quantity: 'oilPressure', si: 300, bus: { speedRpm: 700 } }))).toBe(0);
    expect(shownRpm({ ...at({}), event: { type: 'clock', by: 'technician', via: 'tool', atMs: 0 } })).toBe(0);
  });

  it('counts from that very speed on', () => {
    expect(showsRunning(at({ bus: { speedRpm: between } }))).toBe(true);
    expect(showsRunning(at({ bus: { speedRpm: between - 1 } }))).toBe(false);
  });
});
