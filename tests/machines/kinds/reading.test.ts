import { describe, expect, it } from 'vitest';
import { withinRange } from '../../../machines/limits/readings.ts';
import { reading } from '../../../machines/step-makers.ts';
import type { ReadingStep } from '../../../machines/steps.ts';
import { type Around, OneStep } from '../helpers/one-step.ts';
import { changed, demoSix } from '../helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;
const BUS = { via: 'bus' } as const;

const from13to15 = withinRange('chargingVoltage', { min: 13, max: 15 });
const from10to18 = withinRange('chargingVoltage', { min: 10, max: 18 });

/** A voltage that has to be from 13 to 15, with something more hanging on it. */
const volts = (more: Partial<ReadingStep> = {}, around: Around = {}) =>
  new OneStep(reading('checks.charging', 'chargingVoltage', from13to15, more), around);

const told = (step: OneStep, si: number, how = {}) => step.fork().value('chargingVoltage', si, how);

const verdict = (value: number, met: boolean, more = {}) => ({
  kind: 'verdict',
  data: { step: 'checks.charging', quantity: 'chargingVoltage', value, unit: 'V', met, ...more },
});

const kept = (si: number, atMs: number, more = {}) => [
  { quantity: 'chargingVoltage', si, atMs, step: 'checks.charging', ...more },
];

describe('a number that was said', () => {
  const asked = volts();

  it('is asked for as one value, of whoever reads it', () => {
    expect(asked.offer).toEqual({
      by: 'technician',
      replies: ['notYet'],
      quantity: 'chargingVoltage',
      measures: 'once',
    });
    expect(volts({ by: 'second' }).offer.by).toBe('second');
    expect(asked.context.timer).toBeNull();
    expect(asked.isCritical).toBe(false);
  });

  it('is read back, and counts when that is right', () => {
    const step = told(asked, 14);
    expect(step.name).toBe('readingBack');
    expect(step.said).toMatchObject([
      {
        line: 'readBackValue',
        values: { name: { quantityName: 'chargingVoltage' }, spoken: { brief: 'chargingVoltage', si: 14 } },
      },
    ]);
    expect(step.offer).toEqual({
      by: 'technician',
      replies: ['yes', 'no'],
      affirmed: { reply: 'yes', always: false },
      corrects: 'chargingVoltage',
    });
    expect(step.isCritical).toBe(false);
    expect(step.context.readings).toEqual([]);
    expect(step.fork().reply('no').name).toBe('asking');
    step.reply('yes');
    expect(step.name).toBe('next');
    expect(step.notes).toMatchObject([verdict(14, true), { kind: 'passed' }]);
    expect(step.lines).toEqual(['inside']);
    expect(step.context.readings).toEqual(kept(14, 2000));
  });

  it('passes at its very limits, and beyond them is told so, kept, and asked for again', () => {
    for (const si of [13, 15]) expect(told(asked, si).reply('yes').name).toBe('next');
    for (const si of [12.999, 15.001]) {
      const step = told(asked.fork().unclear(), si).reply('yes');
      expect(step.name).toBe('asking');
      expect(step.lines).toEqual(['outside', 'ask']);
      expect(step.notes).toMatchObject([verdict(si, false)]);
      expect(step.context.readings).toEqual(kept(si, 3000));
      expect(step.context).toMatchObject({ done: [], misheard: 0, pending: null });
    }
  });

  it('typed counts at once where it is not near a limit: it is said again, and may be taken back', () => {
    const step = told(asked, 14, KEYS);
    expect(step.name).toBe('next');
    expect(step.lines).toEqual(['echoShown']);
    expect(step.said[0]?.values).toEqual({ spoken: { brief: 'chargingVoltage', si: 14, asSaid: true } });
    expect(step.notes).toMatchObject([verdict(14, true), { kind: 'passed' }]);
    expect(step.context.readings).toEqual(kept(14, 1000));
    expect(step.context.echoed).toEqual([
      { step: 'checks.charging', quantity: 'chargingVoltage', si: 14, engine: 'off' },
    ]);
    for (const si of [13.19, 14.81, 12, 16]) expect(told(asked, si, KEYS).name).toBe('readingBack');
    for (const si of [13.21, 14.79]) expect(told(asked, si, KEYS).name).toBe('next');
  });

  it('that is read back later counts at once by voice too, and is said again', () => {
    const step = told(volts({ readBackIn: 'job.figures' }), 14);
    expect(step.name).toBe('next');
    expect(step.lines).toEqual(['echo']);
    expect(step.said[0]?.values).toEqual({ spoken: { brief: 'chargingVoltage', si: 14, asSaid: true } });
  });

  it('that opens a gate is read back, typed or said', () => {
    for (const via of ['voice', 'keys', 'touch'] as const)
      expect(told(volts({ gate: 'batteryReady' }), 14, { via }).name).toBe('readingBack');
  });

  it('of another quantity, or beyond what a gauge can show, is none', () => {
    expect(asked.fork().value('oilPressure', 14).name).toBe('asking');
    for (const si of [-1, 1e6, Number.NaN]) expect(told(asked, si, KEYS).name).toBe('asking');
  });
});

