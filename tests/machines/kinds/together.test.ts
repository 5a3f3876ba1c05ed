import { describe, expect, it } from 'vitest';
import { confirm, hold } from '../../../machines/step-makers.ts';
import type { ConfirmStep } from '../../../machines/steps.ts';
import { type Around, OneStep } from '../helpers/one-step.ts';

const KEYS = { via: 'keys' } as const;
const together = { group: 'coolantIn', ok: 'mixedAndFull' } as const;

const mix = confirm('fill.coolantMix', 'mixReady', {
  gate: 'coolantReady',
  together,
  values: () => ({ glycol: 'a' }),
});
const filled = confirm('fill.coolantFilled', 'coolantFull', { gate: 'coolantReady', together });
const bled = confirm('fill.coolantBled', 'noMoreAir', { gate: 'coolantReady' });

const begun = (around: Around = {}, first: ConfirmStep = mix, second: ConfirmStep = filled) =>
  new OneStep(first, { all: [first, second, bled], ...around });

describe('steps that are asked together', () => {
  it('are named with their figures, each by itself, and answered by a reply of their own', () => {
    const step = begun();
    expect(step.name).toBe('together');
    expect(step.said).toMatchObject([
      {
        line: 'together',
        values: {
          items: {
            list: [
              { item: 'fill.coolantMix', values: { glycol: 'a' } },
              { item: 'fill.coolantFilled', values: {} },
            ],
          },
          reply: { reply: 'mixedAndFull' },
        },
      },
    ]);
    expect(step.offer).toEqual({
      by: 'technician',
      group: 'coolantIn',
      items: ['fill.coolantMix', 'fill.coolantFilled'],
      replies: ['mixedAndFull', 'oneByOne', 'notYet'],
      affirmed: { reply: 'mixedAndFull', always: false },
    });
    expect(step.isCritical).toBe(false);
  });

  it('pass all at once, behind a read-back by voice, each on the record', () => {
    const step = begun({
      context: { again: ['fill.coolantFilled', 'fill.coolantBled'], done: ['job.card'] },
    });
    const back = step.fork().reply('mixedAndFull');
    expect(back.name).toBe('togetherReadBack');
    expect(back.said).toMatchObject([{ values: { reply: { reply: 'mixedAndFull' } } }]);
    expect(back.isCritical).toBe(false);
    expect(back.fork().reply('no').name).toBe('together');
    for (const passed of [back.reply('yes'), step.fork().reply('mixedAndFull', KEYS)]) {
      expect(passed.name).toBe('next');
      expect(passed.notes).toMatchObject([
        { kind: 'passed', data: { step: 'fill.coolantMix', gate: 'coolantReady' } },
        { kind: 'passed', data: { step: 'fill.coolantFilled', gate: 'coolantReady' } },
      ]);
      expect(passed.context).toMatchObject({
        done: ['job.card', 'fill.coolantMix', 'fill.coolantFilled'],
        again: ['fill.coolantBled'],
        misheard: 0,
        pending: null,
      });
    }
  });

  it('are made sure of like the one of them on which most hangs, and need nothing where nothing does', () => {
    const light = confirm('fill.coolantMix', 'mixReady', { together });
    const plain = confirm('fill.coolantFilled', 'coolantFull', { together });
    expect(begun({}, light, plain).reply('mixedAndFull').name).toBe('next');
    expect(begun({}, light, filled).reply('mixedAndFull').name).toBe('togetherReadBack');
  });

  it('do not pass where one of them cannot be done', () => {
    for (const via of ['voice', 'keys'] as const) {
      const step = begun({}, mix, { ...filled, possible: () => false }).reply('mixedAndFull', { via });
      expect(step.name).toBe('together');
      expect(step.said).toMatchObject([{ line: 'notPossible', values: {}, priority: 'notice' }]);
      expect(step.context.done).toEqual([]);
    }
  });

  it('are asked one by one on wish, and where only one of them is left or applies', () => {
    const wished = begun({ context: { misheard: 2 } }).reply('oneByOne');
    expect(wished.name).toBe('asking');
    expect(wished.context).toMatchObject({ oneByOne: 'coolantIn', misheard: 0 });
    expect(begun({ context: { oneByOne: 'coolantIn' } }).name).toBe('asking');
    expect(begun({ context: { oneByOne: 'bottles' } }).name).toBe('together');
    expect(begun({ context: { done: ['fill.coolantFilled'] } }).name).toBe('asking');
    expect(begun({}, mix, { ...filled, when: () => false }).name).toBe('asking');
    expect(begun({}, mix, { ...filled, when: () => true }).name).toBe('together');
  });

  it('of which one is done name only the others, and pass only them', () => {
    const third = { ...bled, together };
    const step = new OneStep(mix, {
      all: [mix, filled, third],
      context: { done: ['fill.coolantFilled'], again: ['fill.coolantFilled'] },
    });
    expect(step.said).toMatchObject([
      { values: { items: { list: [{ item: 'fill.coolantMix' }, { item: 'fill.coolantBled' }] } } },
    ]);
    step.reply('mixedAndFull', KEYS);
    expect(step.context.done).toEqual(['fill.coolantFilled', 'fill.coolantMix', 'fill.coolantBled']);
    expect(step.context.again).toEqual(['fill.coolantFilled']);
    expect(step.notes).toHaveLength(2);
  });

  it('with numbers in them ask for those again where one is wrong, and settle them where they are right', () => {
    const echoed = [
      { step: 'fill.fuelInTank', quantity: 'fuelInTank', si: 5, engine: 'off' },
      { step: 'job.altitude', quantity: 'altitude', si: 5, engine: 'off' },
    ] as const;
    const step = begun({ context: { echoed, done: ['fill.fuelInTank', 'job.altitude'] } }, mix, {
      ...filled,
      readsBack: ['fill.fuelInTank'],
    });
    expect(step.offer.replies).toContain('no');
    const wrong = step.fork().reply('no');
    expect(wrong.name).toBe('next');
    expect(wrong.context.done).toEqual(['job.altitude']);
    expect(step.fork().reply('mixedAndFull', KEYS).context.echoed).toEqual(echoed.slice(1));
    expect(begun().reply('no').name).toBe('together');
  });
});

