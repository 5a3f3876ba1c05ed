import { describe, expect, it } from 'vitest';
import type { Context, StopRecord } from '../../machines/context.ts';
import type { SessionEvent } from '../../machines/events.ts';
import { procedureFor } from '../../machines/first-start.ts';
import { denyInTime } from '../../machines/kinds/deadline.ts';
import {
  extendDeadline,
  freshQuestion,
  gateMet,
  passed,
  questionAgain,
  stopNow,
} from '../../machines/progress.ts';
import { doneAfterStop, reopenedSteps } from '../../machines/reopening.ts';
import { leftMs, lookDue, momentsOf, nextAlarmMs, shiftTimes, timerOver } from '../../machines/timing.ts';
import type { Look } from '../../machines/toolkit.ts';
import type { Cause } from '../../machines/vocabulary.ts';
import { demoSix } from './helpers/profiles.ts';
import { stoppedAt } from './helpers/stopped-at.ts';
import { knowing } from './limits/known.ts';

const steps = procedureFor(demoSix);
const context = (known: Partial<Context> = {}): Context => knowing(demoSix, {}, known);
const at = (atMs: number, known: Partial<Context> = {}): Look => ({
  context: context(known),
  event: { type: 'stop', by: 'second', via: 'voice', atMs } as SessionEvent,
});

describe('a stop', () => {
  const stop = (cause: Cause | null, known: Partial<Context> = {}, lateAfterS: number | null = null) =>
    stopNow(at(5000, { step: 'checks.leaks', ...known }), cause, lateAfterS);

  it('keeps who called it, when, where and why, and forgets what was being asked', () => {
    const known = {
      misheard: 2,
      heldSinceMs: 100,
      deadline: { sinceMs: 0, atMs: 8000, cause: 'noOilPressure', extended: false },
      echoed: [{ step: 'job.ambient', quantity: 'ambientTemperature', si: 5, engine: 'off' }],
      stops: 2,
    } as const;
    expect(stop('oilLeak', known, 8)).toEqual({
      ...freshQuestion,
      heldSinceMs: null,
      echoed: [],
      watchesBegan: {},
      stops: 3,
      stop: {
        cause: 'oilLeak',
        found: null,
        by: 'second',
        atMs: 5000,
        step: 'checks.leaks',
        lateAfterS: 8,
        longAway: false,
        also: [],
        secondCalled: true,
        firstMs: 5000,
        insisted: false,
        drilled: [],
        lastDrilled: null,
      },
    });
  });

  it('within a stop keeps the place, the cause and the lateness of the first, and what was found', () => {
    const first: StopRecord = {
      cause: null,
      found: 'overheating',
      by: 'technician',
      atMs: 1000,
      step: 'warmUp.watch',
      lateAfterS: 6,
      also: ['smokeOrFire'],
      longAway: false,
      secondCalled: false,
      firstMs: 1000,
      insisted: false,
      drilled: ['job.stopTechnician'],
      lastDrilled: { by: 'technician', atMs: 900 },
    };
    expect(stop('overspeed', { stop: first }).stop).toEqual({
      ...first,
      by: 'second',
      atMs: 5000,
      secondCalled: true,
      insisted: true,
    });
  });

  it('was found by measurement where it is for oil pressure, heat or speed, and by no other cause', () => {
    const found = (cause: Cause | null) => stop(cause).stop?.found;
    for (const cause of ['noOilPressure', 'overheating', 'overspeed'] as const)
      expect(found(cause)).toBe(cause);
    for (const cause of ['oilLeak', 'faultCode', 'falseAlarm', null] as const)
      expect(found(cause), String(cause)).toBeNull();
  });

  it('called while a reading that stops the engine waits to be denied was called for that', () => {
    const waiting = { kind: 'value', quantity: 'oilPressure', si: 20 } as const;
    const found = (pending: Context['pending'], cause: Cause | null = null) =>
      stop(cause, { pending }).stop?.found;
    expect(found({ ...waiting, stops: 'noOilPressure' })).toBe('noOilPressure');
    expect(found(waiting)).toBeNull();
    expect(found({ kind: 'reply', id: 'yes', atMs: 0 })).toBeNull();
    expect(found({ ...waiting, stops: 'noOilPressure' }, 'overheating')).toBe('overheating');
  });
});

