import { describe, expect, it } from 'vitest';
import { OUTCOME_WITHIN_S } from '../../../machines/kinds/deadline.ts';
import { runsFromRpm } from '../../../machines/limits/running.ts';
import { confirm } from '../../../machines/step-makers.ts';
import type { CrankStep, Judgement } from '../../../machines/steps.ts';
import { type Around, OneStep, stepOf } from '../helpers/one-step.ts';
import { demoSix } from '../helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;
const TECHNICIAN = { by: 'technician' } as const;
const RUNS_RPM = runsFromRpm(demoSix);
const running = { bus: { speedRpm: RUNS_RPM } };

/** Five degrees: the starter's heat can be worked out. */
const readings = [{ quantity: 'ambientTemperature', si: 5, atMs: 0, step: 'job.ambient' }] as const;

const begun = (step: CrankStep, { context, ...around }: Around = {}) =>
  new OneStep(step, { ...around, context: { readings, ...context } });

/** The second person is clear, and it has been read back. */
const ready = (step: OneStep) => step.reply('clearToCrank').reply('yes');

const cranking = (step: CrankStep, around?: Around) => ready(begun(step, around)).reply('ready');

/** So many seconds after the starter began to turn. */
const at = (step: OneStep, seconds: number) =>
  ({ afterMs: (step.context.bursts.at(-1)?.startMs ?? 0) + seconds * 1000 - step.nowMs }) as const;

/** Without fuel, until the gauge shows oil pressure. */
const oil = stepOf('crank', 'noFuelCrank.untilPressure');
/** With fuel. */
const fire = stepOf('crank', 'firstFire.crank');

const isTurning = (step: OneStep) => step.moment.hasTag('cranking');

describe('cranking', () => {
  it('is not begun while a gate is shut that it needs, and "ready" looks again', () => {
    const level = confirm('fill.oilLevel', 'levelGood', { gate: 'oilReady' });
    const step = begun({ ...fire, needs: ['oilReady'] }, { all: [level, fire], context: { misheard: 2 } });
    expect(step.name).toBe('refused');
    expect(step.said.at(-1)).toMatchObject({
      line: 'gateClosed',
      values: { gates: { list: [{ gate: 'oilReady' }] } },
    });
    expect(step.notes).toEqual([{ kind: 'refused', data: { step: 'firstFire.crank', unmet: ['oilReady'] } }]);
    expect(step.offer).toEqual({
      by: 'technician',
      replies: ['ready'],
      awaits: 'repair',
      needs: ['oilReady'],
    });
    expect(step.fork().reply('yes', KEYS).context.misheard).toBe(2);
    expect(step.fork().unclear().reply('ready').notes).toEqual([]);
    step.reply('ready');
    expect(step.name).toBe('refused');
    expect(step.context.misheard).toBe(0);
    expect(step.notes).toMatchObject([{ kind: 'refused' }]);
    const open = begun(
      { ...fire, needs: ['oilReady'] },
      { all: [level, fire], context: { done: ['fill.oilLevel'] } },
    );
    expect(open.name).toBe('askingClear');
  });

  it('needs a clear of the second person, in their own name, and read back', () => {
    const step = begun(fire);
    expect(step.offer).toMatchObject({ by: 'second', awaits: 'clear', anybodys: ['fired'] });
    expect(step.offer.replies).toEqual(['clearToCrank', 'notYet', 'fired']);
    expect(step.isCritical).toBe(false);
    for (const via of ['voice', 'keys'] as const)
      expect(step.fork().reply('clearToCrank', { ...TECHNICIAN, via }).name).toBe('askingClear');
    const read = step.fork().reply('clearToCrank');
    expect(read.name).toBe('clearReadBack');
    expect(read.isCritical).toBe(false);
    expect(read.offer).toMatchObject({ by: 'second', awaits: 'clear', replies: ['yes', 'no', 'fired'] });
    expect(read.fork().reply('yes', TECHNICIAN).name).toBe('clearReadBack');
    expect(read.fork().reply('no').name).toBe('askingClear');
    read.unclear(2).reply('yes');
    expect(read.name).toBe('ready');
    expect(read.context).toMatchObject({ clearAtMs: read.nowMs, misheard: 0, pending: null });
  });

  it('needs a clear that has not grown old: fifteen seconds, and not one more', () => {
    const step = ready(begun(fire));
    expect(step.fork().reply('ready', { afterMs: 14_999 }).name).toBe('cranking');
    for (const old of [step.fork().reply('ready', { afterMs: 15_000 }), step.fork().clock(15)]) {
      expect(old.name).toBe('askingClear');
      expect(old.lines[0]).toBe('clearTooOld');
      expect(old.context.clearAtMs).toBeNull();
    }
    expect(step.fork().clock(14.999).name).toBe('ready');
  });

  it('waits for as long as the engine maker asks since the last burst, whoever made it', () => {
    const bursts = [{ step: 'noFuelCrank.holds', startMs: -25_000, endMs: -20_000 }] as const;
    const step = begun(fire, { context: { bursts } });
    expect(step.name).toBe('resting');
    expect(step.said.at(-1)).toMatchObject({ line: 'rest', values: { time: { unit: 's', si: 100 } } });
    expect(step.offer).toMatchObject({
      replies: ['fired'],
      anybodys: ['fired'],
      by: 'technician',
      awaits: 'time',
    });
    expect(step.fork().clock(99.999).name).toBe('resting');
    const rested = step.fork().clock(100);
    expect(rested.name).toBe('askingClear');
    expect(rested.context.timer).toBeNull();
    expect(rested.lines).toContain('heatAgain');
    const unfuelled = begun(oil, { context: { bursts } }).clock(100);
    expect(unfuelled.name).toBe('askingClear');
    expect(unfuelled.context.timer).toBeNull();
    expect(unfuelled.lines).not.toContain('heatAgain');
  });

  it('does not begin where the heat of the starter cannot be worked out', () => {
    const step = ready(new OneStep(fire)).reply('ready');
    expect(step.name).toBe('askingClear');
    expect(step.lines[0]).toBe('burstUnknown');
    expect(step.context).toMatchObject({ clearAtMs: null, bursts: [] });
  });
});