describe('a number that stops the engine', () => {
  const stops = volts({ outside: 'overheating' });

  it('said, counts unless it is denied within eight seconds', () => {
    for (const si of [12.999, 15.001]) {
      const step = told(stops, si);
      expect(step.name).toBe('readingBack');
      expect(step.isCritical).toBe(true);
      expect(step.alarmS).toBe(9);
      expect(step.fork().clock(7.999).name).toBe('readingBack');
      for (const late of [step.fork().clock(8), step.fork().unclear(1, { afterMs: 8000 })])
        expect(late.context.stop).toMatchObject({ cause: 'overheating' });
      const denied = step.fork().reply('no');
      expect(denied.name).toBe('asking');
      expect(denied.alarmS).toBeNull();
      step.reply('yes');
      expect(step.context.stop).toMatchObject({ cause: 'overheating', found: 'overheating' });
      expect(step.notes).toMatchObject([verdict(si, false)]);
      expect(step.lines).toEqual(['outside']);
      expect(step.context.readings).toHaveLength(1);
    }
  });

  it('within its limits has no such seconds', () => {
    const step = told(stops, 14);
    expect(step.alarmS).toBeNull();
    expect(step.reply('yes').name).toBe('next');
  });

  it('shown by the bus stops at once, whatever was misunderstood before', () => {
    for (const step of [told(stops, 15.001, BUS), told(stops.fork().unclear(3), 12.999, BUS)]) {
      expect(step.name).toBe('stopped');
      expect(step.context.stop?.cause).toBe('overheating');
      expect(step.notes).toMatchObject([{ kind: 'verdict', data: { met: false, via: 'bus' } }]);
      expect(step.said).toMatchObject([{ line: 'outside', prefix: 'fromBus' }]);
      expect(step.context.readings).toMatchObject([{ byBus: true }]);
    }
  });

  it('has limits of its own where its step has, and between them is looked at again', () => {
    const bounded = volts({ bounds: { judge: from10to18, cause: 'overspeed' } });
    for (const si of [9.999, 18.001]) {
      expect(told(bounded, si).reply('yes').context.stop?.cause).toBe('overspeed');
      expect(told(bounded, si, BUS).context.stop?.cause).toBe('overspeed');
    }
    for (const si of [10, 12.999, 15.001, 18]) {
      const said = told(bounded, si);
      expect(said.alarmS).toBeNull();
      expect(said.reply('yes').name).toBe('asking');
      expect(told(bounded, si, BUS).name).toBe('asking');
    }
    expect(told(bounded, 14).reply('yes').name).toBe('next');
  });

  it('never stops where another look is all that is asked for', () => {
    for (const si of [0, 12.999, 15.001, 30]) {
      expect(told(volts(), si).alarmS).toBeNull();
      expect(told(volts(), si).reply('yes').name).toBe('asking');
      expect(told(volts(), si, BUS).name).toBe('asking');
    }
  });
});

describe('a number that the bus shows', () => {
  it('counts at once, with its verdict on the record and aloud', () => {
    const step = told(volts(), 14, BUS);
    expect(step.name).toBe('next');
    expect(step.notes).toMatchObject([verdict(14, true, { via: 'bus' }), { kind: 'passed' }]);
    expect(step.said).toMatchObject([{ line: 'inside', prefix: 'fromBus' }]);
    expect(step.context.readings).toEqual(kept(14, 1000, { byBus: true }));
  });

  it('outside its limits is told and kept, and it is asked for again', () => {
    const step = told(volts(), 16, BUS);
    expect(step.name).toBe('asking');
    expect(step.lines).toEqual(['outside']);
    expect(step.context.readings).toEqual(kept(16, 1000, { byBus: true }));
    expect(step.context.pending).toBeNull();
  });

  it('opens no gate by itself: a good one is read back, as the bus has it', () => {
    const step = told(volts({ gate: 'batteryReady' }), 14, BUS);
    expect(step.name).toBe('readingBack');
    expect(step.said).toMatchObject([{ line: 'readBackValue', prefix: 'fromBus' }]);
    expect(step.context.done).toEqual([]);
    expect(told(volts({ gate: 'batteryReady' }), 16, BUS).name).toBe('asking');
  });

  it('counts for nothing once something was not understood', () => {
    const step = volts().unclear();
    for (const si of [14, 16]) {
      const shown = told(step, si, BUS);
      expect(shown.name).toBe('asking');
      expect(shown.context.readings).toEqual([]);
    }
  });

  it('counts only where this engine has it on its bus, and not as something that is always said', () => {
    const { bus } = demoSix;
    if (!bus) throw new Error('This engine has a bus.');
    const readings = bus.readings.filter(each => each !== 'chargingVoltage');
    for (const profile of [
      changed(demoSix, { bus: { ...bus, readings } }),
      changed(demoSix, { bus: { ...bus, spoken: ['chargingVoltage'] } }),
      { ...demoSix, bus: undefined },
    ])
      for (const si of [14, 16]) {
        const step = told(volts({ outside: 'overheating' }, { profile }), si, BUS);
        expect(step.name).toBe('asking');
        expect(step.context.readings).toEqual([]);
      }
  });
});

