import { describe, expect, it } from 'vitest';
import type { Context, OpenItem, StopRecord } from '../../machines/context.ts';
import { offerOf } from '../../machines/moment.ts';
import { callForHelp } from '../../machines/urgent.ts';
import type { Cause, Via } from '../../machines/vocabulary.ts';
import type { ReplyId } from '../../prompts/types.ts';
import { ofKind } from '../../src/record/vocabulary/index.ts';
import type { Driver } from './helpers/driver.ts';
import { standingIn, upTo } from './helpers/forged.ts';
import { demoGenset, demoSix } from './helpers/profiles.ts';
import { stoppedAt } from './helpers/stopped-at.ts';

const passedIn = (driver: Driver) => driver.last.notes.filter(ofKind('passed')).map(({ data }) => data.step);

describe('a stop word that is tried out', () => {
  const atFirst = (known: Partial<Context> = {}) =>
    standingIn(
      demoSix,
      { procedure: { job: { stopTechnician: 'asking' } } },
      { step: 'job.stopTechnician', done: upTo(demoSix, 'job.stopTechnician'), ...known },
    );

  it('by the technician leads on to that of the second person; both are confirmed together', () => {
    const driver = atFirst().stop({ by: 'technician' });
    expect(driver.name).toBe('stopped.drillGoesOn');
    driver.stop({ by: 'second' });
    expect(driver.name).toBe('stopped.drill');
    driver.reply('thatWasTheDrill');
    expect(passedIn(driver)).toEqual(['job.stopTechnician', 'job.stopSecond']);
    expect(driver.context.done.slice(-2)).toEqual(['job.stopTechnician', 'job.stopSecond']);
    expect(driver.context).toMatchObject({ stop: null, misheard: 0 });
  });

  it('of one who has proved it already is neither asked for nor passed once more', () => {
    const driver = atFirst({ done: [...upTo(demoSix, 'job.stopTechnician'), 'job.stopSecond'] });
    driver.stop({ by: 'technician' });
    expect(driver.name).toBe('stopped.drill');
    driver.reply('thatWasTheDrill');
    expect(passedIn(driver)).toEqual(['job.stopTechnician']);
    expect(driver.context.done.filter(id => id === 'job.stopSecond')).toHaveLength(1);
  });

  it('twice within a breath, or once more by the technician, is no word of the second person', () => {
    const heard = () => atFirst().stop({ by: 'technician' });
    expect(heard().stop({ by: 'technician', afterMs: 100 }).name).toBe('stopped.drillGoesOn');
    expect(heard().stop({ by: 'technician', afterMs: 5000 }).name).toBe('stopped.drillGoesOn');
    // A held key repeats, also at a device that both of them use, and one word is heard at two devices.
    const again = (first: Via, second: Via, devices: readonly [string, string], afterMs: number) =>
      atFirst()
        .send({ type: 'stop', device: devices[0] }, { by: 'technician', via: first })
        .send({ type: 'stop', device: devices[1] }, { by: 'second', via: second, afterMs }).name;
    expect(again('keys', 'keys', ['one', 'one'], 799)).toBe('stopped.drillGoesOn');
    expect(again('keys', 'keys', ['one', 'one'], 800)).toBe('stopped.drill');
    expect(again('voice', 'voice', ['one', 'other'], 799)).toBe('stopped.drillGoesOn');
    expect(again('keys', 'voice', ['one', 'other'], 799)).toBe('stopped.drillGoesOn');
    expect(again('voice', 'touch', ['one', 'other'], 799)).toBe('stopped.drillGoesOn');
    // The hands of two people at two devices are two.
    expect(again('keys', 'touch', ['one', 'other'], 1)).toBe('stopped.drill');
  });

  it('by the second person alone is a stop like any other', () => {
    expect(atFirst().stop({ by: 'second' }).name).toBe('stopped.makingSafe');
  });

  it('that names its cause is no drill, and nor is any stop within that one', () => {
    const fire = atFirst().send({ type: 'stop', cause: 'smokeOrFire' }, { by: 'technician' });
    expect(fire.name).toBe('stopped.makingSafe');
    expect(fire.lines).toContain('fireCall');
    fire.stop({ by: 'technician' });
    expect(fire.name).toBe('stopped.makingSafe');
    expect(fire.lines).toContain('fireCall');
    expect(fire.context.done).not.toContain('job.stopTechnician');
  });

  it('waits for the other one, and a stop of the bus meanwhile is not that', () => {
    for (const by of ['technician', 'second'] as const) {
      const driver = atFirst().stop({ by: 'technician' });
      driver.send({ type: 'stop', cause: 'overspeed' }, { by, via: 'bus', afterMs: 5000 });
      expect(driver.name).toBe('stopped.makingSafe');
    }
  });

  it.each([
    ['a restart of the program, however short', { also: ['toolRestarted'] }],
    ['a long absence', { longAway: true }],
    ['what ran on', { also: ['overspeed'] }],
    ['what was found', { found: 'noOilPressure' }],
  ] as const)('within a stop that knows of %s wipes nothing of it: all is off first', (_, known) => {
    const stop = { ...stoppedAt('job.stopTechnician', null), by: 'technician' as const, ...known };
    const driver = standingIn(demoSix, { stopped: 'makingSafe' }, { step: 'job.stopTechnician', stop });
    expect(driver.stop({ by: 'technician' }).name).toBe('stopped.makingSafe');
    expect(driver.stop({ by: 'second', afterMs: 2000 }).name).toBe('stopped.makingSafe');
    expect(driver.context.stop).toMatchObject(known);
    expect(driver.context.done).not.toContain('job.stopTechnician');
  });

  it('is tried out anew where the program was away in the middle of it, for hours', () => {
    const driver = atFirst().stop({ by: 'technician' });
    driver.send({ type: 'stop', cause: 'toolRestarted', awayS: 50_000 }, { by: 'technician', via: 'tool' });
    expect(driver.name).toBe('stopped.makingSafe');
    driver.reply('stillRunning', { via: 'keys' });
    driver.stop({ by: 'technician', afterMs: 2000 }).stop({ by: 'second', afterMs: 2000 });
    expect(driver.name).toBe('stopped.makingSafe');
    driver.reply('allOff', { via: 'keys' }).reply('causeFalseAlarm', { by: 'second', via: 'keys' });
    expect(driver.name).toBe('stopped.reopened');
    // Whoever may have come, or gone, meanwhile: all that keeps people safe, and what ran on.
    expect(driver.context.reopened).toEqual(expect.arrayContaining(['job.parked', 'job.cutOff']));
    driver.reply('ready', { via: 'keys' }).goodUntil('job.stopTechnician.asking');
    expect(driver.stop({ by: 'technician' }).stop({ by: 'second', afterMs: 2000 }).name).toBe(
      'stopped.drill',
    );
  });

  it('that a cause is known of already, is none once more', () => {
    const stop = {
      ...stoppedAt('job.stopTechnician', null),
      cause: 'oilLeak' as const,
      by: 'technician' as const,
    };
    const driver = standingIn(demoSix, { stopped: 'askingCause' }, { step: 'job.stopTechnician', stop });
    expect(driver.stop({ by: 'technician' }).name).toBe('stopped.makingSafe');
  });
});