describe('a burst', () => {
  it('is critical, and warms the starter until it ends, however it ends', () => {
    const step = cranking(oil);
    expect(isTurning(step)).toBe(true);
    expect(step.isCritical).toBe(true);
    expect(step.offer).toMatchObject({ by: 'technician', awaits: 'starter', anybodys: ['fired'] });
    expect(step.offer.replies).toEqual(['oilPressureShows', 'nothingYet', 'fired']);
    const startMs = step.nowMs;
    const over = step.fork().clock(20);
    expect(over.name).toBe('outcome');
    expect(over.context.timer).toBeNull();
    expect(over.context.bursts).toEqual([{ step: oil.id, startMs, endMs: startMs + 20_000 }]);
    expect(step.fork().clock(19.999).name).toBe('cranking');
    const letGo = step.fork().reply('nothingYet', { afterMs: 3000 });
    expect(letGo.name).toBe('outcome');
    expect(letGo.context.bursts).toEqual([{ step: oil.id, startMs, endMs: startMs + 3000 }]);
  });

  it('whose outcome nobody says is a stop after ten seconds', () => {
    const step = cranking(fire).clock(20);
    expect(step.lines).toEqual(['release', 'burstOver']);
    expect(step.said[1]?.values).toEqual({ reply: { reply: 'fired' } });
    expect(step.isCritical).toBe(true);
    expect(isTurning(step)).toBe(true);
    expect(step.offer.awaits).toBe('outcome');
    expect(step.fork().clock(OUTCOME_WITHIN_S - 0.001).name).toBe('outcome');
    expect(step.fork().clock(OUTCOME_WITHIN_S).context.stop?.cause).toBe('other');
    const said = step.fork().reply('nothingYet');
    expect(said.name).toBe('resting');
    expect(said.context.deadline).toBeNull();
  });

  it('in which it fires passes at once, with the starter let go, and runs from then', () => {
    const step = cranking(fire).reply('fired');
    expect(step.name).toBe('next');
    expect(step.said).toMatchObject([{ line: 'release', priority: 'hazard', once: true }]);
    expect(step.context.runsSinceMs).toBe(step.nowMs);
  });

  it('in which the gauge shows pressure is ended, and that is read back', () => {
    const step = cranking({ ...oil, earliest: () => met(true) }).reply('oilPressureShows');
    expect(step.name).toBe('released');
    expect(step.lines).toEqual(['release', 'readBackReply']);
    expect(step.isCritical).toBe(false);
    expect(step.offer).toMatchObject({ by: 'technician', anybodys: ['fired'] });
    expect(step.offer.replies).toEqual(['yes', 'no', 'fired']);
    expect(step.fork().reply('no').name).toBe('outcome');
    expect(step.fork().reply('yes').name).toBe('next');
    expect(step.context.runsSinceMs).toBeNull();
  });

  it('without fuel in which it fires stops, whoever says so, in each of its states', () => {
    const early = cranking({ ...oil, earliest: () => met(false) }).reply('oilPressureShows');
    expect(early.name).toBe('early');
    const released = cranking({ ...oil, earliest: () => met(true) }).reply('oilPressureShows');
    for (const step of [
      begun(oil),
      begun(oil).reply('clearToCrank'),
      ready(begun(oil)),
      cranking(oil),
      cranking(oil).clock(20),
      cranking(oil).reply('nothingYet').reply('nothingYet'),
      early,
      released,
    ])
      for (const by of ['technician', 'second'] as const) {
        expect(step.offer.anybodys).toEqual(['fired']);
        const stopped = step.fork().reply('fired', { by });
        expect(stopped.name).toBe('stopped');
        expect(stopped.context.stop?.cause).toBe('firedUnfuelled');
      }
  });

  it('comes after others until its step gives up: in seconds, or in bursts', () => {
    const shorter = { ...fire, giveUp: { seconds: () => 40, cause: 'noStart' } } as const;
    const rested = (step: OneStep) => {
      while (step.name === 'resting') step.clock(60);
      return step;
    };
    const once = cranking(shorter).clock(20).reply('nothingYet');
    expect(once.name).toBe('resting');
    const twice = ready(rested(once)).reply('ready').clock(20);
    expect(twice.reply('nothingYet').context.stop?.cause).toBe('noStart');
    const few = { ...demoSix, starter: { ...demoSix.starter, maxBursts: 1 } };
    expect(cranking(fire, { profile: few }).reply('nothingYet').reply('nothingYet').name).toBe('stopped');
  });
});

