import { describe, expect, it } from 'vitest';
import { isKnownEmergencyAt } from '../../machines/moment.ts';
import { languages } from '../../prompts/index.ts';
import { meaningOf } from '../../src/session/hearing.ts';
import type { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const KEYS = { via: 'keys' } as const;
const called = () =>
  sessionAt(demoSix, 'checks.leaks.item1').send({ type: 'stop', cause: 'smokeOrFire' }, { by: 'second' });
const fireHeard = ({ moment }: Driver) =>
  meaningOf({ kind: 'stop', text: 'fire', calls: 'smokeOrFire' }, moment, 'keys', {
    language: languages.en,
    units: 'us',
  }).body;

describe('fire that is called out again within one stop', () => {
  it('is known while everything is being made safe, and called no second time', () => {
    const driver = called();
    expect(isKnownEmergencyAt(driver.moment, 'smokeOrFire')).toBe(true);
    expect(isKnownEmergencyAt(driver.moment, 'someoneHurt')).toBe(false);
    expect(fireHeard(driver)).toBeNull();
    expect(fireHeard(driver.reply('allOff'))).toBeNull();
  });

  it.each([
    ['once all is off', (driver: Driver) => driver.reply('allOff', KEYS)],
    ['once its cause was confirmed', (driver: Driver) => driver.reply('allOff', KEYS).reply('yes', KEYS)],
    [
      'behind a false alarm',
      (driver: Driver) =>
        driver
          .reply('allOff', KEYS)
          .reply('no', KEYS)
          .reply('causeFalseAlarm', { ...KEYS, by: 'second' }),
    ],
  ])('is called anew %s: help is called for, and everything is made safe again', (_, later) => {
    const driver = later(called());
    const body = fireHeard(driver);
    expect(body).toEqual({ type: 'stop', cause: 'smokeOrFire' });
    if (body) driver.send(body, { by: 'second', via: 'voice' });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.lines).toContain('fireCall');
    expect(driver.context.stop?.cause).toBe('smokeOrFire');
  });

  it('is news in a stop that was called after it had been taken for a false alarm', () => {
    const driver = called().reply('allOff', KEYS).reply('no', KEYS);
    driver.reply('causeFalseAlarm', { ...KEYS, by: 'second' }).stop();
    expect(driver.name).toBe('stopped.makingSafe');
    expect(fireHeard(driver)).toEqual({ type: 'stop', cause: 'smokeOrFire' });
  });
});
