import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../../machines/first-start.ts';
import { confirm } from '../../../machines/step-makers.ts';
import type { ConfirmStep, Judgement } from '../../../machines/steps.ts';
import type { Quantity } from '../../../machines/vocabulary.ts';
import { english } from '../../../prompts/en/index.ts';
import type { ReplyId, StepId } from '../../../prompts/types.ts';
import { isReplyId } from '../../../src/session/grammar.ts';
import { OneStep, stepOf } from '../helpers/one-step.ts';
import { demoSix } from '../helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;

/** A step that asks whether the coolant is full, with something more hanging on it. */
const filled = (more: Partial<ConfirmStep> = {}) => confirm('fill.coolantFilled', 'coolantFull', more);

const ruled = (met: boolean): Judgement => ({
  ok: true,
  value: {
    met,
    value: 1,
    unit: 's',
    max: 5,
    margin: met ? 4 : -1,
    rule: { id: 'in-time', source: 'common practice, no published source', validity: 'any' },
  },
});

/** Five seconds for an answer, or the engine is off for want of oil pressure. */
const within = {
  seconds: () => 5,
  cause: 'noOilPressure',
  judge: () => ruled(true),
} as const;

describe('a plain "yes"', () => {
  it('stands for the reply, by voice too, where nothing hangs on it', () => {
    expect(new OneStep(filled()).offer.affirmed).toEqual({ reply: 'coolantFull', always: true });
  });

  it.each([
    ['a gate', { gate: 'coolantReady' }],
    ['a stop', { trouble: { reply: 'leak', cause: 'coolantLeak' } }],
    ['seconds', { within }],
    ['that the engine stands', { standing: true }],
    ['a calculation', { possible: () => true }],
    ['the second person', { by: 'second' }],
  ] satisfies [string, Partial<ConfirmStep>][])('by hand only, where %s hangs on it', (_, more) => {
    expect(new OneStep(filled(more)).offer.affirmed).toEqual({ reply: 'coolantFull', always: false });
  });

  it('stands for nothing where somebody signs, or where the question names both answers', () => {
    expect(new OneStep(filled({ gate: 'signature' })).offer).not.toHaveProperty('affirmed');
    const named = { reply: 'leak', cause: 'coolantLeak', named: true } as const;
    expect(new OneStep(filled({ trouble: named })).offer).not.toHaveProperty('affirmed');
  });
});

describe('what somebody says is so', () => {
  it('passes at once where nothing hangs on it, by voice and by keys', () => {
    for (const via of ['voice', 'keys', 'touch'] as const) {
      const step = new OneStep(filled()).reply('coolantFull', { via });
      expect(step.name).toBe('next');
      expect(step.context.done).toEqual(['fill.coolantFilled']);
      expect(step.notes).toEqual([
        { kind: 'passed', data: { step: 'fill.coolantFilled', by: 'technician', misheard: 0 } },
      ]);
    }
  });

  it('is read back by voice before it opens a gate; denied, it is asked for again', () => {
    const step = new OneStep(filled({ gate: 'coolantReady' })).reply('coolantFull');
    expect(step.name).toBe('readingBack');
    expect(step.context.pending).toEqual({ kind: 'reply', id: 'coolantFull', atMs: 1000 });
    expect(step.offer).toEqual({
      by: 'technician',
      replies: ['yes', 'no'],
      affirmed: { reply: 'yes', always: false },
    });
    expect(step.fork().reply('no').name).toBe('asking');
    step.reply('yes');
    expect(step.name).toBe('next');
    expect(step.notes).toMatchObject([{ kind: 'passed', data: { gate: 'coolantReady' } }]);
  });

  it('opens a gate at once by keys, except where an engine may start by it', () => {
    expect(new OneStep(filled({ gate: 'coolantReady' })).reply('coolantFull', KEYS).name).toBe('next');
    for (const gate of ['fuellingDisabled', 'fuellingRestored'] as const)
      expect(new OneStep(filled({ gate })).reply('coolantFull', KEYS).name).toBe('readingBack');
  });

  it('does not pass where the calculation behind it has no answer', () => {
    const step = new OneStep(filled({ gate: 'coolantReady', possible: () => false }));
    for (const via of ['voice', 'keys'] as const) {
      expect(step.reply('coolantFull', { via }).name).toBe('asking');
      expect(step.said).toMatchObject([{ line: 'notPossible', values: {}, priority: 'notice' }]);
    }
    expect(step.context.done).toEqual([]);
  });

  it('is asked with what its step names and works out', () => {
    const step = new OneStep(filled({ words: { at: 'a' }, values: () => ({ how: 'b' }) }));
    expect(step.said).toMatchObject([{ line: 'ask', values: { at: 'a', how: 'b' }, priority: 'prompt' }]);
  });

  it('may be held up, except where seconds count', () => {
    expect([...new OneStep(filled()).moment.tags]).toEqual([]);
    expect(new OneStep(filled({ gate: 'coolantReady' })).reply('coolantFull').isCritical).toBe(false);
    const timed = new OneStep(filled({ within }));
    expect(timed.isCritical).toBe(true);
    for (const type of ['hold', 'goBack', 'skip', 'takeBack'] as const) {
      timed.send({ type });
      expect(timed.lines).toEqual(['notWhileCritical']);
      expect(timed.name).toBe('asking');
    }
  });

  it('with a word that stops stops at once, with its cause', () => {
    const trouble = { reply: 'leak', cause: 'coolantLeak' } as const;
    const step = new OneStep(filled({ trouble })).reply('leak');
    expect(step.name).toBe('stopped');
    expect(step.context.stop?.cause).toBe('coolantLeak');
  });
});