describe('everything off, but for the way out', () => {
  const stop = (more: Partial<StopRecord> = {}): StopRecord => ({
    ...stoppedAt('warmUp.watch', null),
    ...more,
  });
  const makingSafe = (more: Partial<StopRecord> = {}, known: Partial<Context> = {}) =>
    standingIn(demoSix, { stopped: 'makingSafe' }, { step: 'warmUp.watch', stop: stop(more), ...known });

  it('takes that it runs on, fire and injury from anybody, ahead of all that is asked', () => {
    const urgent = {
      stillRunning: { also: ['overspeed'] },
      causeSmokeOrFire: { cause: 'smokeOrFire', also: [] },
      causeSomeoneHurt: { cause: 'someoneHurt', also: [] },
    } as const;
    for (const [id, known] of Object.entries(urgent)) {
      for (const by of ['technician', 'second'] as const) {
        const driver = makingSafe().reply(id as ReplyId, { by });
        expect(driver.name).toBe('stopped.makingSafe');
        expect(driver.context.stop).toMatchObject(known);
        expect(driver.last.said[0]).toMatchObject({ priority: 'hazard' });
      }
    }
    expect(offerOf(makingSafe().moment)).toMatchObject({
      replies: expect.arrayContaining(Object.keys(urgent)),
      anybodys: Object.keys(urgent),
    });
  });

  it('calls out what to do again after fifteen seconds, and from half a minute on with what cuts it off', () => {
    const driver = makingSafe();
    driver.stop({ by: 'second' });
    const calls: [number, readonly string[]][] = [];
    for (let call = 0; call < 4; call += 1) {
      const beforeMs = driver.nowMs;
      driver.ring();
      calls.push([driver.nowMs - beforeMs, driver.lines]);
    }
    expect(calls).toEqual([
      [15_000, ['notOffYet', 'areAllOff']],
      [15_000, ['stopHeardCut', 'areAllOff']],
      [30_000, ['stopHeardCut', 'areAllOff']],
      [30_000, ['stopHeardCut', 'areAllOff']],
    ]);
    expect(driver.last.said[0]).toMatchObject({ priority: 'hazard', once: true });
  });

  it('is left alone where the engine stood: nothing is called out again', () => {
    const standing = standingIn(
      demoSix,
      { procedure: { walkRound: { tools: 'asking' } } },
      { step: 'walkRound.tools' },
    ).stop();
    expect(standing.name).toBe('stopped.makingSafe');
    expect(standing.alarmMs).toBeNull();
  });

  it('no cause but fire and injury has help called', () => {
    expect(callForHelp('oilLeak')).toEqual([]);
    expect(callForHelp('smokeOrFire')).toHaveLength(1);
    expect(callForHelp('someoneHurt')).toHaveLength(1);
  });
});

