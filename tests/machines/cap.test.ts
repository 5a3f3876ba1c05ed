import { describe, expect, it } from 'vitest';
import { COOL_APART_S } from '../../src/engineering/cool-down.ts';
import type { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { isDone, sessionAt } from './limits/sessions.ts';

/** The engine was hot as its key was turned off, hours ago. */
const LATER_MS = 4 * 3_600_000;
const APART_MS = COOL_APART_S * 1000;
const { safeToOpenC } = demoSix.shutdown;
const asked = () => sessionAt(demoSix, 'signOff.cool.asking');
const look = (driver: Driver, si: number, afterMs = 1000, via: 'voice' | 'keys' | 'bus' = 'voice') => {
  driver.value('coolantTemperature', si, { afterMs, via });
  return driver.name === 'signOff.cool.readingBack' ? driver.reply('yes') : driver;
};
const coolOnce = () => look(asked(), safeToOpenC, LATER_MS);

describe('a cap of an engine that ran', () => {
  it('is not opened on one look: it is told to leave it shut, and nobody is asked for a minute', () => {
    for (const via of ['voice', 'keys', 'bus'] as const) {
      const driver = look(asked(), safeToOpenC, LATER_MS, via);
      expect(driver.name).toBe('signOff.cool.cooling');
      expect(driver.history.flatMap(({ said }) => said)).toContainEqual(
        expect.objectContaining({
          line: 'coolOnce',
          values: expect.objectContaining({ time: { unit: 's', si: COOL_APART_S } }),
        }),
      );
      expect(isDone(driver, 'signOff.cool')).toBe(false);
      expect(driver.alarmMs).toBe(driver.nowMs + APART_MS);
      expect(driver.clock(APART_MS - 1).name).toBe('signOff.cool.cooling');
      expect(driver.clock(1).name).toBe('signOff.cool.asking');
    }
  });

  it('is opened on the second, a minute later, of which the record says that it is met', () => {
    const driver = look(coolOnce().ring(), safeToOpenC);
    expect(isDone(driver, 'signOff.cool')).toBe(true);
    const verdicts = driver.notes.flatMap(({ kind, data }) => (kind === 'verdict' ? [data] : []));
    expect(verdicts.map(({ met }) => met)).toEqual([false, true]);
  });

  it('is not opened on a second that is hot again: two looks are asked for anew', () => {
    const driver = look(coolOnce().ring(), safeToOpenC + 0.1);
    expect(driver.lines).toContain('notCoolYet');
    expect(look(driver, safeToOpenC).name).toBe('signOff.cool.cooling');
    expect(isDone(driver, 'signOff.cool')).toBe(false);
    expect(isDone(look(driver.ring(), safeToOpenC), 'signOff.cool')).toBe(true);
  });

  it('waits on over a pause, and no longer for it than its minute', () => {
    const driver = coolOnce().clock(20_000).send({ type: 'hold' });
    driver.send({ type: 'continue' }, { afterMs: 600_000 });
    expect(driver.name).toBe('signOff.cool.cooling');
    expect(driver.alarmMs).toBe(driver.nowMs + APART_MS - 21_000);
    expect(look(driver.ring(), safeToOpenC).context.done).toContain('signOff.cool');
  });

  it('has the first look forgotten where the engine has run since', () => {
    const driver = coolOnce().stop({ via: 'keys' });
    driver
      .reply('allOff', { via: 'keys' })
      .reply('causeCoolantLeak', { via: 'keys' })
      .reply('ready', { via: 'keys' });
    driver.goodUntil('signOff.cool.asking');
    expect(look(driver, safeToOpenC, LATER_MS).name).toBe('signOff.cool.cooling');
  });
});