const met = (so: boolean): Judgement => ({
  ok: true,
  value: {
    met: so,
    value: 1,
    unit: 's',
    min: 3,
    margin: so ? 1 : -1,
    rule: { id: 'not-before', source: 'common practice, no published source', validity: 'any' },
  },
});

describe('what comes too early', () => {
  const turned: number[] = [];
  const step = cranking({
    ...oil,
    earliest: (_, seconds) => {
      turned.push(seconds);
      return met(seconds >= 6);
    },
  });

  it('is looked at by the second person too, with the starter let go', () => {
    const early = step.fork().reply('oilPressureShows', at(step, 5.999));
    expect(early.name).toBe('early');
    expect(early.said).toMatchObject([
      { line: 'release', priority: 'hazard' },
      {
        line: 'early',
        values: {
          reply: { reply: 'oilPressureShows' },
          time: { unit: 's', si: 5.999 },
          limits: { limits: { unit: 's', min: 3 } },
        },
      },
    ]);
    expect(early.notes).toMatchObject([
      {
        kind: 'doubted',
        data: { step: oil.id, reply: 'oilPressureShows', value: 5.999, unit: 's', met: false },
      },
    ]);
    expect(early.offer).toMatchObject({ by: 'second' });
    expect(early.isCritical).toBe(false);
    expect(early.fork().reply('oilPressureShows', TECHNICIAN).name).toBe('early');
    const vouched = early.fork().reply('oilPressureShows');
    expect(vouched.name).toBe('released');
    expect(vouched.notes).toEqual([
      { kind: 'vouched', data: { step: oil.id, reply: 'oilPressureShows', by: 'second' } },
    ]);
    expect(early.fork().reply('nothingYet').name).toBe('resting');
    expect(step.fork().reply('oilPressureShows', at(step, 6)).name).toBe('released');
  });

  it('is as early when it is said after the burst', () => {
    const over = step.fork().reply('nothingYet', at(step, 5));
    const early = over.fork().reply('oilPressureShows', { afterMs: 3000 });
    expect(early.name).toBe('early');
    expect(early.notes).toMatchObject([{ kind: 'doubted', data: { value: 5 } }]);
  });

  it('is not known to be, where that cannot be worked out: then it is looked at as well', () => {
    const unknown: Judgement = { ok: false, issue: { code: 'tooLittleData', input: 'oilQuantity' } };
    expect(cranking({ ...oil, earliest: () => unknown }).reply('oilPressureShows').name).toBe('early');
  });
});

