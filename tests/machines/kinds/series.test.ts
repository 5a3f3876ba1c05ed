import { describe, expect, it } from 'vitest';
import type { Context } from '../../../machines/context.ts';
import { withinRange } from '../../../machines/limits/readings.ts';
import { reading } from '../../../machines/step-makers.ts';
import type { Judgement, ReadingStep, Series } from '../../../machines/steps.ts';
import { OneStep } from '../helpers/one-step.ts';
import { demoSix } from '../helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;
const BUS = { via: 'bus' } as const;

const idle = withinRange('engineSpeed', { min: 700, max: 1000 });
const below3000 = withinRange('engineSpeed', { max: 3000 });

type Values = readonly { readonly si: number }[];

/** Judged by how far the values are apart: 100 rpm at the most. */
const spread =
  (id: string) =>
  (_: unknown, values: Values): Judgement => {
    const all = values.map(({ si }) => si);
    const apart = Math.max(...all) - Math.min(...all);
    return {
      ok: true,
      value: {
        met: apart <= 100,
        value: apart,
        unit: 'rpm',
        max: 100,
        margin: 100 - apart,
        rule: { id, source: 'common practice, no published source', validity: 'any' },
      },
    };
  };

const plain: Series = { count: 3, judge: spread('run') };
const ends: Series = {
  ...plain,
  extremes: { judge: spread('ends'), trouble: { reply: 'hunting', cause: 'other' } },
  bounds: { judge: below3000, cause: 'overspeed' },
};

const speeds = (series: Series, more: Partial<ReadingStep> = {}) =>
  new OneStep(reading('checks.idle', 'engineSpeed', idle, { series, ...more }));

const told = (step: OneStep, values: readonly number[], how = {}) => {
  const on = step.fork();
  for (const si of values) on.value('engineSpeed', si, how);
  return on;
};