describe('once the cause of a stop is known', () => {
  const openItems: readonly OpenItem[] = [
    { step: 'checks.charging', quantity: 'chargingVoltage', si: 13, by: 'technician' },
    { step: 'fill.coolantFreezePoint', by: 'technician' },
  ];
  const skips = [
    { step: 'prime.strokes', reason: 'done', by: 'technician' },
    { step: 'fill.coolantFreezePoint', reason: 'no tester', by: 'technician' },
  ] as const;
  const named = (
    cause: Exclude<Cause, 'drill' | 'toolRestarted' | 'binds'>,
    known: Partial<Context> = {},
  ) => {
    const id = `cause${cause[0]?.toUpperCase()}${cause.slice(1)}` as ReplyId;
    return standingIn(
      demoSix,
      { stopped: 'askingCause' },
      {
        step: 'warmUp.watch',
        done: upTo(demoSix, 'warmUp.watch'),
        stop: stoppedAt('warmUp.watch', null),
        openItems,
        skips,
        ...known,
      },
    ).reply(id, { via: 'keys' });
  };

  it('what was open or skipped in a step that is done again is no longer so, and the rest stays', () => {
    const driver = named('fuelLeak');
    expect(driver.name).toBe('stopped.reopened');
    expect(driver.context.openItems).toEqual([openItems[1]]);
    expect(driver.context.skips).toEqual([skips[1]]);
  });

  it('what is put back stands on the list, on the record and among what is asked as a check', () => {
    const driver = named('fuelLeak', { again: ['prime.firm', 'job.card'] });
    const { reopened, again, done } = driver.context;
    expect(reopened?.slice(0, 2)).toEqual(['fill.firstFilterPreFilled', 'fill.secondFilterDry']);
    expect(reopened).toEqual(upTo(demoSix, 'warmUp.watch').filter(id => !done.includes(id)));
    expect(again).toEqual([...new Set(['prime.firm', 'job.card', ...(reopened ?? [])])]);
    expect(driver.last.notes).toContainEqual({
      kind: 'reopened',
      data: { cause: 'fuelLeak', steps: reopened },
    });
  });

  it('a stop within a stop adds to what the first one has put back', () => {
    const driver = named('faultCode', { reopened: ['job.card'] });
    expect(driver.context.reopened?.slice(0, 2)).toEqual(['job.card', 'walkRound.sensors']);
  });

  it.each([
    ['coolantLeak', 'hotCap'],
    ['overheating', 'hotCap'],
    ['coolantInCylinder', 'hydraulicLock'],
    ['noStart', 'noStartingFluid'],
    ['fuelLeak', 'railHolds'],
    ['oilLeak', 'handsIn'],
    ['other', 'handsIn'],
  ] as const)('of %s people are warned first: %s', (cause, line) => {
    const [said] = named(cause).last.said;
    expect(said).toMatchObject({ line, priority: 'hazard', values: { out: { line: 'keyOut' } } });
  });

  it('of what puts nobody in danger it is only said that it is kept', () => {
    expect(named('falseAlarm').last.said[0]).toMatchObject({ line: 'causeKept', priority: 'notice' });
    expect(named('someoneHurt').lines).toContain('causeKept');
  });

  it('and nothing is known to be given back any more where the engine will run again', () => {
    const done = ['job.autoStart', ...upTo(demoSix, 'signOff.sign')] as const;
    const given = { done, takenAway: ['signOff.handBack'] } as const;
    expect(named('fuelLeak', given).context.takenAway).toEqual([]);
    const atEnd = { step: 'signOff.sign', stop: stoppedAt('signOff.sign', null) } as const;
    expect(named('falseAlarm', { ...given, ...atEnd }).context.takenAway).toEqual(['signOff.handBack']);
    expect(named('falseAlarm', { ...given, ...atEnd, takenAway: [] }).context.takenAway).toEqual([]);
  });

  it('and the mode switch of a set, that is off as all is, leaves it locked out', () => {
    const done = ['job.autoStart', ...upTo(demoSix, 'barOver.toolOut')] as const;
    const known = { done, step: 'barOver.turned', stop: stoppedAt('barOver.turned', null) } as const;
    expect(named('falseAlarm', { ...known, takenAway: ['noFuelCrank.manual'] }).context.takenAway).toEqual(
      [],
    );
  });

  it('a start that knocked has ended: nothing is put back', () => {
    const driver = named('knocking');
    expect(driver.name).toBe('stopped.causeReadBack');
    driver.reply('yes', { via: 'keys' });
    expect(driver.name).toBe('ended');
    expect(driver.last.notes).toContainEqual({
      kind: 'barred',
      data: { step: 'warmUp.watch', why: 'knockingEnds' },
    });
    expect(driver.last.said).toMatchObject([
      { line: 'knockingEnds', priority: 'hazard' },
      { line: 'endedBarred' },
    ]);
  });
});

it('an engine that its key does not stop is named with what cuts it off, from the first call on', () => {
  const call = (cause: Cause) =>
    standingIn(demoGenset, { procedure: { warmUp: { hose: 'asking' } } }, { step: 'warmUp.hose' }).send(
      { type: 'stop', cause },
      { by: 'technician', via: 'bus' },
    ).last.said[0];
  const off = 'mode switch to off';
  const cut = { line: 'cutAt', values: { at: 'emergency button of the set' } };
  for (const cause of ['overspeed', 'firedUnfuelled', 'runsUnasked'] as const)
    expect(call(cause)).toMatchObject({ line: 'stopCauseCut', values: { cause: { cause }, off, cut } });
  const plain = call('noOilPressure');
  expect(plain).toMatchObject({ line: 'stopCause', values: { cause: { cause: 'noOilPressure' }, off } });
  expect(plain?.values).not.toHaveProperty('cut');
});