describe('what has to hold while the starter turns on', () => {
  const held = (heldS: number): CrankStep => ({
    ...stepOf('crank', 'noFuelCrank.holds'),
    burst: () => 20,
    heldS: () => heldS,
    giveUp: { seconds: () => 60, cause: 'noOilPressure' },
  });
  const shows = (step: OneStep, seconds: number) => step.fork().reply('oilPressureShows', at(step, seconds));

  it('is held for its whole time from when it was said, and then read back', () => {
    const step = cranking(held(5));
    const startMs = step.nowMs;
    const holding = shows(step, 2);
    expect(holding.name).toBe('holding');
    expect(holding.isCritical).toBe(true);
    expect(isTurning(holding)).toBe(true);
    expect(holding.said).toMatchObject([
      { line: 'keepCranking', values: { time: { unit: 's', si: 5 } }, priority: 'prompt' },
    ]);
    expect(holding.offer).toMatchObject({ by: 'technician', awaits: 'starter', anybodys: ['fired'] });
    expect(holding.offer.replies).toEqual(['nothingYet', 'fired']);
    expect(holding.alarmS).toBe(startMs / 1000 + 7);
    expect(holding.fork().clock(4.999).name).toBe('holding');
    const over = holding.fork().clock(5);
    expect(over.name).toBe('released');
    expect(over.context.bursts).toEqual([{ step: 'noFuelCrank.holds', startMs, endMs: startMs + 7000 }]);
    expect(over.said).toMatchObject([
      { line: 'release' },
      { line: 'readBackReply', values: { reply: { reply: 'oilPressureShows' } } },
    ]);
    expect(over.reply('yes').name).toBe('next');
    expect(holding.fork().reply('fired', { by: 'second' }).context.stop?.cause).toBe('firedUnfuelled');
  });

  it('that falls meanwhile has not held', () => {
    const step = cranking(held(5));
    const fell = shows(step, 2).reply('nothingYet');
    expect(fell.name).toBe('outcome');
    const again = fell.reply('nothingYet');
    expect(again.name).toBe('resting');
  });

  it('is held as long as the longest burst of the starter lets it, to the last second', () => {
    const step = cranking(held(5));
    expect(shows(step, 15).name).toBe('holding');
    // It has turned long enough by then: it counts as it stands.
    expect(shows(step, 15.001).name).toBe('released');
  });

  it('counts for nothing where neither is so: what is left of the burst goes on', () => {
    const step = cranking(held(12));
    expect(shows(step, 8).name).toBe('holding');
    for (const seconds of [8.001, 11.999]) {
      const on = shows(step, seconds);
      expect(on.name).toBe('cranking');
      expect(on.said).toEqual([]);
      expect(on.context.bursts.at(-1)?.endMs).toBe(on.context.bursts.at(-1)?.startMs);
    }
    expect(shows(step, 12).name).toBe('released');
  });

  it('said only after a burst, is not enough, however long that was: it is cranked for once more', () => {
    const step = cranking(held(5));
    const said = (seconds: number) =>
      step.fork().reply('nothingYet', at(step, seconds)).reply('oilPressureShows');
    const short = said(4.999);
    expect(short.name).toBe('resting');
    expect(short.said).toMatchObject([
      { line: 'notHeld', values: { time: { unit: 's', si: 5 } } },
      { line: 'rest' },
    ]);
    for (const seconds of [5, 19.999]) expect(said(seconds).name).toBe('resting');
    const whole = step.fork().clock(20).reply('oilPressureShows', { afterMs: 4000 });
    expect(whole.name).toBe('resting');
    expect(whole.lines).toContain('notHeld');
    const tired = cranking({ ...held(5), giveUp: { seconds: () => 4, cause: 'noOilPressure' } });
    const gone = tired.reply('nothingYet', at(tired, 4)).reply('oilPressureShows');
    expect(gone.context.stop?.cause).toBe('noOilPressure');
    expect(gone.lines).toContain('notHeld');
  });

  it('said while it cranked, in a burst that its heat let be no longer, counts at its end where it is said again', () => {
    const step = cranking(held(12));
    const ended = shows(step, 8.001).clock(11.999);
    expect(ended.name).toBe('outcome');
    expect(ended.fork().reply('oilPressureShows').name).toBe('released');
    // It fell meanwhile: what was said before tells nothing any more.
    const fell = shows(step, 8.001).reply('nothingYet', at(step, 13));
    expect(fell.name).toBe('outcome');
    expect(fell.reply('oilPressureShows').name).toBe('resting');
    // The burst was shorter than the time for which it has to hold.
    const short = cranking({ ...held(12), burst: () => 11 });
    expect(shows(short, 9).clock(2).reply('oilPressureShows').name).toBe('resting');
  });

  it('denied at its read-back was not said', () => {
    const step = shows(cranking(held(5)), 2)
      .clock(5)
      .reply('no');
    expect(step.name).toBe('outcome');
    expect(step.reply('oilPressureShows').name).toBe('resting');
  });

  it('is no matter where nothing has to hold', () => {
    const { heldS, earliest, ...plain } = stepOf('crank', 'noFuelCrank.holds');
    expect(heldS).toBeDefined();
    expect(earliest).toBeUndefined();
    const step = cranking(plain);
    expect(shows(step, 0.5).name).toBe('released');
    expect(step.reply('nothingYet', { afterMs: 500 }).reply('oilPressureShows').name).toBe('released');
  });
});

