import { describe, expect, it } from 'vitest';
import type { StepId } from '../../../prompts/types.ts';
import type { Driver } from '../helpers/driver.ts';
import { changed, demoSix } from '../helpers/profiles.ts';
import { isDone, sessionAt } from './sessions.ts';

const UNTIL = 'noFuelCrank.untilPressure';

/** Gets the second person's clear, and begins a burst. */
const burst = (driver: Driver): Driver => driver.reply('clearToCrank').reply('yes').reply('ready');

/** A burst of so many seconds in which nothing shows. */
const inVain = (driver: Driver, seconds: number): Driver =>
  burst(driver)
    .reply('nothingYet', { afterMs: seconds * 1000 })
    .reply('nothingYet');

/** Waits out the rest, to the next question for a clear. */
function rested(driver: Driver): Driver {
  while (driver.name.endsWith('.resting')) driver.ring();
  return driver;
}

/** Of the burst or the rest that is going on. */
const lengthMs = (driver: Driver) => driver.context.timer?.totalMs ?? Number.NaN;

describe('a burst of the starter', () => {
  it('lasts 20 s at most, and is over by itself then', () => {
    const cranking = burst(sessionAt(demoSix, `${UNTIL}.askingClear`));
    expect(lengthMs(cranking)).toBe(20_000);
    expect(cranking.fork([]).clock(19_999).name).toBe(`${UNTIL}.cranking`);
    expect(cranking.fork([]).clock(20_000).name).toBe(`${UNTIL}.outcome`);
  });

  it('lasts no longer than its step asks for: five seconds where the pressure only has to come again', () => {
    expect(lengthMs(burst(sessionAt(demoSix, 'noFuelCrank.holds.askingClear')))).toBe(5_000);
  });

  it('is as long in great cold and in heat', () => {
    const at = (ambientTemperature: number) =>
      lengthMs(burst(sessionAt(demoSix, `${UNTIL}.askingClear`, { ambientTemperature })));
    expect(at(-20)).toBe(20_000);
    expect(at(45)).toBe(20_000);
  });

  it('does not begin where the budget cannot be worked out', () => {
    const driver = sessionAt(demoSix, `${UNTIL}.ready`);
    const { context } = driver;
    const readings = context.readings.filter(({ quantity }) => quantity !== 'ambientTemperature');
    driver.moment = driver.machine.resolveState({
      value: driver.moment.value,
      context: { ...context, readings },
    });
    expect(driver.reply('ready').name).toBe(`${UNTIL}.askingClear`);
    expect(driver.context.bursts).toHaveLength(0);
  });

  it('begins within 15 s of the second person\'s "clear"', () => {
    const cleared = sessionAt(demoSix, `${UNTIL}.ready`);
    const sinceMs = cleared.context.clearAtMs ?? Number.NaN;
    const ready = (ms: number) => cleared.fork([]).reply('ready', { afterMs: sinceMs + ms - cleared.nowMs });
    expect(ready(14_999).name).toBe(`${UNTIL}.cranking`);
    expect(ready(15_000).name).toBe(`${UNTIL}.askingClear`);
  });

  it("begins only by the second person's own clear and own yes", () => {
    const asking = sessionAt(demoSix, `${UNTIL}.askingClear`);
    expect(asking.fork([]).reply('clearToCrank', { by: 'technician' }).name).toBe(`${UNTIL}.askingClear`);
    const reading = asking.fork([]).reply('clearToCrank');
    expect(reading.fork([]).reply('yes', { by: 'technician' }).name).not.toBe(`${UNTIL}.ready`);
    expect(reading.fork([]).reply('yes', { by: 'second' }).name).toBe(`${UNTIL}.ready`);
  });

  it('of which nobody tells what came of it stops everything after 10 s', () => {
    const over = burst(sessionAt(demoSix, `${UNTIL}.askingClear`)).clock(20_000);
    expect(over.fork([]).clock(9_999).name).toBe(`${UNTIL}.outcome`);
    expect(over.fork([]).clock(10_000).context.stop?.cause).toBe('other');
  });
});

