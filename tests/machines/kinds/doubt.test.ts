import { describe, expect, it } from 'vitest';
import { withinRange } from '../../../machines/limits/readings.ts';
import { reading } from '../../../machines/step-makers.ts';
import type { ReadingStep } from '../../../machines/steps.ts';
import { type Around, OneStep } from '../helpers/one-step.ts';

const BUS = { via: 'bus' } as const;

/** What its limits would let pass, but no relief valve that works: above 675 kPa with its tolerance. */
const HIGH_KPA = 700;

/** How far two people may be apart who read one gauge, kPa. */
const APART_KPA = 70;

const pressure = (more: Partial<ReadingStep> = {}, around: Around = {}) =>
  new OneStep(
    reading('checks.oilPressure', 'oilPressure', withinRange('oilPressure', { min: 100, max: 900 }), {
      engine: 'running',
      ...more,
    }),
    around,
  );

const told = (step: OneStep, si: number, how = {}) => step.fork().value('oilPressure', si, how);

describe('a number that can hardly be true', () => {
  const asked = pressure();
  const doubted = told(asked, HIGH_KPA);

  it('is questioned, with what it would have to be and why', () => {
    expect(doubted.name).toBe('asking');
    expect(doubted.said).toMatchObject([
      {
        line: 'doubted',
        priority: 'prompt',
        values: {
          name: { quantityName: 'oilPressure' },
          spoken: { quantity: 'oilPressure', si: HIGH_KPA },
          limits: { limits: { unit: 'kPa', of: 'oilPressure', max: 675 } },
          why: { line: 'whyRelief', values: { relief: { quantity: 'oilPressure', si: 480 } } },
        },
      },
    ]);
    expect(doubted.context.doubted).toEqual({ quantity: 'oilPressure', si: HIGH_KPA });
    expect(doubted.context.readings).toEqual([]);
  });

  it('goes on the record as doubted, with the rule, and without a way it did not come', () => {
    const [note] = doubted.notes;
    expect(note).toMatchObject({
      kind: 'doubted',
      data: {
        step: 'checks.oilPressure',
        quantity: 'oilPressure',
        value: HIGH_KPA,
        unit: 'kPa',
        met: false,
        max: 675,
        rule: 'not-above-relief',
      },
    });
    expect(note?.data).not.toHaveProperty('via');
  });

  it('is one from where the rule says on, and not at its edge', () => {
    expect(told(asked, 675).name).toBe('readingBack');
    expect(told(asked, 675.1).name).toBe('asking');
  });

  it('said again, is for the second person to read', () => {
    const step = told(doubted.fork().unclear(2), HIGH_KPA + 5);
    expect(step.name).toBe('vouching');
    expect(step.context).toMatchObject({
      doubted: { quantity: 'oilPressure', si: HIGH_KPA + 5 },
      misheard: 0,
    });
    expect(step.offer).toEqual({ by: 'second', replies: ['notYet'], quantity: 'oilPressure' });
    expect(step.isCritical).toBe(false);
    expect(step.said).toMatchObject([
      {
        line: 'vouchAsk',
        values: { name: { quantityName: 'oilPressure' }, unit: { unitOf: 'oilPressure' } },
      },
    ]);
  });

  it('said otherwise, is questioned once more: two readings agree within their tolerances, and no further', () => {
    expect(told(doubted, HIGH_KPA + APART_KPA).name).toBe('vouching');
    const other = told(doubted, HIGH_KPA + APART_KPA + 0.1);
    expect(other.name).toBe('asking');
    expect(other.lines).toEqual(['doubted']);
    expect(other.context.doubted?.si).toBeCloseTo(HIGH_KPA + APART_KPA + 0.1);
    expect(told(doubted, 675).name).toBe('readingBack');
  });

  it('of another quantity before says nothing of this one', () => {
    const step = pressure({}, { context: { doubted: { quantity: 'coolantTemperature', si: HIGH_KPA } } });
    expect(told(step, HIGH_KPA).lines).toEqual(['doubted']);
  });

  it('counts for nothing of another quantity, or where no gauge can show it', () => {
    for (const step of [asked, doubted]) {
      expect(step.fork().value('coolantTemperature', 120).said).toEqual([]);
      expect(told(step, 2001).said).toEqual([]);
      expect(told(step, 2001).name).toBe('asking');
    }
  });

  it('is read back at once where the bus shows the same beside a running engine', () => {
    expect(told(asked, HIGH_KPA, { bus: { si: HIGH_KPA } }).name).toBe('readingBack');
    expect(told(asked, HIGH_KPA, { bus: { si: 300 } }).lines).toEqual(['doubted']);
    const off = pressure({ engine: 'off' });
    expect(told(off, HIGH_KPA, { bus: { si: HIGH_KPA } }).lines).toEqual(['doubted']);
  });

  it('that stops the engine is held up by no doubt', () => {
    const step = told(
      pressure({ bounds: { judge: withinRange('oilPressure', { max: 690 }), cause: 'other' } }),
      HIGH_KPA,
    );
    expect(step.name).toBe('readingBack');
    expect(step.alarmS).toBe(9);
  });
});