describe('a deadline that a read-back runs past', () => {
  const deadline = { sinceMs: 0, atMs: 10_000, cause: 'noOilPressure', extended: false } as const;

  it('is moved to eight seconds after it was asked, once, and never nearer; the limit of the question is kept', () => {
    const moved = (atMs: number) => ({ deadline: { ...deadline, atMs, extended: true, questionMs: 10_000 } });
    expect(extendDeadline(at(5000, { deadline }))).toEqual(moved(13_000));
    expect(extendDeadline(at(1000, { deadline }))).toEqual(moved(10_000));
    expect(extendDeadline(at(5000, { deadline: { ...deadline, extended: true } }))).toEqual({});
    expect(extendDeadline(at(5000, { deadline: null }))).toEqual({});
  });

  it('is where it was once the answer is denied, and moves for the next read-back again', () => {
    const moved = { ...deadline, ...extendDeadline(at(5000, { deadline })).deadline };
    expect(questionAgain(at(6000, { deadline: moved }))).toEqual({ deadline });
    expect(questionAgain(at(6000, { deadline }))).toEqual({});
    expect(questionAgain(at(6000, { deadline: null }))).toEqual({});
  });
});

describe('a value that stops the engine', () => {
  const denied = (pending: Context['pending']) => denyInTime(at(5000, { pending }), 'noOilPressure');
  const deadline = { sinceMs: 5000, atMs: 13_000, cause: 'noOilPressure', extended: true };

  it('counts unless it is denied within eight seconds, which no read-back makes longer', () => {
    const pending = { kind: 'value', quantity: 'oilPressure', si: 20 } as const;
    expect(denied(pending)).toEqual({ deadline, pending: { ...pending, stops: 'noOilPressure' } });
    expect(extendDeadline(at(6000, denied(pending)))).toEqual({});
  });

  it('is named by no reply that waits', () => {
    for (const pending of [null, { kind: 'reply', id: 'yes', atMs: 0 }] as const)
      expect(denied(pending)).toEqual({ deadline });
  });
});

describe('a gate', () => {
  it('is met by all of its steps that apply, and by no fewer', () => {
    const gate = 'coldLevels';
    const own = steps.filter(step => step.gate === gate).map(({ id }) => id);
    expect(own.length).toBeGreaterThan(1);
    expect(gateMet(steps, context({ done: own }), gate)).toBe(true);
    for (const missing of own)
      expect(gateMet(steps, context({ done: own.filter(id => id !== missing) }), gate)).toBe(false);
    expect(gateMet(steps, context({ done: own }), 'secondPersonClear')).toBe(false);
  });
});

describe('a step that is passed', () => {
  it('stands on the record with whose it was, its gate, what was misheard and what was worked out for it', () => {
    const step = steps.find(({ id }) => id === 'fill.coolantMix');
    const look = at(0, { misheard: 2, readings: knowing(demoSix, { coldestNight: -5 }).readings });
    expect(passed(step, look)).toEqual({
      kind: 'passed',
      data: {
        step: 'fill.coolantMix',
        by: 'second',
        gate: 'coolantReady',
        misheard: 2,
        figures: expect.objectContaining({ concentrate: expect.anything() }),
      },
    });
    expect(passed(undefined, at(0, { step: 'job.card' }))).toEqual({
      kind: 'passed',
      data: { step: 'job.card', by: null, misheard: 0 },
    });
  });
});

