import { describe, expect, it } from 'vitest';
import type { Context, StopRecord } from '../../machines/context.ts';
import { emergencyIn } from '../../machines/emergency.ts';
import type { SessionEvent } from '../../machines/events.ts';
import { deniedLate, KEY_TURNED_MS, lateStops, pass, passed, stopNow } from '../../machines/progress.ts';
import type { Look } from '../../machines/toolkit.ts';
import type { Cause, Person, Via } from '../../machines/vocabulary.ts';
import { stepOf } from './helpers/asks.ts';
import { carriedOut } from './helpers/carried-out.ts';
import { demoSix } from './helpers/profiles.ts';
import { stoppedAt } from './helpers/stopped-at.ts';
import { knowing } from './limits/known.ts';

interface Called {
  readonly by?: Person;
  readonly via?: Via;
  readonly atMs?: number;
  readonly awayS?: number;
}

const at = (known: Partial<Context>, event: Partial<SessionEvent> = {}): Look => ({
  context: knowing(demoSix, {}, known),
  event: { type: 'stop', by: 'technician', via: 'voice', atMs: 5000, ...event } as SessionEvent,
});

/** What is known of a stop that is called out, within another or by itself. */
function called(cause: Cause | null, within: Partial<StopRecord> | null, how: Called = {}): StopRecord {
  const before = within && { ...stoppedAt('warmUp.watch', null), by: 'technician' as const, ...within };
  const { stop } = stopNow(at({ step: 'warmUp.watch', stop: before }, how), cause);
  if (!stop) throw new Error('Everything stands still.');
  return stop;
}

describe('what a stop was called for', () => {
  it.each([
    'noOilPressure',
    'overheating',
    'overspeed',
    'firedUnfuelled',
    'runsUnasked',
    'coolantInCylinder',
    'knocking',
  ] as const)('%s was found, and no other cause makes it undone', cause => {
    expect(called(cause, null).found).toBe(cause);
    expect(called('falseAlarm', { found: cause }).found).toBe(cause);
  });

  it.each(['drill', 'fuelLeak', 'noStart', 'binds', 'faultCode', 'someoneHurt', 'other'] as const)(
    '%s was not measured',
    cause => {
      expect(called(cause, null).found).toBeNull();
    },
  );

  it('is the cause of the first stop, whatever a second one is for', () => {
    expect(called('oilLeak', { cause: 'fuelLeak' })).toMatchObject({ cause: 'fuelLeak', also: [] });
    expect(called('oilLeak', { cause: null })).toMatchObject({ cause: null, also: [] });
  });

  it('is its own where the first one was a false alarm', () => {
    expect(called('oilLeak', { cause: 'falseAlarm' }).cause).toBe('oilLeak');
    expect(called(null, { cause: 'falseAlarm' }).cause).toBeNull();
  });

  it('is fire or injury once that is called out, and what it was before counts as well', () => {
    expect(called('smokeOrFire', { cause: 'fuelLeak', also: ['overspeed'] })).toMatchObject({
      cause: 'smokeOrFire',
      also: ['overspeed', 'fuelLeak'],
    });
    expect(called('someoneHurt', { cause: null })).toMatchObject({ cause: 'someoneHurt', also: [] });
    expect(called('someoneHurt', { cause: 'falseAlarm' })).toMatchObject({ cause: 'someoneHurt', also: [] });
    expect(called('someoneHurt', null)).toMatchObject({ cause: 'someoneHurt', also: [] });
  });

  it('is a restart of the tool besides, once', () => {
    const besides = (also: readonly Cause[], cause: Cause | null = 'fuelLeak') =>
      called('toolRestarted', { cause, also }).also;
    expect(besides([])).toEqual(['toolRestarted']);
    expect(besides(['overspeed', 'toolRestarted'])).toEqual(['overspeed', 'toolRestarted']);
    expect(besides([], null)).toEqual(['toolRestarted']);
    expect(besides([], 'toolRestarted')).toEqual([]);
    expect(called('toolRestarted', null)).toMatchObject({ cause: 'toolRestarted', also: [] });
    expect(called('oilLeak', { cause: 'fuelLeak', also: ['overspeed'] }).also).toEqual(['overspeed']);
  });
});