describe('an engine that runs though nobody has said so', () => {
  const BETWEEN = ['askingClear', 'clearReadBack', 'ready', 'resting'] as const;
  /** After a burst of the first fire that brought nothing, 200 s ago; in a rest, a second ago. */
  const between = (state: (typeof BETWEEN)[number], sinceS = 200) => {
    const burst = { step: 'firstFire.crank', startMs: -20_000, endMs: 0 } as const;
    const step = begun(fire, { context: { bursts: [burst] }, beginsS: state === 'resting' ? sinceS : 200 });
    if (state === 'clearReadBack') step.reply('clearToCrank');
    if (state === 'ready') ready(step);
    expect(step.name).toBe(state);
    return step;
  };

  it.each(BETWEEN)('in %s is said by anybody, and counts from the end of its burst', state => {
    const step = between(state, 1);
    expect(step.offer.replies).toContain('fired');
    expect(step.offer.anybodys).toEqual(['fired']);
    const said = step.fork().reply('fired', { by: 'second' });
    if (state !== 'resting') expect(said.context.stop).toMatchObject({ cause: null, lateAfterS: 8 });
    else {
      expect(said.name).toBe('next');
      expect(said.context.runsSinceMs).toBe(0);
    }
  });

  it('before any burst of this session counts from its beginning', () => {
    expect(begun(fire).reply('fired').context.runsSinceMs).toBe(0);
    expect(begun(fire).reply('fired', { afterMs: 8000 }).context.stop).toMatchObject({ lateAfterS: 8 });
  });

  it('for longer than its oil pressure has time stops, to the second', () => {
    const step = between('resting', 1);
    expect(step.fork().reply('fired', { afterMs: 6999 }).name).toBe('next');
    const late = step.fork().reply('fired', { afterMs: 7000 });
    expect(late.name).toBe('stopped');
    expect(late.context.stop).toMatchObject({
      cause: null,
      lateAfterS: demoSix.oilPressure.firstFireWithinS,
    });
  });

  it.each([
    ['askingClear', 'clearToCrank', 'second'],
    ['clearReadBack', 'clearToCrank', 'second'],
    ['ready', 'ready', 'technician'],
    ['resting', 'nothingYet', 'technician'],
  ] as const)('in %s is not cranked on "%s": the bus shows that it runs', (state, reply, by) => {
    const step = between(state, 1);
    const denied = step.fork().reply(reply, { by, ...running });
    expect(denied.name).toBe('runs');
    expect(denied.said).toMatchObject([
      { line: 'itRuns', values: { speed: { unit: 'rpm', si: RUNS_RPM } }, priority: 'hazard' },
      { line: 'didItFire', values: { reply: { reply: 'fired' }, off: { line: 'keyOff', values: {} } } },
    ]);
    expect(step.fork().reply(reply, { by, bus: { speedRpm: RUNS_RPM - 1 } }).name).not.toBe('runs');
    expect(step.fork().reply(reply, { by, ear: { speedRpm: RUNS_RPM + 0.4 } }).said[0]?.values).toEqual({
      speed: { unit: 'rpm', si: RUNS_RPM },
    });
  });

  it('is asked for then, for no longer than what came of a burst is', () => {
    const step = between('resting', 1).reply('nothingYet', running);
    expect(step.isCritical).toBe(true);
    expect(isTurning(step)).toBe(true);
    expect(step.offer).toMatchObject({ by: 'technician', replies: ['fired', 'notYet'] });
    expect(step.fork().clock(OUTCOME_WITHIN_S - 0.001).name).toBe('runs');
    expect(step.fork().clock(OUTCOME_WITHIN_S).context.stop?.cause).toBe('other');
    const fired = step.fork().reply('fired');
    expect(fired.name).toBe('next');
    expect(fired.context).toMatchObject({ deadline: null, runsSinceMs: 0 });
    expect(step.fork().reply('fired', { afterMs: 6000 }).context.stop).toMatchObject({
      cause: null,
      lateAfterS: 8,
    });
  });

  it('is called out where its burst is asked about, and nothing else counts', () => {
    const outcome = cranking(fire).clock(20);
    const step = outcome.fork().reply('nothingYet', running);
    expect(step.name).toBe('outcome');
    expect(step.said).toMatchObject([{ line: 'itRuns', priority: 'hazard' }]);
    expect(step.reply('fired', running).name).toBe('next');
  });

  it('without fuel stops at once, in each of these', () => {
    for (const [step, reply] of [
      [begun(oil), 'clearToCrank'],
      [ready(begun(oil)), 'ready'],
      [cranking(oil).clock(20), 'nothingYet'],
    ] as const) {
      const stopped = step.reply(reply, running);
      expect(stopped.context.stop?.cause).toBe('firedUnfuelled');
      expect(stopped.lines[0]).toBe('itRuns');
    }
  });

  it('is not to be believed of by a voice that was misunderstood three times', () => {
    const step = between('resting', 1);
    for (const _ of [1, 2, 3]) step.unclear();
    expect(step.context.misheard).toBe(0);
    const asked = between('ready').unclear(3);
    expect(asked.fork().reply('fired').name).toBe('ready');
    expect(asked.fork().reply('fired', KEYS).name).toBe('stopped');
  });
});