describe('that the engine stands', () => {
  const off = new OneStep(filled({ standing: true }));

  it('counts where neither the bus nor the microphone says otherwise', () => {
    for (const sights of [{}, { bus: { speedRpm: 49 } }, { ear: { speedRpm: 49 } }])
      expect(off.fork().reply('coolantFull', sights).name).toBe('next');
  });

  it('does not count while the bus shows that it turns', () => {
    const step = off.fork().reply('coolantFull', { bus: { speedRpm: 50 } });
    expect(step.name).toBe('asking');
    expect(step.said).toMatchObject([
      { line: 'stillTurns', values: { speed: { unit: 'rpm', si: 50 } }, priority: 'hazard' },
    ]);
  });

  it('does not count while the microphone hears that it turns, unless the bus shows it standing', () => {
    const step = off.fork().reply('coolantFull', { ear: { speedRpm: 600.4 } });
    expect(step.name).toBe('asking');
    expect(step.said).toMatchObject([
      { line: 'heardTurning', values: { speed: { unit: 'rpm', si: 600 } }, priority: 'hazard' },
    ]);
    expect(off.fork().reply('coolantFull', { ear: { speedRpm: 50 } }).name).toBe('asking');
    const shown = { ear: { speedRpm: 600 }, bus: { speedRpm: 0 } };
    expect(off.fork().reply('coolantFull', shown).name).toBe('next');
    expect(off.fork().reply('coolantFull', { ...shown, bus: { speedRpm: 50 } }).lines).toEqual([
      'stillTurns',
    ]);
  });

  it('is asked for only where the step says so', () => {
    const turning = { bus: { speedRpm: 600 }, ear: { speedRpm: 600 } };
    expect(new OneStep(filled()).reply('coolantFull', turning).name).toBe('next');
  });
});