describe('a number that time passes over', () => {
  const held = volts({ passesAfterS: 15, engine: 'running' }, { beginsS: 10 });

  it('is asked for while the time goes by, and passed over at its end, not before', () => {
    expect(held.offer.awaits).toBe('time');
    expect(held.lines).toEqual(['ask']);
    expect(held.alarmS).toBe(25);
    expect(held.fork().clock(14.999).name).toBe('asking');
    const over = held.fork().clock(15);
    expect(over.name).toBe('next');
    expect(over.notes).toMatchObject([{ kind: 'passed', data: { step: 'checks.charging' } }]);
    expect(over.context.readings).toEqual([]);
  });

  it.each([
    ['not understood', (step: OneStep) => step.unclear()],
    ['"not yet"', (step: OneStep) => step.reply('notYet')],
    ['a number that the bus contradicts', (step: OneStep) => told(step, 14, { bus: { si: 10 } })],
  ] as const)('is waited for once there was %s: time alone passes it no more', (_, say) => {
    const step = say(held.fork());
    expect(step.name).toBe('asking');
    expect(step.context.timer).toBeNull();
    expect(step.context.unanswered).toEqual({ sinceMs: 11_000, told: 0, patience: 'glance' });
    expect(step.clock(15).name).toBe('asking');
  });

  it('is held anew for its whole time after a hold', () => {
    const step = held.fork().send({ type: 'hold' }, { afterMs: 10_000 });
    expect(step.context.timer).toBeNull();
    step.send({ type: 'continue' });
    expect(step.context.timer).toMatchObject({ startedMs: 21_000, totalMs: 15_000 });
  });

  it('said, is read back without that time', () => {
    const step = told(held, 14);
    expect(step.name).toBe('readingBack');
    expect(step.context.timer).toBeNull();
    expect(step.clock(15).name).toBe('readingBack');
    expect(step.reply('yes').name).toBe('next');
  });

  it('is not passed over by time where its step has none', () => {
    const step = volts({ engine: 'running' });
    expect(step.offer).not.toHaveProperty('awaits');
    expect(step.context.unanswered).toEqual({ sinceMs: 0, told: 0, patience: 'glance' });
    expect(volts({ byTime: true }).offer.awaits).toBe('time');
  });
});

describe('a number that there is nothing to measure with', () => {
  const without = ['checks.idle', 'checks.charging'] as const;
  const asked = volts({ without: 'noTester' }, { context: { without } });

  it('may be answered by that, read back by voice, and by keys at once', () => {
    expect(asked.offer.replies).toEqual(['noTester', 'notYet']);
    expect(asked.lines).toEqual(['ask']);
    const typed = asked.fork().reply('noTester', KEYS);
    expect(typed.name).toBe('next');
    expect(typed.context.without).toEqual(['checks.idle', 'checks.charging']);
    const gate = volts({ without: 'noTester', gate: 'batteryReady' }).reply('noTester');
    expect(gate.name).toBe('withoutReadBack');
    expect(gate.said).toMatchObject([{ line: 'readBackReply', values: { reply: { reply: 'noTester' } } }]);
    expect(gate.fork().reply('no').name).toBe('asking');
    gate.reply('yes');
    expect(gate.name).toBe('next');
    expect(gate.context.without).toEqual(['checks.charging']);
    expect(gate.notes).toMatchObject([{ kind: 'passed' }]);
  });

  it('asked for anew may be measured after all', () => {
    expect(asked.context.without).toEqual(['checks.idle']);
  });

  it('is not left out once it was measured and missed its limits, but where it met them', () => {
    const missed = told(asked, 12).reply('yes');
    expect(missed.name).toBe('asking');
    missed.reply('noTester', KEYS);
    expect(missed.name).toBe('asking');
    expect(missed.said).toMatchObject([
      { line: 'testedAlready', values: { spoken: { quantity: 'chargingVoltage', si: 12 } } },
    ]);
    expect(missed.context.without).toEqual(['checks.idle']);
    const met = {
      readings: [{ step: 'checks.charging', quantity: 'chargingVoltage', si: 14, atMs: 0 }],
    } as const;
    expect(volts({ without: 'noTester' }, { context: met }).reply('noTester', KEYS).name).toBe('next');
    const others = {
      readings: [{ step: 'checks.idle', quantity: 'chargingVoltage', si: 2, atMs: 0 }],
    } as const;
    expect(volts({ without: 'noTester' }, { context: others }).reply('noTester', KEYS).name).toBe('next');
  });

  it('is asked for as long as its step does not say so', () => {
    expect(volts().reply('noTester', KEYS).name).toBe('asking');
    expect(volts().context.without).toEqual([]);
  });
});