it('an emergency keeps what was known before it, and nothing twice', () => {
  expect(emergencyIn({ cause: null, also: [] }, 'smokeOrFire')).toEqual({ cause: 'smokeOrFire', also: [] });
  expect(emergencyIn({ cause: 'smokeOrFire', also: [] }, 'smokeOrFire').also).toEqual([]);
  expect(emergencyIn({ cause: 'oilLeak', also: ['oilLeak'] }, 'smokeOrFire').also).toEqual(['oilLeak']);
});

describe('an absence of the tool', () => {
  const longAway = (awayS?: number) =>
    called('toolRestarted', null, awayS === undefined ? {} : { awayS }).longAway;

  it('is long from half an hour on, and where no clock has measured it', () => {
    expect([0, 1799, 1800].map(longAway)).toEqual([false, false, true]);
    expect(longAway()).toBe(true);
    const late = { type: 'clock', by: 'technician', via: 'tool', atMs: 0 } as const;
    expect(stopNow({ context: knowing(demoSix, {}), event: late }, 'toolRestarted').stop?.longAway).toBe(
      true,
    );
  });

  it('stays a long one, and no other stop is one', () => {
    expect(called('toolRestarted', { longAway: true }, { awayS: 5 }).longAway).toBe(true);
    expect(called('oilLeak', null, { awayS: 9999 }).longAway).toBe(false);
  });

  it('is kept with its seconds, or none where no clock could tell', () => {
    const absences = (awayS?: number) =>
      stopNow(at({}, { type: 'stop', ...(awayS === undefined ? {} : { awayS }) }), 'toolRestarted').absences;
    expect(absences(60)).toEqual([{ atMs: 5000, seconds: 60 }]);
    expect(absences()).toEqual([{ atMs: 5000, seconds: null }]);
    expect(stopNow(at({}), 'oilLeak').absences).toBeUndefined();
  });
});

describe('a stop that the second person called', () => {
  it('is theirs to take back: called first, or once more', () => {
    expect(called(null, null, { by: 'second' }).secondCalled).toBe(true);
    expect(called(null, {}, { by: 'second' }).secondCalled).toBe(true);
    expect(called(null, { secondCalled: true }, { by: 'technician' }).secondCalled).toBe(true);
    expect(called(null, null, { by: 'technician' }).secondCalled).toBe(false);
  });

  it.each(['voice', 'keys', 'touch'] as const)('counts by %s', via => {
    expect(called(null, null, { by: 'second', via }).secondCalled).toBe(true);
  });

  it.each(['bus', 'tool'] as const)('is none where it came by the %s, in whose name ever', via => {
    expect(called(null, null, { by: 'second', via }).secondCalled).toBe(false);
  });
});

describe('a call once more, when the key would long have been turned', () => {
  const again = (cause: Cause | null, how: Called, insisted = false) =>
    called(cause, { firstMs: 1000, insisted }, how).insisted;

  it('insists from three seconds after the first call on', () => {
    expect(KEY_TURNED_MS).toBe(3000);
    expect([3999, 4000].map(atMs => again(null, { atMs }))).toEqual([false, true]);
  });

  it('is one of people, and not of the bus or the tool', () => {
    for (const via of ['bus', 'tool'] as const) expect(again(null, { atMs: 9000, via })).toBe(false);
    for (const via of ['keys', 'touch'] as const) expect(again(null, { atMs: 9000, via })).toBe(true);
  });

  it('is none where it tells of fire or injury, stays one, and is no first call', () => {
    expect(again('smokeOrFire', { atMs: 9000 })).toBe(false);
    expect(again('oilLeak', { atMs: 9000 })).toBe(true);
    expect(again(null, { atMs: 1500 }, true)).toBe(true);
    expect(called(null, null, { atMs: 9000 }).insisted).toBe(false);
  });
});