describe('what a stop puts back on the list', () => {
  const upTo = (id: string) =>
    steps
      .slice(
        0,
        steps.findIndex(step => step.id === id),
      )
      .map(step => step.id);
  const doneAfter = (cause: Cause, step: Context['step'], known: Partial<Context> = {}) =>
    doneAfterStop(steps, context({ done: upTo(step), step, ...known }), cause);

  it('is nothing before the key was on, where the cause puts nothing in doubt', () => {
    expect(doneAfter('falseAlarm', 'walkRound.tools')).toEqual(upTo('walkRound.tools'));
  });

  it('is all that was found with the key on or the engine running', () => {
    const kept = doneAfter('falseAlarm', 'checks.leaks');
    expect(kept).toEqual(upTo('checks.leaks').filter(id => !/^(keyOn|firstFire|firstRun|checks)\./.test(id)));
    expect(kept).toContain('noFuelCrank.holds');
  });

  it('is nothing behind key-off, where the cause puts nothing in doubt; all of it where it does', () => {
    expect(doneAfter('falseAlarm', 'signOff.cool')).toEqual(upTo('signOff.cool'));
    expect(doneAfter('coolantLeak', 'signOff.cool')).not.toContain('keyOn.lamps');
    // At key-off itself the engine may run still.
    expect(doneAfter('falseAlarm', 'shutdown.keyOff')).not.toContain('keyOn.lamps');
  });

  it('is the whole of cranking without fuel, where that was going on', () => {
    const kept = doneAfter('falseAlarm', 'noFuelCrank.holds');
    expect(kept.filter(id => id.startsWith('noFuelCrank.'))).toEqual([]);
    expect(kept).toEqual(upTo('noFuelCrank.holds').filter(id => !id.startsWith('noFuelCrank.')));
  });

  it('is by where the stop was called, not by where the session has come since', () => {
    const stop = stoppedAt('noFuelCrank.holds', null);
    const kept = doneAfterStop(
      steps,
      context({ done: upTo('noFuelCrank.holds'), step: 'job.card', stop }),
      'falseAlarm',
    );
    expect(kept.filter(id => id.startsWith('noFuelCrank.'))).toEqual([]);
  });

  it('is what was measured puts in doubt, whatever cause is named', () => {
    const stop = stoppedAt('checks.leaks', 'noOilPressure');
    const kept = doneAfter('falseAlarm', 'checks.leaks', { stop });
    expect(kept.filter(id => /^noFuelCrank\.|^fill\.oil(Filter|Level)|sensors$/.test(id))).toEqual([]);
  });

  it('is told in the order in which it was done', () => {
    expect(reopenedSteps(['job.card', 'fill.oilLevel', 'prime.firm'], ['fill.oilLevel'])).toEqual([
      'job.card',
      'prime.firm',
    ]);
  });
});

describe('a timed stretch', () => {
  it('speaks at half time from four minutes on, and ten seconds before its end from twenty on', () => {
    expect(momentsOf(19_999)).toEqual([]);
    expect(momentsOf(20_000)).toEqual([{ elapsedMs: 10_000, line: 'holdTenSeconds' }]);
    expect(momentsOf(239_999)).toEqual([{ elapsedMs: 229_999, line: 'holdTenSeconds' }]);
    expect(momentsOf(240_000)).toEqual([
      { elapsedMs: 120_000, line: 'holdHalf' },
      { elapsedMs: 230_000, line: 'holdTenSeconds' },
    ]);
  });

  const timer = { startedMs: 1000, totalMs: 240_000, announced: 0 };

  it('has so much left, never less than nothing, and as much as at its beginning while on hold', () => {
    expect(leftMs(context({ timer }), 1000)).toBe(240_000);
    expect(leftMs(context({ timer }), 240_999)).toBe(1);
    expect(leftMs(context({ timer }), 900_000)).toBe(0);
    expect(leftMs(context({ timer, heldSinceMs: 101_000 }), 900_000)).toBe(140_000);
    expect(leftMs(context(), 1000)).toBeNull();
    expect([240_999, 241_000].map(ms => timerOver(at(ms, { timer })))).toEqual([false, true]);
    expect(timerOver(at(1e9))).toBe(false);
  });

  it('is looked at when it has something to say, and at its end', () => {
    const alarm = (announced: number | null) => nextAlarmMs(context({ timer: { ...timer, announced } }));
    expect([0, 1, 2, null].map(alarm)).toEqual([121_000, 231_000, 241_000, 241_000]);
  });

  it('is looked at at the earliest of all that is timed, and at nothing while on hold', () => {
    const deadline = { sinceMs: 0, atMs: 90_000, cause: 'noOilPressure', extended: false } as const;
    expect(nextAlarmMs(context())).toBeNull();
    expect(nextAlarmMs(context({ timer, deadline }))).toBe(90_000);
    expect(nextAlarmMs(context({ timer, deadline, nextLookMs: 80_000 }))).toBe(80_000);
    const { clearValidS } = demoSix.walkRound;
    expect(nextAlarmMs(context({ clearAtMs: 5000 }))).toBe(5000 + clearValidS * 1000);
    expect(nextAlarmMs(context({ timer, deadline, heldSinceMs: 0 }))).toBeNull();
  });

  it('is moved by as long as it was held, and so is the next look', () => {
    expect(shiftTimes(context({ timer, nextLookMs: 7000 }), 2000)).toEqual({
      timer: { ...timer, startedMs: 3000 },
      nextLookMs: 9000,
    });
    expect(shiftTimes(context(), 2000)).toEqual({ timer: null, nextLookMs: null });
  });

  it('comes to its next look at that moment, and never where there is none', () => {
    expect([6999, 7000].map(ms => lookDue(at(ms, { nextLookMs: 7000 })))).toEqual([false, true]);
    expect(lookDue(at(1e9))).toBe(false);
  });
});
