import { describe, expect, it } from 'vitest';
import { withinRange } from '../../../machines/limits/readings.ts';
import { confirm } from '../../../machines/step-makers.ts';
import { OneStep, stepOf } from '../helpers/one-step.ts';

const KEYS = { via: 'keys' } as const;
const burst = { step: 'noFuelCrank.holds', startMs: 0, endMs: 0 } as const;

describe('a deed that a stop put in doubt', () => {
  const step = new OneStep(confirm('fill.coolantFilled', 'coolantFull', { gate: 'coolantReady' }), {
    context: { again: ['fill.coolantFilled'], pending: { kind: 'reply', id: 'yes', atMs: 0 } },
  });

  it('is asked for by its title, with the very reply of the step, of nobody who waits for something else', () => {
    expect(step.name).toBe('checking');
    expect(step.said).toEqual([
      {
        step: 'fill.coolantFilled',
        line: 'checkFirst',
        priority: 'prompt',
        values: { title: { step: 'fill.coolantFilled' }, reply: { reply: 'coolantFull' } },
      },
    ]);
    expect(step.context.pending).toBeNull();
    expect(step.offer.replies).toEqual(['coolantFull', 'notYet']);
    expect(step.fork().reply('coolantFull').name).toBe('readingBack');
    expect(step.fork().reply('coolantFull', KEYS).context.again).toEqual([]);
  });
});

it('a deed for which there are seconds is not asked as a check: they run', () => {
  const within = {
    seconds: () => 5,
    cause: 'noOilPressure',
    judge: withinRange('engineSpeed', {}),
  } as const;
  const step = new OneStep(confirm('fill.coolantFilled', 'coolantFull', { within }), {
    context: { again: ['fill.coolantFilled'] },
  });
  expect(step.name).toBe('asking');
  expect(step.alarmS).toBe(5);
});

describe('a number that a stop put in doubt', () => {
  const readings = [{ quantity: 'primerStrokes', si: 40, atMs: 0, step: 'prime.strokes' }] as const;
  const strokes = stepOf('reading', 'prime.strokes');
  const step = new OneStep(strokes, {
    context: { again: ['prime.strokes'], readings, pending: { kind: 'reply', id: 'yes', atMs: 0 } },
  });

  it('is asked for with what it was', () => {
    expect(step.name).toBe('checking');
    expect(step.said).toMatchObject([
      {
        line: 'checkValue',
        priority: 'prompt',
        values: {
          name: { quantityName: 'primerStrokes' },
          before: { quantity: 'primerStrokes', si: 40 },
          reply: { reply: 'asBefore' },
        },
      },
    ]);
    expect(step.context.pending).toBeNull();
    expect(step.offer).toEqual({
      by: 'technician',
      replies: ['asBefore', 'notYet'],
      quantity: 'primerStrokes',
    });
  });

  it('"as before" is read back as that number; another one may be said, or it is asked for in full', () => {
    const same = step.fork().reply('asBefore');
    expect(same.name).toBe('readingBack');
    expect(same.context.pending).toEqual({ kind: 'value', quantity: 'primerStrokes', si: 40 });
    expect(same.reply('yes').name).toBe('next');
    expect(step.fork().value('primerStrokes', 50, KEYS).context.readings.at(-1)?.si).toBe(50);
    const anew = step.fork().reply('notYet');
    expect(anew.name).toBe('asking');
    expect(anew.context.again).toEqual([]);
  });

  it('is what it was read last, in whatever step, and 0 is said where it never was', () => {
    const never = new OneStep(strokes, { context: { again: ['prime.strokes'] } });
    expect(never.said[0]?.values.before).toEqual({ quantity: 'primerStrokes', si: 0 });
    expect(new OneStep(strokes).name).toBe('asking');
    const cool = { ...stepOf('reading', 'fill.coolantCool'), byTime: true };
    expect(new OneStep(cool, { context: { again: ['fill.coolantCool'] } }).name).toBe('asking');
  });
});

describe('oil on the dipstick', () => {
  const level = stepOf('confirm', 'fill.oilLevel');
  const turned = () => new OneStep(level, { context: { bursts: [burst] } });

  it('of an engine that has not turned is between the marks, or not yet', () => {
    const still = new OneStep(level);
    expect(still.name).toBe('asking');
    expect(still.offer.replies).toEqual(['levelGood', 'notYet']);
  });

  it('of one that has turned, or after a stop, is good, low or risen', () => {
    for (const step of [turned(), new OneStep(level, { context: { again: ['fill.oilLevel'] } })]) {
      expect(step.name).toBe('dipstick');
      expect(step.said).toMatchObject([{ line: 'askDipstick', values: {} }]);
      expect(step.offer).toEqual({
        by: 'technician',
        replies: ['levelGood', 'levelLow', 'levelRisen', 'notYet'],
      });
    }
  });

  it('that is good is read back by voice and passes by keys', () => {
    const spoken = turned().reply('levelGood');
    expect(spoken.name).toBe('readingBack');
    expect(spoken.said).toMatchObject([{ values: { reply: { reply: 'levelGood' } } }]);
    expect(spoken.reply('yes').name).toBe('next');
    expect(turned().reply('levelGood', KEYS).name).toBe('next');
  });

  it('that is low is topped up and looked at again', () => {
    const low = turned().reply('levelLow');
    expect(low.name).toBe('toppingUp');
    expect(low.said).toMatchObject([{ line: 'topUp', values: {} }]);
    expect(low.offer).toEqual({ by: 'technician', replies: ['levelGood', 'levelRisen', 'notYet'] });
    expect(low.context.done).toEqual([]);
    expect(low.fork().reply('levelGood').name).toBe('readingBack');
    expect(low.fork().reply('levelGood', KEYS).name).toBe('next');
    expect(low.fork().reply('levelRisen').name).toBe('risen');
  });

  it('that has risen is the end of this start, once it has been read back', () => {
    for (const via of ['voice', 'keys'] as const) {
      const risen = turned().reply('levelRisen', { via });
      expect(risen.name).toBe('risen');
      expect(risen.said).toMatchObject([
        { line: 'readBackReply', values: { reply: { reply: 'levelRisen' } } },
      ]);
      expect(risen.offer.by).toBe('technician');
      expect(risen.fork().reply('no').name).toBe('dipstick');
      risen.reply('yes');
      expect(risen.name).toBe('ended');
      expect(risen.said).toEqual([
        { step: 'fill.oilLevel', line: 'oilRisen', values: {}, priority: 'hazard' },
      ]);
      expect(risen.notes).toEqual([{ kind: 'barred', data: { step: 'fill.oilLevel', why: 'oilRisen' } }]);
      expect(risen.context.done).toEqual([]);
    }
  });
});