describe('an answer that is too late', () => {
  const deadline = { sinceMs: 2000, atMs: 10_000, cause: 'noOilPressure', extended: false } as const;
  const guards = (moves: ReturnType<typeof lateStops>, look: Look) => moves.map(({ guard }) => guard(look));

  it('stops with the cause of its deadline, from that moment on', () => {
    const moves = lateStops(['overheating', 'noOilPressure']);
    const late = (atMs: number) => guards(moves, at({ deadline }, { atMs }));
    expect(late(9999)).toEqual([false, false]);
    expect(late(10_000)).toEqual([false, true]);
    expect(guards(moves, at({}, { atMs: 10_000 }))).toEqual([false, false]);
  });

  it('names the seconds that there were, and not those of a read-back', () => {
    const [move] = lateStops(['noOilPressure']);
    if (!move) throw new Error('There is a move.');
    const lateAfterS = (known: Context['deadline']) =>
      carriedOut(move.actions, at({ deadline: known }, { atMs: 20_000 })).context.stop?.lateAfterS;
    expect(lateAfterS(deadline)).toBe(8);
    expect(lateAfterS({ ...deadline, atMs: 15_000, extended: true, questionMs: 10_000 })).toBe(8);
  });

  it('that is denied after the time of its question stops at once', () => {
    const { guard } = deniedLate('noOilPressure');
    const extended = { ...deadline, atMs: 15_000, extended: true, questionMs: 10_000 };
    expect([9999, 10_000].map(atMs => guard(at({ deadline: extended }, { atMs })))).toEqual([false, true]);
    expect(guard(at({ deadline }, { atMs: 20_000 }))).toBe(false);
    expect(guard(at({}, { atMs: 20_000 }))).toBe(false);
    expect(guard(at({ deadline: { ...extended, cause: 'overheating' } }, { atMs: 20_000 }))).toBe(false);
  });
});

describe('a step that is passed', () => {
  const passing = (id: 'walkRound.tools' | 'signOff.handBack', known: Partial<Context> = {}) => {
    const step = { ...stepOf(demoSix, 'walkRound.tools', 'confirm'), id };
    const handsBack = id === 'signOff.handBack' ? { ...step, gate: 'handedBack' as const } : step;
    return carriedOut(pass(handsBack).actions, at({ done: ['job.card'], ...known }));
  };

  it('is done, stands on the record, and is no longer one that is done again', () => {
    const { context, notes } = passing('walkRound.tools', {
      again: ['walkRound.tools', 'fill.oilLevel'],
      misheard: 2,
      nextLookMs: 9000,
    });
    expect(context).toMatchObject({
      done: ['job.card', 'walkRound.tools'],
      again: ['fill.oilLevel'],
      misheard: 0,
      nextLookMs: null,
      takenAway: [],
    });
    expect(notes).toEqual([
      {
        kind: 'passed',
        data: { step: 'walkRound.tools', by: 'technician', gate: 'walkRoundDone', misheard: 2 },
      },
    ]);
  });

  it('was passed by who said so; by whose step it is where time or the bus passed it, and where a stop word was tried', () => {
    const by = (step: Parameters<typeof passed>[0], event: Partial<SessionEvent>) =>
      passed(step, at({}, event))?.data;
    const tools = stepOf(demoSix, 'walkRound.tools', 'confirm');
    expect(by(tools, { by: 'second', via: 'voice' })).toMatchObject({ by: 'second' });
    for (const via of ['tool', 'bus'] as const)
      expect(by(tools, { by: 'second', via })).toMatchObject({ by: 'technician' });
    const word = stepOf(demoSix, 'job.stopSecond', 'confirm');
    expect(by(word, { by: 'technician', via: 'keys' })).toMatchObject({ by: 'second' });
    const reading = stepOf(demoSix, 'job.ambient', 'reading');
    expect(by(reading, { by: 'second', via: 'voice' })).toMatchObject({ by: 'second' });
  });

  it('has taken away what was made safe where that is what it says, and is remembered once', () => {
    expect(passing('signOff.handBack').context.takenAway).toEqual(['signOff.handBack']);
    expect(passing('signOff.handBack', { takenAway: ['signOff.handBack'] }).context.takenAway).toHaveLength(
      1,
    );
  });
});