describe('a number of the bus that can hardly be true', () => {
  const shown = told(pressure(), HIGH_KPA, BUS);

  it('is questioned, and people are asked', () => {
    expect(shown.name).toBe('asking');
    expect(shown.lines).toEqual(['doubtedBus']);
    expect(shown.notes).toMatchObject([{ kind: 'doubted', data: { via: 'bus', value: HIGH_KPA } }]);
    expect(shown.context.readings).toEqual([]);
  });

  it('is not vouched for by itself', () => {
    expect(told(pressure(), HIGH_KPA, { ...BUS, bus: { si: HIGH_KPA } }).lines).toEqual(['doubtedBus']);
  });

  it('is questioned once, as long as it shows it', () => {
    const still = told(told(shown, HIGH_KPA, BUS), HIGH_KPA + 200, BUS);
    expect(still.name).toBe('asking');
    expect(still.said).toEqual([]);
    expect(still.notes).toEqual([]);
    expect(still.context.doubted).toEqual({ quantity: 'oilPressure', si: HIGH_KPA });
  });

  it('never is what goes to the second person, but said by people it does', () => {
    expect(told(told(pressure(), HIGH_KPA), HIGH_KPA, BUS).name).toBe('asking');
    expect(told(shown, HIGH_KPA).name).toBe('vouching');
  });

  it('counts as soon as it may be true', () => {
    expect(told(shown, 300, BUS).name).toBe('next');
  });
});