describe('what has to be said in time', () => {
  const timed = (more: Partial<NonNullable<ConfirmStep['within']>> = {}, rest: Partial<ConfirmStep> = {}) =>
    filled({ within: { ...within, ...more }, ...rest });

  it('counts just before its limit, with its seconds on the record', () => {
    const step = new OneStep(timed(), { beginsS: 20 }).reply('coolantFull', { afterMs: 4999 });
    expect(step.name).toBe('next');
    expect(step.notes).toMatchObject([
      {
        kind: 'inTime',
        data: { step: 'fill.coolantFilled', seconds: 4.999, unit: 's', met: true, max: 5, rule: 'in-time' },
      },
      { kind: 'passed' },
    ]);
  });

  it('stops with its cause at its limit, whoever looked at the clock', () => {
    const begun = new OneStep(timed(), { beginsS: 20 });
    expect(begun.alarmS).toBe(25);
    for (const late of [
      begun.fork().reply('coolantFull', { afterMs: 5000 }),
      begun.fork().clock(5),
      begun.fork().unclear(1, { afterMs: 5000 }),
    ]) {
      expect(late.name).toBe('stopped');
      expect(late.context.stop).toMatchObject({ cause: 'noOilPressure', lateAfterS: 5 });
    }
    expect(begun.fork().clock(4.999).name).toBe('asking');
  });

  it('stops where its rule says that it came too late, before the limit too', () => {
    const step = new OneStep(timed({ judge: () => ruled(false) })).reply('coolantFull');
    expect(step.name).toBe('stopped');
    expect(step.context.stop?.cause).toBe('noOilPressure');
    expect(step.notes).toMatchObject([{ kind: 'inTime', data: { seconds: 1, met: false } }]);
    expect(step.context.done).toEqual([]);
  });

  it('is held to its limit alone where its rule has no answer', () => {
    const unknown: Judgement = { ok: false, issue: { code: 'tooLittleData', input: 'engineSpeed' } };
    const step = new OneStep(timed({ judge: () => unknown }));
    expect(step.fork().reply('coolantFull').name).toBe('next');
    expect(step.fork().reply('coolantFull', { afterMs: 5000 }).name).toBe('stopped');
  });

  it('is judged by when it was said: its read-back takes no time from it', () => {
    const seconds: number[] = [];
    const judge = (_: unknown, si: number) => {
      seconds.push(si);
      return ruled(true);
    };
    const step = new OneStep(timed({ judge }, { gate: 'oilPressureShown' }));
    step.reply('coolantFull', { afterMs: 4000 });
    expect(step.name).toBe('readingBack');
    step.reply('yes', { afterMs: 3000 });
    expect(step.name).toBe('next');
    expect(step.notes).toMatchObject([{ kind: 'inTime', data: { seconds: 4 } }, { kind: 'passed' }]);
    expect(new Set(seconds)).toEqual(new Set([4]));
  });

  it('said too late for its rule does not pass by its read-back either', () => {
    const judge = (_: unknown, si: number) => ruled(si < 3);
    const step = new OneStep(timed({ judge }, { gate: 'oilPressureShown' }));
    step.reply('coolantFull', { afterMs: 4000 }).reply('yes');
    expect(step.name).toBe('stopped');
    expect(step.notes).toMatchObject([{ kind: 'inTime', data: { seconds: 4, met: false } }]);
  });

  it('in a read-back that is not answered in its eight seconds stops', () => {
    const step = new OneStep(timed({}, { gate: 'oilPressureShown' })).reply('coolantFull', { afterMs: 4000 });
    expect(step.isCritical).toBe(true);
    expect(step.fork().clock(7.999).name).toBe('readingBack');
    expect(step.fork().clock(8).context.stop?.cause).toBe('noOilPressure');
  });

  it('denied once its own time is over is none, and none can come any more', () => {
    const step = new OneStep(timed({}, { gate: 'oilPressureShown' })).reply('coolantFull', { afterMs: 4000 });
    const inTime = step.fork().reply('no', { afterMs: 999 });
    expect(inTime.name).toBe('asking');
    expect(inTime.alarmS).toBe(5);
    const late = step.fork().reply('no', { afterMs: 1000 });
    expect(late.name).toBe('stopped');
    expect(late.context.stop).toMatchObject({ cause: 'noOilPressure', lateAfterS: 5 });
  });

  it('counts from when it is asked, or from when its step says', () => {
    const alarm = (more: Parameters<typeof timed>[0], begunBy: 'goBack' | 'clock') =>
      new OneStep(timed(more), { beginsS: 20, begunBy: { type: begunBy } }).alarmS;
    expect(alarm({}, 'clock')).toBe(25);
    expect(alarm({ sinceMs: () => 18_000 }, 'clock')).toBe(23);
    expect(alarm({ firstSinceMs: () => 17_000, sinceMs: () => 18_000 }, 'clock')).toBe(22);
    expect(alarm({ firstSinceMs: () => undefined, sinceMs: () => undefined }, 'clock')).toBe(25);
  });

  it('gone back to, counts from then, and not from when it was asked for the first time', () => {
    const since = { firstSinceMs: () => 2000 };
    const again = new OneStep(timed(since), { beginsS: 20, begunBy: { type: 'goBack' } });
    expect(again.alarmS).toBe(25);
    expect(again.reply('coolantFull', { afterMs: 4000 }).notes).toMatchObject([
      { kind: 'inTime', data: { seconds: 4 } },
      { kind: 'passed' },
    ]);
  });

  it('asked again after what was not understood, begins no new limit', () => {
    const step = new OneStep(timed(), { beginsS: 20 }).unclear().reply('notYet');
    expect(step.alarmS).toBe(25);
  });
});