describe('a gauge that is read several times', () => {
  const asked = speeds(plain);

  it('is asked for once by its step and then for each next value, of whoever reads', () => {
    expect(asked.lines).toEqual(['ask']);
    expect(asked.offer).toEqual({
      by: 'technician',
      replies: ['notYet'],
      quantity: 'engineSpeed',
      measures: 'first',
    });
    expect(asked.isCritical).toBe(false);
    const second = told(asked, [850]);
    expect(second.name).toBe('item2');
    expect(second.said).toMatchObject([{ line: 'andNow', values: {} }]);
    expect(second.offer).not.toHaveProperty('measures');
    expect(told(asked, [850, 860]).name).toBe('item3');
    expect(speeds(plain, { by: 'second' }).offer.by).toBe('second');
  });

  it('is read back as a whole, and forgets what was misunderstood between', () => {
    const read = told(told(asked, [850]).unclear(2), [900, 950]);
    expect(read.name).toBe('readingBack');
    expect(read.context.misheard).toBe(0);
    expect(read.isCritical).toBe(false);
    expect(read.offer).toMatchObject({ by: 'technician', replies: ['yes', 'no'] });
    expect(read.said).toMatchObject([
      {
        line: 'readBackValue',
        values: {
          name: { quantityName: 'engineSpeed' },
          spoken: { list: [850, 900, 950].map(si => ({ number: { quantity: 'engineSpeed', si } })) },
        },
      },
    ]);
    expect(read.fork().reply('no').context.series).toEqual([]);
    read.reply('yes');
    expect(read.name).toBe('next');
    expect(read.notes).toMatchObject([
      {
        kind: 'verdict',
        data: {
          step: 'checks.idle',
          quantity: 'engineSpeed',
          value: 950,
          series: [850, 900, 950],
          unit: 'rpm',
          met: true,
          rule: 'run',
          of: 100,
          ofUnit: 'rpm',
        },
      },
      { kind: 'passed' },
    ]);
    expect(read.notes[0]?.data).not.toHaveProperty('via');
    expect(read.said[0]?.values).toMatchObject({ spoken: { brief: 'engineSpeed', si: 950 } });
    expect(read.said[0]).not.toHaveProperty('prefix');
    expect(read.context.readings).toMatchObject([{ si: 850 }, { si: 900 }, { si: 950 }]);
  });

  it('that does not run as it has to is read again from its beginning, and kept', () => {
    const read = told(asked, [850, 900, 951]).unclear().reply('yes');
    expect(read.name).toBe('item1');
    expect(read.context).toMatchObject({ series: [], misheard: 0, done: [], spokenInList: false });
    expect(read.lines).toEqual(['outside', 'ask']);
    expect(read.context.readings).toHaveLength(3);
  });

  it('typed to its end is judged as it stands, unless it is near its limit or one value was spoken', () => {
    expect(told(asked, [850, 850, 850], KEYS).name).toBe('next');
    expect(told(asked, [850, 850, 940], KEYS).name).toBe('next');
    expect(told(asked, [850, 850, 945], KEYS).name).toBe('readingBack');
    expect(told(asked, [850, 850, 1000], KEYS).name).toBe('readingBack');
    expect(told(told(asked, [850]), [850, 850], KEYS).name).toBe('readingBack');
    expect(told(told(asked, [850, 850], KEYS), [850]).name).toBe('readingBack');
    expect(told(asked, [850, 850], KEYS).name).toBe('item3');
    const typed = told(asked, [850, 851, 852], KEYS);
    expect(typed.notes).toMatchObject([
      { kind: 'verdict', data: { series: [850, 851, 852] } },
      { kind: 'passed' },
    ]);
    expect(typed.context.readings).toHaveLength(3);
  });

  it('judged by its last value names that once', () => {
    const judge = (context: Context, values: Values) => idle(context, values.at(-1)?.si ?? Number.NaN);
    const { data } = told(speeds({ ...plain, judge }), [850, 860, 870], KEYS).notes[0] ?? {};
    expect(data).toMatchObject({ value: 870, met: true });
    expect(data).not.toHaveProperty('of');
  });

  it('that cannot be judged passes in no way', () => {
    const judge = () => ({ ok: false, issue: { code: 'tooLittleData', input: 'engineSpeed' } }) as const;
    const unknown = speeds({ ...plain, judge });
    expect(told(unknown, [850, 850, 850], KEYS).name).toBe('readingBack');
    expect(told(unknown, [850, 850, 850]).reply('yes').name).toBe('item1');
    expect(told(unknown, [850, 850, 850], BUS).name).toBe('item1');
  });

  it('is of its own quantity, as a gauge can show it', () => {
    for (const si of [-1, 1e6]) expect(told(asked, [si]).name).toBe('item1');
    expect(asked.fork().value('oilPressure', 850).name).toBe('item1');
  });
});

describe('the lowest and the highest of a needle', () => {
  const asked = speeds(ends);

  it('are two values, judged by their own rule', () => {
    const low = told(asked, [800]);
    expect(low.said).toMatchObject([{ line: 'highest' }]);
    const both = told(low, [850]);
    expect(both.name).toBe('readingBack');
    expect(both.reply('yes').notes).toMatchObject([
      { kind: 'verdict', data: { rule: 'ends', series: [800, 850] } },
      {},
    ]);
    expect(told(asked, [800, 850], KEYS).notes[0]).toMatchObject({ data: { rule: 'ends' } });
  });

  it('stop where what is heard is not what a needle shows', () => {
    for (const step of [asked, told(asked, [800])]) {
      expect(step.offer.replies).toEqual(['notYet', 'hunting']);
      const stopped = step.fork().reply('hunting');
      expect(stopped.context.stop?.cause).toBe('other');
    }
    expect(speeds(plain).reply('hunting').name).toBe('item1');
  });
});