describe('the second person, who reads it too', () => {
  const asked = told(told(pressure(), HIGH_KPA), HIGH_KPA);
  const TECHNICIAN = { by: 'technician' } as const;

  it('vouches for it by what agrees with it: then it is read back', () => {
    for (const si of [HIGH_KPA - APART_KPA, HIGH_KPA, HIGH_KPA + APART_KPA]) {
      const step = told(asked, si);
      expect(step.name).toBe('readingBack');
      expect(step.context.pending).toEqual({ kind: 'value', quantity: 'oilPressure', si });
      expect(step.notes).toEqual([
        {
          kind: 'vouched',
          data: {
            step: 'checks.oilPressure',
            quantity: 'oilPressure',
            value: si,
            before: HIGH_KPA,
            unit: 'kPa',
            by: 'second',
          },
        },
      ]);
      expect(step.reply('yes').name).toBe('next');
    }
  });

  it('does not by another one: it is asked for from the beginning', () => {
    for (const si of [HIGH_KPA - APART_KPA - 0.1, HIGH_KPA + APART_KPA + 0.1, 300]) {
      const step = told(asked, si);
      expect(step.name).toBe('asking');
      expect(step.said[0]).toMatchObject({
        line: 'readingsDiffer',
        values: {
          name: { quantityName: 'oilPressure' },
          before: { quantity: 'oilPressure', si: HIGH_KPA },
          now: { quantity: 'oilPressure', si },
        },
      });
      expect(step.context.doubted).toBeNull();
      expect(step.notes).toEqual([]);
    }
  });

  it('is nobody else: neither the technician nor the bus vouches for it', () => {
    for (const how of [
      TECHNICIAN,
      { ...TECHNICIAN, via: 'keys' },
      BUS,
      { ...BUS, by: 'technician' },
    ] as const)
      for (const si of [HIGH_KPA, 300]) {
        const step = told(asked, si, how);
        expect(step.name).toBe('vouching');
        expect(step.said).toEqual([]);
      }
  });

  it('reads this quantity, as a gauge can show it', () => {
    expect(asked.fork().value('coolantTemperature', HIGH_KPA).name).toBe('vouching');
    expect(asked.fork().value('coolantTemperature', 80).name).toBe('vouching');
    for (const si of [2001, -1]) expect(told(asked, si).name).toBe('vouching');
  });

  it('says "not yet": then it is asked for from the beginning', () => {
    const step = asked.fork().reply('notYet');
    expect(step.name).toBe('asking');
    expect(step.context.doubted).toBeNull();
    expect(asked.fork().reply('yes').name).toBe('vouching');
  });

  it('stops the engine by what stops it, and so does anybody, whether it agrees or not', () => {
    const bounds = { judge: withinRange('oilPressure', { max: 760 }), cause: 'noOilPressure' } as const;
    const bounded = told(told(pressure({ bounds }), HIGH_KPA), HIGH_KPA);
    expect(bounded.name).toBe('vouching');
    for (const how of [{}, TECHNICIAN]) {
      const step = told(bounded, 761, how);
      expect(step.name).toBe('readingBack');
      expect(step.context.pending).toMatchObject({ si: 761, stops: 'noOilPressure' });
      expect(step.clock(8).context.stop?.cause).toBe('noOilPressure');
    }
    expect(told(bounded, 761, BUS).context.stop?.cause).toBe('noOilPressure');
    expect(told(bounded, 760).context.pending).not.toHaveProperty('stops');
    expect(told(bounded, 2001).name).toBe('vouching');
    expect(bounded.fork().value('engineSpeed', 800).name).toBe('vouching');
  });
});

describe('a number that can hardly be true and that the second person keeps to', () => {
  const SECOND = { by: 'second' } as const;
  const asked = told(told(pressure({ by: 'second' }), HIGH_KPA, SECOND), HIGH_KPA, SECOND);

  it('is for the technician to read: nobody vouches for their own', () => {
    expect(asked.name).toBe('vouchingByTechnician');
    expect(asked.offer).toEqual({ by: 'technician', replies: ['notYet'], quantity: 'oilPressure' });
    expect(asked.lines).toEqual(['vouchAskTechnician']);
    for (const via of ['voice', 'keys'] as const)
      expect(told(asked, HIGH_KPA, { ...SECOND, via }).name).toBe('vouchingByTechnician');
    const vouched = told(asked, HIGH_KPA, { by: 'technician' });
    expect(vouched.name).toBe('readingBack');
    expect(vouched.notes).toMatchObject([{ kind: 'vouched', data: { by: 'technician' } }]);
    expect(told(asked, 300, { by: 'technician' }).name).toBe('asking');
    expect(asked.fork().reply('notYet').name).toBe('asking');
  });

  it('and that the technician keeps to is for the second person, whoever was asked', () => {
    const step = pressure({ by: 'second' });
    const keeps = told(told(step, HIGH_KPA, { by: 'technician' }), HIGH_KPA, { by: 'technician' });
    expect(keeps.name).toBe('vouching');
    expect(told(keeps, HIGH_KPA, { by: 'technician' }).name).toBe('vouching');
  });
});
