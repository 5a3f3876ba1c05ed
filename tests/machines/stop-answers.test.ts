import { describe, expect, it } from 'vitest';
import { offerOf } from '../../machines/moment.ts';
import type { Cause } from '../../machines/vocabulary.ts';
import type { ReplyId } from '../../prompts/types.ts';
import { Driver } from './helpers/driver.ts';
import { changed, demoFour, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

/** Where something has been done that a cause may put in doubt. */
const working = (() => {
  const driver = new Driver(demoSix).goodUntil('fill.oilLevel.asking');
  return () => driver.fork([]);
})();
const keys = { via: 'keys' } as const;
const madeSafe = () => working().stop().reply('allOff').reply('yes');
const says = (driver: Driver, line: string) => driver.last.said.find(said => said.line === line);

/** Each may be answered by its name: `causeOilLeak` for `oilLeak`. */
const named = [
  ...['falseAlarm', 'coolantLeak', 'coolantInCylinder', 'oilLeak', 'fuelLeak', 'noOilPressure', 'noStart'],
  ...['overspeed', 'overheating', 'faultCode', 'smokeOrFire', 'someoneHurt', 'knocking', 'looseOrNoise'],
  'other',
] as readonly Cause[];
const causes = named.map(
  cause => [`cause${cause.charAt(0).toUpperCase()}${cause.slice(1)}` as ReplyId, cause] as const,
);
const goesOn = causes.filter(([, cause]) => cause !== 'knocking');

describe('the cause of a stop', () => {
  it('is asked of the technician once all is off, and each one may be answered', () => {
    const driver = madeSafe();
    expect(driver.name).toBe('stopped.askingCause');
    expect(says(driver, 'askCause')).toBeDefined();
    expect(offerOf(driver.moment).by).toBe('technician');
    expect(offerOf(driver.moment).replies).toEqual([
      ...causes.map(([reply]) => reply),
      'endSession',
      'notYet',
    ]);
  });

  it.each(causes)(
    'said as %s is read back as %s, and asked for anew where that is denied',
    (reply, cause) => {
      const driver = madeSafe().reply(reply);
      expect(driver.name).toBe('stopped.causeReadBack');
      expect(says(driver, 'causeReadBack')).toMatchObject({ values: { cause: { cause } } });
      expect(offerOf(driver.moment).by).toBe('technician');
      expect(driver.fork([]).reply('no').name).toBe('stopped.askingCause');
      expect(driver.reply('yes').name).toBe(cause === 'knocking' ? 'ended' : 'stopped.reopened');
    },
  );

  it.each(goesOn)('typed as %s leads on at once', (reply, cause) => {
    const driver = madeSafe().reply(reply, keys);
    expect(driver.name).toBe('stopped.reopened');
    expect(driver.last.notes).toContainEqual(
      expect.objectContaining({ kind: 'reopened', data: expect.objectContaining({ cause }) }),
    );
  });

  it('that ends the start is confirmed at the keys as well', () => {
    expect(madeSafe().reply('causeKnocking', keys).name).toBe('stopped.causeReadBack');
  });

  it('that calls for help does so before it is read back', () => {
    expect(madeSafe().reply('causeSmokeOrFire').lines[0]).toBe('fireCall');
    expect(madeSafe().reply('causeSomeoneHurt', keys).lines[0]).toBe('surgery');
  });

  it('is asked with the engine off, and with nothing off before', () => {
    const driver = working().stop();
    expect(driver.moment.hasTag('madeSafe')).toBe(false);
    expect(driver.reply('allOff').moment.hasTag('madeSafe')).toBe(false);
    expect(driver.reply('yes').moment.hasTag('madeSafe')).toBe(true);
    expect(driver.reply('causeOther').moment.hasTag('madeSafe')).toBe(true);
    expect(driver.reply('yes').moment.hasTag('madeSafe')).toBe(true);
  });
});

describe('that all is off', () => {
  it('is asked of the technician, read back when it was said, and asked anew where that is denied', () => {
    const driver = working().stop();
    expect(says(driver, 'areAllOff')).toBeDefined();
    expect(offerOf(driver.moment)).toMatchObject({ by: 'technician' });
    expect(driver.reply('allOff').name).toBe('stopped.makingSafeReadBack');
    expect(driver.reply('no').name).toBe('stopped.makingSafe');
  });

  it('leads on at once when it was typed: to the cause, or to the read-back of one that is known', () => {
    expect(working().stop().reply('allOff', keys).name).toBe('stopped.askingCause');
    const known = working().send({ type: 'stop', cause: 'oilLeak' }).reply('allOff', keys);
    expect(known.name).toBe('stopped.causeReadBack');
    expect(says(known, 'causeReadBack')).toMatchObject({ values: { cause: { cause: 'oilLeak' } } });
  });

  it('puts a stop on the record with its place, its cause and whoever called it', () => {
    const noted = (driver: Driver) => driver.last.notes.find(({ kind }) => kind === 'stopped')?.data;
    expect(noted(working().stop({ by: 'second' }))).toEqual({
      step: 'fill.oilLevel',
      cause: null,
      by: 'second',
    });
    expect(noted(working().send({ type: 'stop', cause: 'overheating' }, { by: 'technician' }))).toEqual({
      step: 'fill.oilLevel',
      cause: 'overheating',
      by: 'technician',
    });
  });

  it('comes after the call for help where the stop says what for', () => {
    expect(working().send({ type: 'stop', cause: 'smokeOrFire' }).lines.slice(0, 2)).toEqual([
      'stopCause',
      'fireCall',
    ]);
    expect(working().send({ type: 'stop', cause: 'someoneHurt' }).lines.slice(0, 2)).toEqual([
      'stopCause',
      'surgery',
    ]);
    expect(working().send({ type: 'stop', cause: 'oilLeak' }).lines).not.toContain('fireCall');
  });
});

describe('until all is off', () => {
  const urgent = ['stillRunning', 'causeSmokeOrFire', 'causeSomeoneHurt'];

  it('an engine that runs on, fire and injury may be told by anybody, also while "all off" is read back', () => {
    const driver = working().stop();
    expect(offerOf(driver.moment)).toMatchObject({
      replies: ['allOff', 'notYet', ...urgent],
      anybodys: urgent,
    });
    expect(offerOf(driver.reply('allOff').moment)).toMatchObject({
      replies: ['yes', 'no', ...urgent],
      anybodys: urgent,
    });
  });

  it('what ran on is known, whatever cause is named later: a starter that hangs is no engine that ran away', () => {
    const found = (place: string) =>
      sessionAt(demoSix, place).stop().reply('stillRunning').context.stop?.also;
    expect(found('firstFire.crank.cranking')).toEqual(['other']);
    expect(found('warmUp.watch.between')).toEqual(['overspeed']);
  });

  it('a stop that is called once more beside an engine that ran names what cuts it', () => {
    const driver = sessionAt(demoSix, 'warmUp.watch.between').stop().stop({ afterMs: 3000, by: 'second' });
    expect(says(driver, 'stopHeardCut')).toMatchObject({ values: { cut: { line: 'cutKnown' } } });
  });
});

describe('a false alarm that the second person called', () => {
  /** They shouted, and the technician takes it back. */
  const takenBack = () =>
    working()
      .stop({ by: 'second' })
      .reply('allOff')
      .reply('yes')
      .reply('causeFalseAlarm', { by: 'technician' });

  it('is theirs to take back: they are asked, and nobody else is believed', () => {
    const driver = takenBack();
    expect(driver.name).toBe('stopped.askingCaller');
    expect(says(driver, 'askCaller')).toBeDefined();
    expect(offerOf(driver.moment).by).toBe('second');
    driver.reply('causeFalseAlarm', { by: 'technician' });
    expect([driver.name, driver.lines[0]]).toEqual(['stopped.askingCaller', 'onlyCaller']);
    driver.reply('causeFalseAlarm', { by: 'technician', ...keys });
    expect([driver.name, driver.lines[0]]).toEqual(['stopped.askingCaller', 'onlyCaller']);
  });

  it('is read back to them, and holds when they say so', () => {
    const driver = takenBack().reply('causeFalseAlarm', { by: 'second' });
    expect(driver.name).toBe('stopped.callerReadBack');
    expect(says(driver, 'causeReadBack')).toMatchObject({ values: { cause: { cause: 'falseAlarm' } } });
    expect(offerOf(driver.moment).by).toBe('second');
    expect(driver.fork([]).reply('no', { by: 'second' }).name).toBe('stopped.askingCause');
    expect(driver.reply('yes', { by: 'second' }).name).toBe('stopped.reopened');
  });

  it('typed by them leads on at once, and stands on the record as one', () => {
    const driver = takenBack().reply('causeFalseAlarm', { by: 'second', ...keys });
    expect(driver.name).toBe('stopped.reopened');
    expect(driver.last.notes).toContainEqual({ kind: 'reopened', data: { cause: 'falseAlarm', steps: [] } });
  });

  it('that they deny leads back to the cause', () => {
    expect(takenBack().reply('no', { by: 'second' }).name).toBe('stopped.askingCause');
  });
});

describe('the end of the session after a stop', () => {
  it('is read back, said or typed, and denied it leads back to the cause', () => {
    for (const how of [{}, keys]) {
      const driver = madeSafe().reply('endSession', how);
      expect(driver.name).toBe('stopped.endReadBack');
      expect(says(driver, 'readBackReply')).toMatchObject({ values: { reply: { reply: 'endSession' } } });
      expect(driver.fork([]).reply('no').name).toBe('stopped.askingCause');
      expect(driver.reply('yes').name).toBe('ended');
    }
  });
});

describe('what is to be done again', () => {
  const todo = (driver: Driver) => says(driver, 'afterStop')?.values.todo;

  it('is told as nothing, as the one step, or as the first of how many, each of them named', () => {
    const at = (place: string, reply: ReplyId) =>
      todo(new Driver(demoFour).goodUntil(place).stop().reply('allOff', keys).reply(reply, keys));
    expect(at('fill.oilLevel.asking', 'causeFalseAlarm')).toEqual({ list: [] });
    expect(at('fill.oilLevel.asking', 'causeOverspeed')).toEqual({ step: 'job.cutOff' });
    expect(at('fill.fuelInTank.asking', 'causeOilLeak')).toMatchObject({
      line: 'toDoMany',
      values: { first: { step: expect.stringMatching(/^fill\.oil/) }, steps: { list: expect.any(Array) } },
    });
  });

  it.each([
    ['causeFalseAlarm', 'causeKept', 'notice'],
    ['causeOilLeak', 'handsIn', 'hazard'],
    ['causeFuelLeak', 'railHolds', 'hazard'],
    ['causeCoolantLeak', 'hotCap', 'hazard'],
    ['causeOverheating', 'hotCap', 'hazard'],
    ['causeCoolantInCylinder', 'hydraulicLock', 'hazard'],
    ['causeNoStart', 'noStartingFluid', 'hazard'],
  ] as const)('after %s begins with %s, as a %s', (reply, line, priority) => {
    expect(madeSafe().reply(reply, keys).last.said[0]).toMatchObject({ line, priority });
  });

  it('is begun when it was said to be, and confirmed', () => {
    const driver = madeSafe().reply('causeFalseAlarm', keys);
    expect(offerOf(driver.moment).by).toBe('technician');
    expect(driver.fork([]).reply('ready', keys).name).toBe('fill.oilLevel.asking');
    expect(driver.reply('ready').name).toBe('stopped.readyReadBack');
    expect(driver.fork([]).reply('no').name).toBe('stopped.reopened');
    expect(driver.reply('yes').name).toBe('fill.oilLevel.asking');
  });

  it('takes with it what was left out there, and keeps what was left out elsewhere', () => {
    const skipping = changed(demoSix, { allowedSkips: ['fill.coolantFreezePoint'] });
    const driver = new Driver(skipping).goodUntil('fill.coolantFreezePoint.asking').send({ type: 'skip' });
    driver.send({ type: 'reason', text: 'no instrument here' });
    if (driver.context.skips.length === 0) driver.reply('yes');
    driver.goodUntil('fill.oilLevel.asking');
    const skipped = (reply: ReplyId) =>
      driver
        .fork([])
        .stop()
        .reply('allOff', keys)
        .reply(reply, keys)
        .context.skips.map(({ step }) => step);
    expect(skipped('causeOilLeak')).toEqual(['fill.coolantFreezePoint']);
    expect(skipped('causeSmokeOrFire')).toEqual([]);
  });
});

describe('the drill of the stop words', () => {
  it('takes the second person’s word a moment after the technician’s, not with it: that may be one mouth', () => {
    const first = () =>
      new Driver(demoFour).goodUntil('job.stopTechnician.asking').stop({ by: 'technician' });
    expect(first().stop({ by: 'technician', afterMs: 60 }).name).toBe('stopped.drillGoesOn');
    const together = first().stop({ by: 'second', afterMs: 60 });
    expect(together.name).toBe('stopped.drillGoesOn');
    expect(together.lines).toContain('askNextDrill');
    expect(first().stop({ by: 'second', afterMs: 800 }).name).toBe('stopped.drill');
  });

  it('asks the second person for theirs at once, then whether that was the drill, and is done', () => {
    const driver = new Driver(demoFour).goodUntil('job.stopTechnician.asking').stop();
    expect(says(driver, 'askNextDrill')).toMatchObject({ values: { words: { emergencyWords: 'shown' } } });
    driver.stop({ by: 'second' });
    expect(says(driver, 'askDrill')).toBeDefined();
    expect(offerOf(driver.moment)).toMatchObject({ by: 'technician' });
    driver.reply('thatWasTheDrill');
    expect(says(driver, 'drillDone')).toBeDefined();
  });

  it('that comes to something real leads to the cause at the keys as well', () => {
    const driver = new Driver(demoFour).goodUntil('job.stopTechnician.asking').stop();
    expect(driver.reply('allOff', keys).name).toBe('stopped.askingCause');
  });
});