describe('a value of a series that stops the engine', () => {
  const asked = speeds(ends);

  it('is not waited with: said, it counts unless it is denied in eight seconds', () => {
    for (const step of [asked, told(asked, [800])])
      for (const how of [{}, KEYS]) {
        const fast = told(step, [3000.1], how);
        expect(fast.name).toBe('stopping');
        expect(fast.isCritical).toBe(true);
        expect(fast.offer).toMatchObject({ by: 'technician', corrects: 'engineSpeed' });
        expect(fast.fork().clock(7.999).name).toBe('stopping');
        expect(fast.fork().clock(8).context.stop?.cause).toBe('overspeed');
        const denied = fast.fork().reply('no');
        expect(denied.name).toBe('item1');
        expect(denied.context.deadline).toBeNull();
        const so = fast.fork().reply('yes');
        expect(so.context.stop?.cause).toBe('overspeed');
        expect(so.notes).toMatchObject([{ kind: 'verdict', data: { value: 3000.1, met: false } }]);
        expect(so.lines).toEqual(['outside']);
        expect(so.context.readings).toMatchObject([{ si: 3000.1 }]);
      }
    expect(told(asked, [3000]).name).toBe('item2');
  });

  it('of the bus stops at once, whenever it comes', () => {
    for (const step of [asked, told(asked, [800], BUS), told(asked, [3100]), asked.fork().unclear()]) {
      const stopped = told(step, [3000.1], BUS);
      expect(stopped.context.stop?.cause).toBe('overspeed');
      expect(stopped.notes).toMatchObject([{ kind: 'verdict', data: { via: 'bus', met: false } }]);
    }
  });

  it('said while the bus tells its series is heard as well', () => {
    const step = told(told(asked, [800], BUS), [3100]);
    expect(step.name).toBe('stopping');
    expect(step.clock(8).context.stop?.cause).toBe('overspeed');
  });

  it('of a bus that this engine does not have it on stops nothing and is not read back', () => {
    const { bus } = demoSix;
    const profile = { ...demoSix, ...(bus && { bus: { ...bus, readings: [] } }) };
    const step = new OneStep(reading('checks.idle', 'engineSpeed', idle, { series: ends }), { profile });
    expect(told(step, [3100], BUS).name).toBe('item1');
  });

  it('is one only where its step has bounds', () => {
    expect(told(speeds(plain), [3100]).name).toBe('item2');
    expect(told(speeds(plain), [3100], BUS).name).toBe('sampling');
  });
});

describe('a series of the bus', () => {
  const asked = speeds(ends);

  it('is taken without a word between, and counts like any other reading', () => {
    const first = told(asked, [850], BUS);
    expect(first.name).toBe('sampling');
    expect(first.said).toEqual([]);
    expect(first.offer).toEqual({ by: 'technician', replies: [], measures: 'next', awaits: 'time' });
    expect(told(first, [850], BUS).name).toBe('sampling');
    const through = told(first, [900, 950], BUS);
    expect(through.name).toBe('next');
    expect(through.notes).toMatchObject([
      { kind: 'verdict', data: { series: [850, 900, 950], via: 'bus', rule: 'run', met: true } },
      { kind: 'passed' },
    ]);
    expect(through.said).toMatchObject([{ prefix: 'fromBus' }]);
    expect(through.context.readings).toHaveLength(3);
    expect(through.context.nextLookMs).toBeNull();
  });

  it('that does not run as it has to is told, and read again', () => {
    const through = told(asked, [850, 900, 951], BUS);
    expect(through.name).toBe('item1');
    expect(through.context).toMatchObject({ series: [], done: [] });
    expect(through.said).toMatchObject([{ line: 'outside', prefix: 'fromBus' }, { line: 'ask' }]);
    expect(through.context.readings).toHaveLength(3);
  });

  it('that falls silent is left to people after six seconds', () => {
    const first = told(asked, [850], BUS);
    expect(first.alarmS).toBe(7);
    expect(told(first, [850], BUS).alarmS).toBe(8);
    expect(first.fork().clock(5.999).name).toBe('sampling');
    const silent = first.fork().clock(6);
    expect(silent.name).toBe('item1');
    expect(silent.context).toMatchObject({ series: [], nextLookMs: null });
  });

  it('is not told by people meanwhile, nor begun by the bus between theirs', () => {
    const first = told(asked, [850], BUS);
    expect(told(first, [850]).context.series).toHaveLength(1);
    expect(told(told(asked, [850]), [850], BUS).name).not.toBe('sampling');
  });

  it('opens no gate, and nor does what was typed: both are read back', () => {
    const gate = speeds(plain, { gate: 'oilPressureShown' });
    expect(told(gate, [850], BUS).name).toBe('item2');
    expect(told(gate, [850, 850, 850], BUS).name).toBe('readingBack');
    expect(told(gate, [850, 850, 850], KEYS).name).toBe('readingBack');
  });
});