describe('the rest after a burst', () => {
  it('is what the maker states, two minutes, after however short a burst', () => {
    const resting = inVain(sessionAt(demoSix, `${UNTIL}.askingClear`), 1);
    expect(lengthMs(resting)).toBe(120_000);
    expect(resting.fork([]).clock(119_999).name).toBe(`${UNTIL}.resting`);
    expect(resting.fork([]).clock(120_000).name).toBe(`${UNTIL}.askingClear`);
  });

  it('is no more than that after one whole burst', () => {
    const resting = inVain(sessionAt(demoSix, `${UNTIL}.askingClear`, { ambientTemperature: 25 }), 20);
    expect(lengthMs(resting)).toBe(120_000);
  });

  it('is longer after three in a row: until the windings take another', () => {
    const driver = sessionAt(demoSix, 'firstFire.crank.askingClear', { ambientTemperature: 25 });
    // No burst before them counts any more.
    driver.nowMs += 6 * 3_600_000;
    const three = driver.reply('notYet');
    for (const _ of [1, 2]) rested(inVain(three, 19));
    // Three of 20 s with 120 s between end at 140 degC; three of 19 s, and the seconds of talking, a little below.
    const kept = Math.exp(-140 / 400);
    const endK = 115 / ((1 - Math.exp(-20 / 400)) * (1 + kept + kept ** 2));
    const resting = inVain(three, 19);
    const longestS = 400 * Math.log(115 / (endK - (endK - 115) * Math.exp(20 / 400)));
    expect(lengthMs(resting) / 1000).toBeGreaterThan(150);
    expect(lengthMs(resting) / 1000).toBeLessThan(longestS);
  });

  it('is asked for between two steps too: what is left of the two minutes', () => {
    const confirmed = (afterMs: number) => {
      const driver = burst(sessionAt(demoSix, `${UNTIL}.askingClear`));
      return driver.reply('oilPressureShows', { afterMs: 12_000 }).reply('yes', { afterMs });
    };
    const soon = confirmed(10_000);
    expect(soon.name).toBe('noFuelCrank.holds.resting');
    expect(lengthMs(soon)).toBe(110_000);
    expect(confirmed(119_999).name).toBe('noFuelCrank.holds.resting');
    expect(confirmed(120_000).name).toBe('noFuelCrank.holds.askingClear');
  });
});

describe('cranking is given up', () => {
  /** Bursts of these lengths in vain, one after another; the session after the last. */
  function burstsInVain(step: StepId, seconds: readonly number[], profile = demoSix, shown = {}): Driver {
    const driver = sessionAt(profile, `${step}.askingClear`, shown);
    for (const length of seconds) inVain(rested(driver), length);
    return driver;
  }
  const stopped = (driver: Driver) => driver.context.stop?.cause ?? null;

  // 0.048 L x 1.2 x 150/60 a second at a mean efficiency of 0.725 fill 1.6 L in 15.33 s; three times that.
  const giveUpS = (3 * 1.6) / (0.048 * 1.2 * 2.5 * 0.725);

  it('without oil pressure after three times the time that filling takes', () => {
    expect(stopped(burstsInVain(UNTIL, [20, 20, giveUpS - 40 - 0.01]))).toBe(null);
    expect(stopped(burstsInVain(UNTIL, [20, 20, giveUpS - 40 + 0.01]))).toBe('noOilPressure');
  });

  it('later where the oil is thicker than the pump draws in fully', () => {
    // At 40 degC the data sheet says 110 mm2/s for 15W-40; the pump takes 100.
    const oil = { ...demoSix.oil, grades: demoSix.oil.grades.slice(0, 1), fullFlowViscosityMm2S: 100 };
    const thick = changed(demoSix, { oil });
    // In that heat a burst may last 18 s.
    const before = [15, 15, 15];
    const last = 1.1 * giveUpS - 45;
    const at = (s: number) => burstsInVain(UNTIL, [...before, s], thick, { ambientTemperature: 40 });
    expect(stopped(at(last - 0.01))).toBe(null);
    expect(stopped(at(last + 0.01))).toBe('noOilPressure');
  });

  it('when the pressure does not come again in three times five seconds', () => {
    expect(stopped(burstsInVain('noFuelCrank.holds', [5, 5, 4.99]))).toBe(null);
    expect(stopped(burstsInVain('noFuelCrank.holds', [5, 5, 5]))).toBe('noOilPressure');
  });

  it('when it does not fire in a minute of bursts', () => {
    expect(stopped(burstsInVain('firstFire.crank', [20, 20, 19.99]))).toBe(null);
    expect(stopped(burstsInVain('firstFire.crank', [20, 20, 20]))).toBe('noStart');
  });

  it('after eight bursts, however short', () => {
    const ones = (count: number) => Array.from({ length: count }, () => 1);
    expect(stopped(burstsInVain(UNTIL, ones(7)))).toBe(null);
    expect(stopped(burstsInVain(UNTIL, ones(8)))).toBe('noOilPressure');
  });

  it('and not done, whatever was said', () => {
    expect(isDone(burstsInVain('firstFire.crank', [20, 20, 20]), 'firstFire.crank')).toBe(false);
  });
});