describe('a drill', () => {
  const drill = new OneStep(stepOf('confirm', 'job.stopTechnician'));

  it('waits for a stop word, and no reply passes it', () => {
    expect(drill.offer).toEqual({ by: 'technician', replies: ['notYet'], awaits: 'drill' });
    expect(drill.isCritical).toBe(false);
    for (const id of ['thatWasTheDrill', 'yes', 'notYet'] as const)
      for (const via of ['voice', 'keys'] as const)
        expect(drill.fork().reply(id, { via }).name).toBe('asking');
  });
});

describe('numbers that were only repeated until a step names them', () => {
  const quantities: readonly Quantity[] = ['fuelInTank', 'biodieselShare', 'altitude'];
  const steps: readonly StepId[] = ['fill.fuelInTank', 'fill.biodieselShare', 'job.altitude'];
  const told = {
    done: steps,
    readings: steps.map((step, at) => ({ step, quantity: quantities[at] ?? 'altitude', si: 5, atMs: at })),
    echoed: steps.map((step, at) => ({
      step,
      quantity: quantities[at] ?? 'altitude',
      si: 5,
      engine: 'off' as const,
    })),
    misheard: 2,
  };
  const readsBack = steps.slice(0, 2);
  const named = { done: ['job.altitude'], misheard: 0 };

  describe.each([
    ['by "correct"', filled({ readsBack, ok: 'yes' }), 'yes'],
    ['by its own reply', filled({ readsBack }), 'coolantFull'],
  ] as const)('and that passes %s', (_, step, ok) => {
    const begun = new OneStep(step, { context: told });

    it('are settled by it: they are not taken back any more', () => {
      const passed = begun.fork().reply(ok);
      expect(passed.name).toBe('next');
      expect(passed.context.done).toEqual([...steps, 'fill.coolantFilled']);
      expect(passed.context.echoed).toEqual(told.echoed.slice(2));
      expect(passed.context.readings).toEqual(told.readings);
    });

    it('are asked for again where one of them is wrong, and what was read before them stays', () => {
      const wrong = begun.fork().reply('no');
      expect(wrong.name).toBe('next');
      expect(wrong.context).toMatchObject(named);
      expect(wrong.context.readings).toEqual(told.readings.slice(2));
      expect(wrong.context.echoed).toEqual(told.echoed.slice(2));
    });

    it('can be denied in any voice, and are not held up', () => {
      expect(begun.offer.replies).toContain('no');
      expect(begun.isCritical).toBe(false);
      expect(begun.offer.by).toBe('technician');
    });
  });

  it('are asked in the words of the step, with "correct" and "wrong" for an answer', () => {
    const figures = new OneStep(stepOf('confirm', 'job.figures'));
    expect(figures.lines).toEqual(['ask']);
    expect(figures.offer).toEqual({
      by: 'technician',
      replies: ['yes', 'no'],
      affirmed: { reply: 'yes', always: false },
    });
  });

  it('are behind "yes" only where there are some: a plain "yes" is a reply like others', () => {
    const step = new OneStep(filled({ ok: 'yes' }));
    expect(step.offer.replies).toEqual(['yes', 'notYet']);
    expect(step.fork().reply('no').name).toBe('asking');
    expect(new OneStep(filled()).offer.replies).not.toContain('no');
  });
});

it('no step that asks whether something is so is passed by any other reply than its own', () => {
  const replies = Object.keys(english.replies).filter((id): id is ReplyId => isReplyId(english, id));
  const passes: string[] = [];
  for (const { needs, ...step } of procedureFor(demoSix).filter(step => step.kind === 'confirm')) {
    if (step.dipstick || step.together) continue;
    const asking = new OneStep({ ...step, possible: () => true });
    for (const reply of replies.filter(id => id !== step.ok && !(step.readsBack && id === 'no')))
      if (asking.fork().reply(reply, KEYS).name === 'next') passes.push(`${step.id} by ${reply}`);
  }
  expect(passes).toEqual([]);
});
