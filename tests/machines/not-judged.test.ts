import { describe, expect, it } from 'vitest';
import { pressureAt } from '../../machines/limits/oil.ts';
import type { Profile } from '../../src/profile/schema.ts';
import type { Driver, How } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';
import { isDone, sessionAt } from './limits/sessions.ts';

const LOWEST_KPA = Math.min(
  ...demoSix.oilPressure.floor.flatMap(({ points }) => points.map(({ minKpa }) => minKpa)),
);
/** As an old record may hold it, and no profile that is loaded now: its floors end below the fastest sweeps. */
const floorEndsEarly: Profile = {
  ...demoSix,
  oilPressure: {
    ...demoSix.oilPressure,
    floor: demoSix.oilPressure.floor.map(row => ({
      ...row,
      points: row.points.filter(({ rpm }) => rpm <= 1200),
    })),
  },
};
const asked = () => sessionAt(floorEndsEarly, 'sweeps.fifth.asking');
const linesSince = (driver: Driver) => driver.history.flatMap(({ said }) => said.map(({ line }) => line));
const hows: readonly (readonly [string, How])[] = [
  ['said', { via: 'voice' }],
  ['typed', { via: 'keys' }],
  ['shown by the bus', { via: 'bus' }],
];

describe('oil pressure at a speed for which no floor is known', () => {
  it.each(hows)(
    '%s, is neither passed nor found to be missing: what is to be done is told, and it is asked again',
    (_, how) => {
      const driver = asked().value('oilPressure', 400, how);
      if (driver.name === 'sweeps.fifth.readingBack') driver.reply('yes', how);
      expect(driver.name).toBe('sweeps.fifth.asking');
      expect(linesSince(driver)).toContain('unjudgedRunning');
      expect(driver.context.stop).toBeNull();
      expect(isDone(driver, 'sweeps.fifth')).toBe(false);
      expect(driver.notes.find(({ kind }) => kind === 'verdict')?.data).toMatchObject({
        value: 400,
        met: false,
        why: expect.stringContaining('speedRpm'),
      });
    },
  );

  it('waits for no denial: only silence ends it, as it does every question beside a running engine', () => {
    const driver = asked().value('oilPressure', 400, { via: 'keys' });
    expect(driver.name).toBe('sweeps.fifth.readingBack');
    expect(driver.context.deadline).toBeNull();
    expect(driver.context.unanswered).not.toBeNull();
    while (!driver.name.startsWith('stopped')) driver.ring();
    expect(driver.context.stop).toMatchObject({ cause: null, found: null });
  });

  it('that is below every floor of the engine is too little all the same', () => {
    const driver = asked()
      .value('oilPressure', LOWEST_KPA - 1, { via: 'keys' })
      .reply('yes', { via: 'keys' });
    expect(driver.context.stop).toMatchObject({ cause: 'noOilPressure', found: 'noOilPressure' });
    expect(asked().value('oilPressure', 0, { via: 'bus' }).context.stop?.found).toBe('noOilPressure');
  });

  it('is no different where it is the oil whose heat nobody knows', () => {
    const judge = pressureAt(() => 800);
    const nothing = knowing(demoSix, {});
    expect(judge(nothing, LOWEST_KPA)).toMatchObject({ ok: false, issue: { code: 'missing' } });
    expect(judge(nothing, LOWEST_KPA - 1)).toMatchObject({
      ok: true,
      value: { met: false, min: LOWEST_KPA },
    });
  });
});

describe('coolant in the warm-up where nobody knows how high the engine stands, and so when it boils', () => {
  const watching = () => {
    const driver = sessionAt(demoSix, 'warmUp.watch.asking');
    const { moment, machine } = driver;
    const readings = moment.context.readings.filter(({ quantity }) => quantity !== 'altitude');
    driver.moment = machine.resolveState({ value: moment.value, context: { ...moment.context, readings } });
    return driver;
  };

  it.each(hows)('%s, ends no warm-up, is no overheating, and is asked for again', (_, how) => {
    const driver = watching().value('coolantTemperature', 88, { ...how, afterMs: 280_000 });
    if (driver.name.startsWith('warmUp.watch.vouching'))
      driver.value('coolantTemperature', 88, { by: 'second', via: 'keys' });
    if (driver.name.startsWith('warmUp.watch.readingBack')) driver.reply('yes', how);
    expect(driver.name).toBe('warmUp.watch.between');
    expect(linesSince(driver)).toContain('unjudgedRunning');
    expect(driver.context.stop).toBeNull();
  });
});