describe('time that has to pass', () => {
  const held = (unbroken = false) =>
    new OneStep(
      hold('fill.coolantBleed', () => 300, {
        values: () => ({ at: 'a' }),
        ...(unbroken && { unbroken: true }),
      }),
      { beginsS: 10 },
    );

  it('is said with its length, and goes by', () => {
    const step = held();
    expect(step.name).toBe('counting');
    expect(step.said).toMatchObject([
      { line: 'ask', values: { at: 'a' }, priority: 'prompt' },
      {
        line: 'holdStarts',
        values: { title: { step: 'fill.coolantBleed' }, time: { unit: 's', si: 300 } },
        priority: 'notice',
      },
    ]);
    expect(step.offer).toEqual({ by: 'technician', replies: [], awaits: 'time' });
    expect(step.context.timer).toEqual({ startedMs: 10_000, totalMs: 300_000, announced: 0 });
    const over = step.fork().clock(300);
    expect(over.name).toBe('next');
    expect(over.said).toMatchObject([{ line: 'holdDone', values: { title: { step: 'fill.coolantBleed' } } }]);
    expect(over.notes).toMatchObject([{ kind: 'passed', data: { step: 'fill.coolantBleed' } }]);
    expect(step.fork().clock(299.999).name).toBe('counting');
  });

  it('is told at its half and ten seconds before its end, each once', () => {
    const step = held();
    expect(step.alarmS).toBe(160);
    expect(step.clock(150).lines).toEqual(['holdHalf']);
    expect(step.alarmS).toBe(300);
    expect(step.clock(140).said).toMatchObject([{ line: 'holdTenSeconds', values: { time: { si: 10 } } }]);
    expect(step.clock(1).said).toEqual([]);
    expect(step.alarmS).toBe(310);
  });

  it('goes on after a hold, and begins anew where it counts only without a break', () => {
    const on = held()
      .send({ type: 'hold' }, { afterMs: 50_000 })
      .send({ type: 'continue' }, { afterMs: 5000 });
    expect(on.context.timer?.startedMs).toBe(10_000);
    const anew = held(true)
      .send({ type: 'hold' }, { afterMs: 50_000 })
      .send({ type: 'continue' }, { afterMs: 5000 });
    expect(anew.context.timer).toMatchObject({ startedMs: 65_000 });
    expect(anew.lines).toEqual(['ask', 'holdStarts']);
    expect(anew.name).toBe('counting');
  });

  it('is passed by no word', () => {
    const step = held();
    for (const id of ['yes', 'ready', 'notYet'] as const)
      expect(step.fork().reply(id, KEYS).name).toBe('counting');
  });
});
