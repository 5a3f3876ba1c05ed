import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

const KEYS = { via: 'keys' } as const;
const TECHNICIAN = { ...KEYS, by: 'technician' } as const;
const SECOND = { ...KEYS, by: 'second' } as const;
const SUPERVISOR = { ...KEYS, by: 'supervisor' } as const;

/** Fire, then somebody is hurt, both called by the second person; all is off. */
const both = () =>
  sessionAt(demoSix, 'checks.leaks.item1')
    .send({ type: 'stop', cause: 'smokeOrFire' }, { by: 'second', via: 'touch' })
    .send({ type: 'stop', cause: 'someoneHurt' }, { by: 'second', via: 'touch' })
    .reply('allOff', TECHNICIAN);
const goesOn = (driver: Driver) => driver.reply('yes', TECHNICIAN).reply('ready', TECHNICIAN);
const workGoesOn = ({ name }: Driver) => !name.startsWith('stopped');

describe('fire and then an injury', () => {
  it('are both asked about once all is off', () => {
    expect(both().last.said).toContainEqual(
      expect.objectContaining({
        line: 'causeReadBack',
        values: { cause: { list: [{ cause: 'someoneHurt' }, { cause: 'smokeOrFire' }] } },
      }),
    );
  });

  it('both stand where another cause is named, or where the second person takes one back', () => {
    const other = both().reply('no', TECHNICIAN).reply('causeOther', TECHNICIAN);
    const alarm = both().reply('no', TECHNICIAN).reply('causeFalseAlarm', SECOND);
    for (const driver of [other, alarm]) {
      if (driver.name === 'stopped.askingCaller') driver.reply('causeFalseAlarm', SECOND);
      expect(driver.name).toBe('stopped.reopened');
      expect(driver.reply('ready', TECHNICIAN).name).toBe('stopped.fireOut');
    }
  });

  it('both put back their steps', () => {
    const reopened = both().reply('yes', TECHNICIAN).context.reopened;
    for (const step of ['job.protection', 'fill.oilLevel', 'prime.firm', 'walkRound.belts'])
      expect(reopened).toContain(step);
  });

  it('are confirmed to be over before work goes on: the fire by the second person, the injury by the supervisor', () => {
    const driver = goesOn(both());
    expect(driver.name).toBe('stopped.fireOut');
    expect(offerOf(driver.moment).by).toBe('second');
    expect(driver.reply('yes', TECHNICIAN).name).toBe('stopped.fireOut');
    expect(driver.lines).toContain('onlySecond');
    expect(driver.reply('yes', SECOND).name).toBe('stopped.hurtHelped');
    expect(offerOf(driver.moment).by).toBe('supervisor');
    for (const how of [TECHNICIAN, SECOND]) {
      expect(driver.reply('yes', how).name).toBe('stopped.hurtHelped');
      expect(driver.lines).toContain('onlySupervisor');
    }
    driver.reply('yes', SUPERVISOR);
    expect(driver.name).toMatch(/^job\./);
    expect(driver.context.stop).toBeNull();
  });

  it('denied, lead back to what is to be done, and are asked again behind the next "ready"', () => {
    const driver = goesOn(both()).reply('no', SECOND);
    expect(driver.name).toBe('stopped.reopened');
    driver.reply('ready', TECHNICIAN).reply('yes', SECOND).reply('no', SUPERVISOR);
    expect(driver.name).toBe('stopped.reopened');
    expect(driver.reply('ready', TECHNICIAN).name).toBe('stopped.fireOut');
  });

  it('leave the end of the session open all the way, and fire may be called anew', () => {
    const driver = goesOn(both());
    expect(driver.moment.hasTag('madeSafe')).toBe(true);
    driver.send({ type: 'stop', cause: 'smokeOrFire' }, { by: 'second', via: 'touch' });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.lines).toContain('fireCall');
    expect(
      both().reply('yes', TECHNICIAN).reply('endSession', TECHNICIAN).reply('yes', TECHNICIAN).name,
    ).toBe('ended');
  });
});

describe('one emergency alone', () => {
  it.each([
    ['causeSmokeOrFire', 'stopped.fireOut', SECOND],
    ['causeSomeoneHurt', 'stopped.hurtHelped', SUPERVISOR],
  ] as const)('named %s is confirmed to be over, said or typed', (cause, state, by) => {
    for (const via of ['keys', 'voice'] as const) {
      const driver = sessionAt(demoSix, 'checks.leaks.item1')
        .stop({ by: 'technician' })
        .reply('allOff', KEYS);
      driver.reply(cause, { via });
      if (via === 'voice') driver.reply('yes');
      driver.reply('ready', { via });
      if (via === 'voice') driver.reply('yes');
      expect(driver.name).toBe(state);
      expect(workGoesOn(driver.reply('yes', by))).toBe(true);
    }
  });

  it('is nothing that another cause asks for', () => {
    const driver = sessionAt(demoSix, 'checks.leaks.item1').stop({ by: 'technician' }).reply('allOff', KEYS);
    expect(workGoesOn(driver.reply('causeOilLeak', KEYS).reply('ready', KEYS))).toBe(true);
  });
});

it('a fire that was confirmed is not taken back by another stop and a false alarm', () => {
  const driver = sessionAt(demoSix, 'checks.leaks.item1')
    .send({ type: 'stop', cause: 'smokeOrFire' }, TECHNICIAN)
    .reply('allOff', TECHNICIAN)
    .reply('yes', TECHNICIAN);
  expect(driver.name).toBe('stopped.reopened');
  driver.send({ type: 'stop' }, TECHNICIAN).reply('allOff', TECHNICIAN);
  driver.reply('no', TECHNICIAN).reply('causeFalseAlarm', TECHNICIAN).reply('ready', TECHNICIAN);
  expect(driver.name).toBe('stopped.fireOut');
});