describe('a number that nobody measured when it could be', () => {
  it('leads back to where it is measured, at its price', () => {
    const step = volts(
      { notMeasured: { again: 'noFuelCrank.holds' } },
      { context: { done: ['noFuelCrank.untilPressure', 'noFuelCrank.holds'], misheard: 2 } },
    );
    expect(step.offer.replies).toEqual(['notMeasured', 'notYet']);
    step.reply('notMeasured');
    expect(step.name).toBe('next');
    expect(step.said).toMatchObject([
      { line: 'notMeasuredPrice', values: { title: { step: 'noFuelCrank.holds' } } },
    ]);
    expect(step.context).toMatchObject({ done: ['noFuelCrank.untilPressure'], misheard: 0 });
    expect(step.notes).toEqual([]);
  });

  it('is not passed by that in any other step', () => {
    expect(volts().reply('notMeasured', KEYS).name).toBe('asking');
  });
});

describe('a number that may stay outside its limits', () => {
  const asked = volts({ mayStayOpen: true });
  const outside = () => told(asked, 16).reply('yes');

  it('is asked for once more there, or left open', () => {
    for (const step of [outside(), told(asked, 16, BUS)]) {
      expect(step.name).toBe('outside');
      expect(step.lines.at(-1)).toBe('orLeaveOpen');
      expect(step.said.at(-1)?.values).toEqual({ name: { quantityName: 'chargingVoltage' } });
      expect(step.context.pending).toBeNull();
      expect(step.offer).toEqual({
        by: 'technician',
        replies: ['notYet', 'leaveOpen'],
        quantity: 'chargingVoltage',
        measures: 'once',
      });
      expect(step.fork().reply('notYet').lines).toEqual(['notYet']);
      expect(told(step, 14).reply('yes').name).toBe('next');
    }
  });

  it('is left open only behind a read-back, with what it was', () => {
    const step = outside().reply('leaveOpen');
    expect(step.name).toBe('leavingOpen');
    expect(step.offer).toMatchObject({ by: 'technician', replies: ['yes', 'no'] });
    expect(step.isCritical).toBe(false);
    expect(step.said).toMatchObject([{ line: 'readBackReply', values: { reply: { reply: 'leaveOpen' } } }]);
    expect(step.fork().reply('no').name).toBe('outside');
    step.reply('yes');
    expect(step.name).toBe('next');
    expect(step.lines).toEqual(['leftOpen']);
    expect(step.context.openItems).toEqual([
      { step: 'checks.charging', quantity: 'chargingVoltage', si: 16, by: 'technician' },
    ]);
    expect(step.notes).toMatchObject([
      { kind: 'leftOpen', data: { value: 16, unit: 'V' } },
      { kind: 'passed' },
    ]);
  });

  it('is left open with the value of its own step, whatever was read since elsewhere', () => {
    const step = volts({ mayStayOpen: true, by: 'second' }).value('chargingVoltage', 16).reply('yes');
    const { readings } = step.context;
    const other = { step: 'checks.idle', quantity: 'engineSpeed', si: 850, atMs: 0 } as const;
    const later = volts({ mayStayOpen: true }, { context: { readings: [...readings, other] } });
    expect(later.context.readings.at(-1)).toEqual(other);
    const open = told(later, 17, BUS).reply('leaveOpen').reply('yes');
    expect(open.context.openItems).toMatchObject([{ si: 17 }]);
    expect(step.offer.by).toBe('second');
    expect(step.reply('leaveOpen').offer.by).toBe('second');
  });

  it('is not left open by a voice that was misunderstood three times, nor before it was read', () => {
    expect(asked.fork().reply('leaveOpen', KEYS).name).toBe('asking');
    const step = outside().unclear(3);
    expect(step.fork().reply('leaveOpen').name).toBe('outside');
    expect(step.reply('leaveOpen', KEYS).name).toBe('leavingOpen');
  });

  it('may not, where its step does not say so', () => {
    expect(told(volts(), 16).reply('yes').fork().reply('leaveOpen', KEYS).name).toBe('asking');
  });
});
