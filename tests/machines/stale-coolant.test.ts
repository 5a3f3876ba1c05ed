import { describe, expect, it } from 'vitest';
import type { StopRecord } from '../../machines/context.ts';
import { idleSpeed } from '../../machines/limits/engine.ts';
import { pressureAt } from '../../machines/limits/oil.ts';
import { offerOf } from '../../machines/moment.ts';
import { Driver } from './helpers/driver.ts';
import { demoBoat, demoFour, demoSix } from './helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;
const IDLE_RPM = 850;

/** Everything off and the work gone on with, for a cause. */
const stopFor = (driver: Driver, cause: 'causeOverheating' | 'causeCoolantLeak') =>
  driver.stop(KEYS).reply('allOff', KEYS).reply(cause, KEYS).reply('ready', KEYS);

/** The program was away for so long, s, or nobody knows how long; then work goes on. */
function restarted(driver: Driver, awayS: number | undefined): Driver {
  const cause: StopRecord['cause'] = 'toolRestarted';
  driver.send({ type: 'stop', cause, ...(awayS === undefined ? {} : { awayS }) }, { via: 'tool' });
  return driver.reply('allOff', KEYS).reply('yes', KEYS).reply('ready', KEYS);
}

const floorKpa = ({ context }: Driver) => {
  const judged = pressureAt(() => IDLE_RPM)(context, 200);
  return judged.ok ? judged.value.min : undefined;
};
const idleMet = ({ context }: Driver, rpm: number) => {
  const judged = idleSpeed(context, rpm);
  return judged.ok && judged.value.met;
};

const cold = () => new Driver(demoSix).goodUntil('checks.oilPressure.asking');
const warm = () => new Driver(demoSix).goodUntil('warmUp.steeringLocks.asking');
const COLD_FLOOR = floorKpa(cold());
const WARM_FLOOR = floorKpa(warm());

describe('the heat of coolant, where a cap is opened', () => {
  it.each([
    ['a truck', demoSix],
    ['a pickup', demoFour],
    ['a boat', demoBoat],
  ] as const)('is never as before: the gauge is read after the last run, on %s', (_, profile) => {
    const driver = new Driver(profile).goodUntil(at => at.context.step === 'warmUp.watch');
    for (const cause of ['causeOverheating', 'causeCoolantLeak'] as const) {
      stopFor(driver, cause).goodUntil(at => at.context.step === 'fill.coolantCool');
      expect(offerOf(driver.moment).replies).not.toContain('asBefore');
      driver.reply('asBefore', KEYS).reply('yes', KEYS);
      expect(driver.context.done).not.toContain('fill.coolantCool');
      driver.goodUntil(at => at.context.done.includes('fill.coolantCool'));
      const fired = driver.context.bursts.findLast(({ step }) => !step.startsWith('noFuelCrank.'));
      const read = driver.context.readings.findLast(({ step }) => step === 'fill.coolantCool');
      expect(read?.atMs).toBeGreaterThan(fired?.endMs ?? Number.NaN);
      driver.goodUntil(at => at.context.step === 'warmUp.watch');
    }
  });
});

describe('coolant that was read in an earlier run', () => {
  it('is of the engine that runs while it has not been stopped', () => {
    expect(WARM_FLOOR).toBeLessThan(COLD_FLOOR ?? Number.NaN);
  });

  it.each([
    ['a night', 12 * 3600],
    ['nobody knows how long', undefined],
  ] as const)('is no heat of the oil after %s: cold oil has its own floor', (_, awayS) => {
    const driver = restarted(warm(), awayS).goodUntil('checks.oilPressure.asking');
    const floor = floorKpa(driver) ?? Number.NaN;
    // It was read where its cap was opened, and is hardly above the air since.
    expect(Math.abs(floor - (COLD_FLOOR ?? 0))).toBeLessThan(3);
    expect((COLD_FLOOR ?? 0) - (WARM_FLOOR ?? 0)).toBeGreaterThan(30);
    driver.value('oilPressure', 140, KEYS).reply('yes', KEYS);
    expect(driver.context.stop?.found).toBe('noOilPressure');
  });

  it('holds for an engine that is started again at once, but for what it may have cooled', () => {
    const driver = restarted(warm(), 60).goodUntil('checks.oilPressure.asking');
    const floor = floorKpa(driver) ?? Number.NaN;
    expect(floor).toBeGreaterThanOrEqual(WARM_FLOOR ?? Number.NaN);
    expect(floor).toBeLessThan(COLD_FLOOR ?? Number.NaN);
  });

  it('leaves open whether the idle is that of a cold engine or a warm one', () => {
    const { cold: fast, warm: slow } = demoSix.idle;
    const driver = restarted(warm(), 12 * 3600).goodUntil('checks.idle.item1');
    for (const rpm of [slow.minRpm, fast.maxRpm]) expect(idleMet(driver, rpm)).toBe(true);
    const first = new Driver(demoSix).goodUntil('checks.idle.item1');
    expect(idleMet(first, fast.maxRpm)).toBe(true);
    expect(idleMet(first, slow.minRpm)).toBe(slow.minRpm >= fast.minRpm);
  });
});
