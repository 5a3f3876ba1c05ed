import { describe, expect, it } from 'vitest';
import type { Context, Fault } from '../../machines/context.ts';
import { blockingFaults, judgeSessionFault, unknownFaults, watchedFaults } from '../../machines/faults.ts';
import { judgementData, judgementLine, limitsOf, meets, sayVerdict } from '../../machines/judging.ts';
import { controlsOf, isOver, offerOf, outcomeOf, stateName } from '../../machines/moment.ts';
import type { Judge, Judgement } from '../../machines/steps.ts';
import type { Look } from '../../machines/toolkit.ts';
import type { Verdict } from '../../src/engineering/result.ts';
import { Driver } from './helpers/driver.ts';
import { demoFour, demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';

const RULE = { id: 'by-hand', source: 'this test', validity: 'here' };
const verdict = (more: Partial<Verdict>): Verdict => ({
  value: 200,
  unit: 'kPa',
  met: true,
  margin: 50,
  rule: RULE,
  ...more,
});
const inside: Judgement = { ok: true, value: verdict({ min: 100, max: 300 }) };
const near: Judgement = { ok: true, value: verdict({ min: 195, max: 300, margin: 5 }) };
const outside: Judgement = { ok: true, value: verdict({ min: 250, met: false, margin: -50 }) };
const told: Judgement = {
  ok: false,
  line: 'hotAfterRun',
  values: { peak: 7 },
  verdict: verdict({ max: 150, value: 210 }),
};
const unjudged: Judgement = { ok: false, issue: { code: 'missing', input: 'coldestNight' } };

describe('a judgement on the record', () => {
  it('is whether it is met, by how much, against which limits, and by which rule from where', () => {
    expect(judgementData(inside)).toEqual({
      met: true,
      min: 100,
      max: 300,
      margin: 50,
      rule: 'by-hand',
      source: 'this test',
    });
    expect(judgementData(outside)).toEqual({
      met: false,
      min: 250,
      margin: -50,
      rule: 'by-hand',
      source: 'this test',
    });
  });

  it('says what was held against the limits where that is not what was read', () => {
    expect(judgementData(inside, { si: 200, unit: 'kPa' })).not.toHaveProperty('of');
    expect(judgementData(inside, { si: 201, unit: 'kPa' })).toMatchObject({ of: 200, ofUnit: 'kPa' });
    expect(judgementData(inside, { si: 200, unit: 'bar' })).toMatchObject({ of: 200, ofUnit: 'kPa' });
    expect(judgementData(told, { si: 1, unit: 'kPa' })).toMatchObject({ of: 210 });
  });

  it('is never met where there is none, or where it could not be judged, and says why', () => {
    expect(judgementData(null)).toEqual({ met: false });
    expect(judgementData(unjudged)).toEqual({ met: false, why: expect.stringContaining('coldestNight') });
    expect(judgementData(told)).toMatchObject({ met: false, max: 150, why: 'hotAfterRun' });
  });
});

describe('a judgement aloud', () => {
  const line = (judgement: Judgement) => judgementLine(judgement, 'oilPressure', 200);
  const named = { name: { quantityName: 'oilPressure' }, spoken: { brief: 'oilPressure', si: 200 } };

  it('is inside, just inside or outside, with the value and its limits', () => {
    expect(line(inside)).toMatchObject({
      line: 'inside',
      values: { ...named, limits: { limits: { min: 100 } } },
    });
    expect(line(near)).toMatchObject({ line: 'justInside', values: named });
    expect(line(outside)).toMatchObject({ line: 'outside', values: named });
  });

  it('is a sentence of its own where the rule has one, or the reason why nothing can be said', () => {
    expect(line(told)).toEqual({ line: 'hotAfterRun', values: { ...named, peak: 7 } });
    expect(line(unjudged)).toEqual({
      line: 'outsideUnjudged',
      values: { ...named, why: { issue: { code: 'missing', input: 'coldestNight' } } },
    });
  });

  it('names limits in the unit of what was read where they are in it, and none where there are none', () => {
    expect(limitsOf(inside)).toEqual({ limits: { unit: 'kPa', min: 100, max: 300 } });
    expect(limitsOf(inside, 'oilPressure')).toEqual({
      limits: { unit: 'kPa', of: 'oilPressure', min: 100, max: 300 },
    });
    expect(limitsOf(inside, 'coolantTemperature')).toEqual({ limits: { unit: 'kPa', min: 100, max: 300 } });
    expect(limitsOf(outside)).toEqual({ limits: { unit: 'kPa', min: 250 } });
    expect(limitsOf(told)).toEqual({ limits: { unit: 'kPa', max: 150 } });
    expect(limitsOf(null)).toBe('');
    expect(limitsOf(unjudged)).toBe('');
  });

  it('is of the value that is put aside; without one nothing is met, and it is not understood', () => {
    const at = (pending: Context['pending']): Look => ({
      context: knowing(demoSix, {}, { pending }),
      event: { type: 'clock', by: 'technician', via: 'tool', atMs: 0 },
    });
    const judge: Judge = (_, si) => ({ ok: true, value: verdict({ value: si, min: 100, met: si >= 100 }) });
    const value = (si: number) => at({ kind: 'value', quantity: 'oilPressure', si });
    expect([99, 100].map(si => meets(judge)(value(si)))).toEqual([false, true]);
    expect(meets(() => unjudged)(value(200))).toBe(false);
    const none = [at(null), at({ kind: 'reply', id: 'yes', atMs: 0 })];
    expect(none.map(look => meets(judge)(look))).toEqual([false, false]);
    expect(none.map(look => sayVerdict(judge)(look).line)).toEqual(['unclear', 'unclear']);
    expect(sayVerdict(judge)(value(99)).line).toBe('outside');
  });
});

describe('a fault code by the profile', () => {
  const fault = (spn: number, fmi: number, more: Partial<Fault> = {}): Fault => ({
    spn,
    fmi,
    seenMs: 1000,
    ...more,
  });
  const all = [fault(157, 18), fault(100, 1), fault(97, 15), fault(5000, 7), fault(157.5, 3)];
  /** An engine that fired in the first second of the session. */
  const context = knowing(
    demoSix,
    {},
    {
      faults: all,
      done: ['firstFire.crank'],
      bursts: [{ step: 'firstFire.crank', startMs: 0, endMs: 1000 }],
    },
  );
  const decided = (spn: number, fmi: number, atMs: number, more: Partial<Fault> = {}) =>
    judgeSessionFault(context, fault(spn, fmi, more), atMs).decision?.decision;

  it('is watched for its time from when the engine fired, and then blocks', () => {
    expect([1000, 60_999, 61_000, 61_001].map(atMs => decided(157, 18, atMs))).toEqual([
      'watch',
      'watch',
      'blocks',
      'blocks',
    ]);
    expect(judgeSessionFault(context, fault(157, 18), 500).decision).toMatchObject({ leftS: 60 });
    expect(watchedFaults(context)).toEqual([{ fault: all[0], watchS: 60 }]);
  });

  it('goes on or blocks as the profile has it, and one that nobody knows blocks until it is accepted', () => {
    expect(decided(97, 15, 5000)).toBe('mayGoOn');
    expect(decided(100, 1, 5000)).toBe('blocks');
    expect(decided(100, 1, 5000, { accepted: 'reasonSupervisor' })).toBe('blocks');
    expect(decided(5000, 7, 5000)).toBe('blocks');
    expect(decided(5000, 7, 5000, { accepted: 'reasonSupervisor' })).toBe('mayGoOn');
    // The same parameter failing in another way is another code.
    expect(decided(97, 3, 5000)).toBe('blocks');
  });

  it('that no control unit can send has neither a code nor a decision, and blocks', () => {
    expect(judgeSessionFault(context, fault(157.5, 3), 5000)).toMatchObject({ code: null, decision: null });
    expect(blockingFaults(context, 5000).map(({ fault: { spn } }) => spn)).toEqual([100, 5000, 157.5]);
    expect(blockingFaults(context, 70_000).map(({ fault: { spn } }) => spn)).toEqual([157, 100, 5000, 157.5]);
    expect(unknownFaults(context, 5000).map(({ fault: { spn } }) => spn)).toEqual([5000]);
  });

  it('is told with the reason that the profile gives for its judgement, which an unknown one lacks', () => {
    expect(judgeSessionFault(context, fault(100, 1), 0).because).toBe('oil pressure below its floor');
    expect(judgeSessionFault(context, fault(100, 2), 0).because).toBe('');
    expect(judgeSessionFault(context, fault(99, 1), 0).because).toBe('');
  });
});

describe('the words that are always understood', () => {
  const first = new Driver(demoSix);
  const air = first.fork([]).goodUntil('job.ambient.asking');
  const bleed = first.fork([]).goodUntil('fill.coolantBleed.counting');
  const cranking = first.fork([]).goodUntil('firstFire.crank.cranking');

  it('do something: hold, back and help everywhere, skipping where the profile allows it, time where some is left', () => {
    expect(controlsOf(first.moment)).toEqual(['hold', 'goBack', 'sayAgain', 'status', 'help']);
    expect(controlsOf(bleed.moment)).toEqual(['hold', 'goBack', 'timeLeft', 'sayAgain', 'status', 'help']);
    const strokes = first.fork([]).goodUntil('prime.strokes.asking');
    expect(controlsOf(strokes.moment)).toContain('skip');
    expect(controlsOf(air.moment)).not.toContain('skip');
  });

  it('are only help, status and time where the limits are tight or everything stops, and "continue" on hold', () => {
    expect(controlsOf(cranking.moment)).toEqual(['timeLeft', 'sayAgain', 'status', 'help']);
    expect(controlsOf(air.fork([]).stop().moment)).toEqual(['sayAgain', 'status', 'help']);
    expect(controlsOf(air.fork([]).send({ type: 'hold' }).moment)).toEqual([
      'continue',
      'sayAgain',
      'status',
      'help',
    ]);
    expect(controlsOf(bleed.fork([]).send({ type: 'hold' }).moment)).toEqual([
      'continue',
      'timeLeft',
      'sayAgain',
      'status',
      'help',
    ]);
  });

  it('take a number back while the engine does what it did then, and not where "wrong" denies a read-back', () => {
    const echoed = air.fork([]).value('ambientTemperature', 12);
    expect(controlsOf(echoed.moment)).toContain('takeBack');
    expect(controlsOf(air.moment)).not.toContain('takeBack');
    expect(controlsOf(echoed.goodUntil('job.figures.asking').moment)).not.toContain('takeBack');
    const KEYS = { via: 'keys' } as const;
    const charging = first.fork([]).goodUntil('checks.charging.asking').value('chargingVoltage', 14.2, KEYS);
    expect(charging.moment.hasTag('running')).toBe(true);
    expect(controlsOf(charging.moment)).toContain('takeBack');
    charging.goodUntil('shutdown.firstSoak.counting');
    expect(controlsOf(charging.moment)).not.toContain('takeBack');
  });

  it('"help" names what may be said here, and the words that stop everything, for the eye', () => {
    const words = { emergencyWords: 'shown' };
    expect(air.fork([]).send({ type: 'help' }).last.said).toMatchObject([
      {
        line: 'help',
        priority: 'notice',
        values: { choices: { list: [{ reply: 'notYet' }, { quantityName: 'ambientTemperature' }] }, words },
      },
    ]);
    expect(first.fork([]).send({ type: 'help' }).last.said[0]?.values).toEqual({
      choices: { list: [{ reply: 'cardRight' }, { reply: 'notYet' }] },
      words,
    });
    expect(bleed.fork([]).send({ type: 'help' }).last.said).toMatchObject([
      { line: 'helpAlways', values: { words } },
    ]);
  });

  it('"status" names the phase, the step and the gates that are still shut', () => {
    const said = air.fork([]).send({ type: 'status' }).last.said[0];
    expect(said).toMatchObject({
      line: 'status',
      values: { phase: { phase: 'job' }, title: { step: 'job.ambient' }, open: { line: 'statusOpen' } },
    });
    const open = (driver: Driver) =>
      JSON.stringify(driver.fork([]).send({ type: 'status' }).last.said[0]?.values.open);
    expect(open(air)).toContain('"coolantReady"');
    expect(open(air)).not.toContain('"peopleSafe"');
    expect(open(cranking)).not.toContain('"coolantReady"');
  });

  it('"say again" says the question again, and "time left" how much there is', () => {
    expect(air.fork([]).send({ type: 'sayAgain' }).last.said).toEqual([air.context.lastSaid]);
    expect(air.fork([]).send({ type: 'timeLeft' }).last.said).toMatchObject([
      { line: 'noTimer', values: {} },
    ]);
    const totalS = (bleed.context.timer?.totalMs ?? 0) / 1000;
    expect(bleed.fork([]).send({ type: 'timeLeft' }).last.said).toMatchObject([
      { line: 'timeLeft', values: { time: { unit: 's', si: totalS - 1 } } },
    ]);
  });
});

describe('a moment', () => {
  it('is named from its phase to its innermost state, and a stop and a hold by themselves', () => {
    const driver = new Driver(demoFour);
    expect(stateName(driver.moment)).toBe('job.card.asking');
    expect(stateName(driver.fork([]).stop().moment)).toBe('stopped.makingSafe');
    expect(stateName(driver.fork([]).send({ type: 'hold' }).moment)).toBe('held');
  });

  it('offers what its state does, and nothing on hold', () => {
    const driver = new Driver(demoFour);
    expect(offerOf(driver.moment).replies).toContain('cardRight');
    expect(offerOf(driver.send({ type: 'hold' }).moment)).toMatchObject({ replies: [], by: 'technician' });
  });

  it('is over when it was signed off or ended, and says which', () => {
    const signed = new Driver(demoFour).goodToTheEnd();
    expect([isOver(signed.moment), outcomeOf(signed.moment)]).toEqual([true, 'signedOff']);
    const ended = new Driver(demoFour).stop().reply('allOff').reply('yes').reply('endSession').reply('yes');
    expect([isOver(ended.moment), outcomeOf(ended.moment)]).toEqual([true, 'ended']);
    const driver = new Driver(demoFour);
    expect([isOver(driver.moment), outcomeOf(driver.moment)]).toEqual([false, 'ended']);
  });

  it('says when a new phase begins, and only then', () => {
    const phase = (state: string) =>
      new Driver(demoFour)
        .goodUntil(state)
        .history.flatMap(({ said }) =>
          said.flatMap(({ line, values }) => (line === 'phaseStarts' ? [values.phase] : [])),
        );
    expect(phase('fill.coolantBleed.counting')).toEqual([{ phase: 'fill' }]);
  });
});
