import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../../machines/vocabulary.ts';
import type { Driver } from '../helpers/driver.ts';
import { changed, demoSix } from '../helpers/profiles.ts';
import { sessionAt, whileAnswering } from './sessions.ts';

/*
 * Demo-six, worked out here by hand: idling takes 6.8 L x 0.45 L/h, 30.6 kW of fuel, and 24 L of coolant hold
 * 81.6 kJ/K: 0.375 K/s at the most. All together it holds 295.5 kJ/K, and still air takes 25 W/m2 K off 4.31 m2: it
 * nears the air with 2745 s at the least. Air at 5 degC, nights of -5.
 */
const WARMING_K_PER_S = 0.375;
const COOLING_S = 2745;

/** Whether a value that is said so long after the last reading of it is questioned. */
function doubted(from: Driver, quantity: Quantity, si: number, seconds?: number): boolean {
  const driver = from.fork([]);
  const lastMs = driver.context.readings.findLast(reading => reading.quantity === quantity)?.atMs ?? 0;
  driver.value(
    quantity,
    si,
    seconds === undefined ? {} : { afterMs: lastMs + seconds * 1000 - driver.nowMs },
  );
  return driver.lines.includes('doubted');
}

describe('the coolant of a standing engine', () => {
  const standing = sessionAt(demoSix, 'signOff.cool.asking', { coolantTemperature: 85 });

  it.each([1200, 3600, 10_000])('falls no faster than the air can take its heat off: after %d s', seconds => {
    const coldestC = -5 + 90 * Math.exp(-seconds / COOLING_S) - 8;
    expect(doubted(standing, 'coolantTemperature', coldestC + 0.05, seconds)).toBe(false);
    expect(doubted(standing, 'coolantTemperature', coldestC - 0.05, seconds)).toBe(true);
  });

  it('is held against each reading since key-off, not the last alone: small steps are no way down', () => {
    const driver = standing.fork([]);
    let si = 85;
    let isDoubted = false;
    while (si > 45 && !isDoubted) {
      si -= 7;
      isDoubted = driver.value('coolantTemperature', si).lines.includes('doubted');
      driver.reply('yes');
    }
    expect(isDoubted).toBe(true);
    expect(si).toBeGreaterThan(45);
  });

  it('is believed when it has had its time', () => {
    expect(doubted(standing, 'coolantTemperature', 30, 4 * 3600)).toBe(false);
  });
});

describe('the coolant of a running engine', () => {
  const running = sessionAt(demoSix, 'warmUp.watch.asking', { coolantTemperature: 5 });

  it('is not colder than the coldest air it stood in: -5 degC, and 3 and 4 K that the gauges may miss', () => {
    const first = sessionAt(demoSix, 'checks.coolant.asking');
    expect(doubted(first, 'coolantTemperature', -12)).toBe(false);
    expect(doubted(first, 'coolantTemperature', -12.1)).toBe(true);
  });

  it('is no warmer at first than a heated block and what it has run since make it', () => {
    const first = sessionAt(demoSix, 'checks.coolant.asking');
    const ranS = (first.nowMs + 1000 - (first.context.bursts.at(-1)?.endMs ?? 0)) / 1000;
    const warmestC = 5 + 30 + WARMING_K_PER_S * ranS + 8;
    expect(doubted(first, 'coolantTemperature', warmestC - 0.05)).toBe(false);
    expect(doubted(first, 'coolantTemperature', warmestC + 0.05)).toBe(true);
  });

  it.each([10, 60])('rises no faster than all the heat of the fuel can make it: after %d s', seconds => {
    const warmestC = 5 + 10 + WARMING_K_PER_S * seconds + 8;
    expect(doubted(running, 'coolantTemperature', warmestC - 0.05, seconds)).toBe(false);
    expect(doubted(running, 'coolantTemperature', warmestC + 0.05, seconds)).toBe(true);
  });

  it('falls to half-way to the air at the most, when the thermostat lets the cold half in', () => {
    const hot = whileAnswering(sessionAt(demoSix, 'warmUp.watch.asking'), 300_000).value(
      'coolantTemperature',
      80,
    );
    const noted = hot.reply('yes');
    expect(doubted(noted, 'coolantTemperature', 29.6)).toBe(false);
    expect(doubted(noted, 'coolantTemperature', 29.4)).toBe(true);
  });

  it('is held against the run that goes on, not against an earlier one', () => {
    const driver = whileAnswering(sessionAt(demoSix, 'warmUp.watch.asking'), 600_000).value(
      'coolantTemperature',
      80,
    );
    driver.reply('yes').send({ type: 'stop', cause: 'falseAlarm' }).goodUntil('checks.coolant.asking');
    expect(doubted(driver, 'coolantTemperature', 75)).toBe(false);
    expect(doubted(driver, 'coolantTemperature', 20)).toBe(false);
  });
});

describe('what is asked for again', () => {
  it('stands as high as before: 100 m apart at the most', () => {
    const driver = sessionAt(demoSix, 'job.stopTechnician.asking');
    while (driver.context.step !== 'job.altitude') driver.send({ type: 'goBack' });
    expect(driver.name).toBe('job.altitude.asking');
    expect(doubted(driver, 'altitude', 400)).toBe(false);
    expect(doubted(driver, 'altitude', 401)).toBe(true);
  });
});

describe('on 24 volts', () => {
  it('a starter draws a volt at least: 24.5 V and more while cranking are questioned', () => {
    const at = sessionAt(changed(demoSix, { systemVoltage: 24 }), 'noFuelCrank.voltage.asking');
    expect(doubted(at, 'crankingVoltage', 24.5)).toBe(false);
    expect(doubted(at, 'crankingVoltage', 24.51)).toBe(true);
  });
});

describe('a value that the bus gives', () => {
  const running = sessionAt(demoSix, 'warmUp.watch.asking', { coolantTemperature: 5 });
  const shown = (driver: Driver, si: number) =>
    driver.send({ type: 'value', quantity: 'coolantTemperature', si }, { via: 'bus' });

  it('and that can hardly be true is not taken: the gauge is asked for, once', () => {
    const driver = shown(running.fork([]), 106);
    expect(driver.lines).toEqual(['doubtedBus']);
    expect(driver.name).toBe('warmUp.watch.asking');
    expect(shown(driver, 106.5).lines).toEqual([]);
  });

  it('is another means where somebody reads the same', () => {
    const driver = running.fork([]);
    driver.send({ type: 'value', quantity: 'coolantTemperature', si: 80, bus: { si: 82 } });
    expect(driver.lines).not.toContain('doubted');
    expect(driver.name).toBe('warmUp.watch.readingBackValue');
  });

  it('and that would stop the engine stops it, however it came', () => {
    expect(shown(running.fork([]), 120).context.stop?.cause).toBe('overheating');
  });
});
