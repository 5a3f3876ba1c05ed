import { describe, expect, it } from 'vitest';
import { withinRange } from '../../../machines/limits/readings.ts';
import { confirm, inspect, reading, sensors } from '../../../machines/step-makers.ts';
import { OneStep, stepOf } from '../helpers/one-step.ts';
import { changed, demoSix } from '../helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;
const BUS = { via: 'bus' } as const;

const speed = (more = {}) =>
  new OneStep(
    reading('checks.idle', 'engineSpeed', withinRange('engineSpeed', { min: 500, max: 2000 }), more),
  );
const told = (step: OneStep, si: number, how = {}) => step.fork().value('engineSpeed', si, how);

describe('what was not understood', () => {
  const asked = speed();
  const prefixes = (step: OneStep, times: number, how = {}) =>
    Array.from({ length: times }, () => step.unclear(1, how).said[0]?.prefix);

  it('of a number is asked for again, then digit by digit, then from another mouth', () => {
    expect(prefixes(asked.fork(), 4)).toEqual(['unclear', 'unclearDigits', 'unclearThrice', 'unclearThrice']);
    const denied = told(asked, 850).reply('no');
    expect(told(denied, 850).reply('no').said[0]?.prefix).toBe('unclearDigits');
    expect(prefixes(told(asked, 850), 3)).toEqual(['unclear', 'unclear', 'unclearThrice']);
  });

  it('of a word is asked for again, then from another mouth; of the supervisor, by their own hand', () => {
    const word = confirm('fill.coolantFilled', 'coolantFull');
    expect(prefixes(new OneStep(word), 3)).toEqual(['unclear', 'unclear', 'unclearThrice']);
    const denied = new OneStep({ ...word, gate: 'coolantReady' }).reply('coolantFull').reply('no');
    expect(denied.reply('coolantFull').reply('no').said[0]?.prefix).toBe('unclear');
    expect(prefixes(new OneStep({ ...word, by: 'supervisor' }), 3)).toEqual([
      'unclear',
      'unclear',
      'onlySupervisor',
    ]);
  });

  it('at the keys is only that', () => {
    expect(prefixes(asked.fork(), 4, KEYS)).toEqual(['unclear', 'unclear', 'unclear', 'unclear']);
  });

  it('stands before no question that is asked for the first time, nor in what is said again later', () => {
    expect(asked.said[0]).not.toHaveProperty('prefix');
    const step = asked.fork().unclear();
    expect(step.context.lastSaid).not.toHaveProperty('prefix');
    expect(step.context).toMatchObject({ misheard: 1, pending: null });
    const context = { misheard: 2 };
    for (const begunBy of [
      { type: 'continue' },
      { type: 'reply', id: 'yes' },
      { type: 'reply', id: 'notYet' },
    ] as const)
      expect(new OneStep(stepOf('reading', 'job.ambient'), { context, begunBy }).said[0]).not.toHaveProperty(
        'prefix',
      );
    for (const begunBy of [{ type: 'reply', id: 'no' }, { type: 'unclear' }] as const)
      expect(new OneStep(stepOf('reading', 'job.ambient'), { context, begunBy }).said[0]).toHaveProperty(
        'prefix',
      );
    const fresh = new OneStep(stepOf('reading', 'job.ambient'), { begunBy: { type: 'unclear' } });
    expect(fresh.said[0]).not.toHaveProperty('prefix');
  });

  it('in a read-back asks for that again, and counts', () => {
    const back = told(asked, 850).unclear();
    expect(back.name).toBe('readingBack');
    expect(back.said).toMatchObject([{ line: 'readBackValue', prefix: 'unclear' }]);
    expect(back.context).toMatchObject({ misheard: 1, pending: { si: 850 } });
  });

  it('denied at a read-back counts, and typed it is taken back', () => {
    expect(told(asked, 850).reply('no').said[0]).toMatchObject({ line: 'ask', prefix: 'unclear' });
    expect(told(asked, 850).reply('no').context.misheard).toBe(1);
    expect(told(asked, 850).reply('no', KEYS).said[0]).toMatchObject({ line: 'ask', prefix: 'takenBack' });
  });

  it('three times leaves the technician unheard by voice, and nobody else', () => {
    const step = asked.fork().unclear(3);
    expect(told(step, 850).name).toBe('asking');
    expect(told(step, 850, KEYS).name).toBe('next');
    expect(told(step, 850, { by: 'second' }).name).toBe('readingBack');
    expect(told(step, 850, BUS).name).toBe('asking');
    expect(told(asked.fork().unclear(2), 850).name).toBe('readingBack');
  });
});

describe('"not yet"', () => {
  it('changes nothing, of a number or a word, by anybody', () => {
    for (const step of [speed(), new OneStep(confirm('fill.coolantFilled', 'coolantFull'))]) {
      step.unclear(3).reply('notYet');
      expect(step.name).toBe('asking');
      expect(step.lines).toEqual(['notYet']);
    }
  });
});

describe('a number said while another one is read back', () => {
  const back = told(speed(), 850);

  it('that is the same is read back once more', () => {
    const same = told(back, 850);
    expect(same.name).toBe('readingBack');
    expect(same.lines).toEqual(['readBackValue']);
    expect(same.notes).toEqual([]);
    expect(same.context.misheard).toBe(0);
  });

  it('that is another one contradicts it: neither counts, and it is asked for again', () => {
    const other = told(back, 900);
    expect(other.name).toBe('asking');
    expect(other.said).toMatchObject([
      {
        line: 'readingsDiffer',
        values: {
          name: { quantityName: 'engineSpeed' },
          before: { quantity: 'engineSpeed', si: 850 },
          now: { quantity: 'engineSpeed', si: 900 },
        },
      },
      { line: 'ask', prefix: 'unclear' },
    ]);
    expect(other.notes).toEqual([
      {
        kind: 'contradiction',
        data: { step: 'checks.idle', quantity: 'engineSpeed', before: 850, now: 900 },
      },
    ]);
    expect(other.context).toMatchObject({ misheard: 1, pending: null, readings: [] });
    expect(told(back, 900, KEYS).said[1]?.prefix).toBe('unclear');
  });

  it('of another quantity, or shown by the bus, is neither', () => {
    for (const step of [told(back, 900, BUS), told(back, 850, BUS), back.fork().value('oilPressure', 850)]) {
      expect(step.name).toBe('readingBack');
      expect(step.said).toEqual([]);
      expect(step.context.pending).toEqual({ kind: 'value', quantity: 'engineSpeed', si: 850 });
    }
  });

  it('is none where a reply is read back', () => {
    const word = new OneStep(confirm('fill.coolantFilled', 'coolantFull', { gate: 'coolantReady' }));
    word.reply('coolantFull').value('engineSpeed', 850);
    expect(word.name).toBe('readingBack');
    expect(word.said).toEqual([]);
    expect(word.offer).not.toHaveProperty('corrects');
  });
});

describe('a number that stops the engine, said while another one is read back', () => {
  const bounds = { judge: withinRange('engineSpeed', { max: 1500 }), cause: 'overspeed' } as const;
  const good = told(speed({ bounds }), 850);
  const bad = told(speed({ bounds }), 1600);

  it('is read back itself, with its seconds', () => {
    const step = told(good, 1700);
    expect(step.name).toBe('readingBack');
    expect(step.context.pending).toEqual({
      kind: 'value',
      quantity: 'engineSpeed',
      si: 1700,
      stops: 'overspeed',
    });
    expect(step.lines).toEqual(['readBackValue']);
    expect(step.notes).toEqual([]);
    expect(step.context.deadline).toMatchObject({ atMs: step.nowMs + 8000 });
    expect(told(good, 1700, BUS).context.stop?.cause).toBe('overspeed');
  });

  it('after one that was to stop it too, lengthens its seconds by nothing', () => {
    const step = told(bad, 1700, { afterMs: 5000 });
    expect(step.name).toBe('readingBack');
    expect(step.context.pending).toMatchObject({ si: 1700, stops: 'overspeed' });
    expect(step.lines).toEqual(['readBackValue']);
    expect(step.fork().clock(2.999).name).toBe('readingBack');
    expect(step.fork().clock(3).context.stop?.cause).toBe('overspeed');
    expect(told(bad, 1700, BUS).context.stop?.cause).toBe('overspeed');
    expect(told(bad, 1700, { afterMs: 8000 }).context.stop?.cause).toBe('overspeed');
  });

  it('no longer does where it is taken for a good one: that contradicts it', () => {
    const step = told(bad, 900);
    expect(step.name).toBe('asking');
    expect(step.lines[0]).toBe('readingsDiffer');
  });

  it('is none of another quantity, nor beyond what a gauge can show', () => {
    expect(good.fork().value('oilPressure', 1700).context.pending).toMatchObject({ si: 850 });
    expect(told(good, 1e6).context.pending).not.toMatchObject({ si: 1e6 });
  });
});

describe('a number that the bus contradicts', () => {
  const asked = speed();
  const OTHER = { bus: { si: 1200 } };

  it('is questioned once, and said again read back with both', () => {
    for (const via of ['voice', 'keys'] as const) {
      const questioned = told(asked, 850, { via, ...OTHER });
      expect(questioned.name).toBe('asking');
      expect(questioned.said).toMatchObject([
        {
          line: 'busDiffers',
          priority: 'prompt',
          values: {
            name: { quantityName: 'engineSpeed' },
            spoken: { quantity: 'engineSpeed', si: 850 },
            bus: { quantity: 'engineSpeed', si: 1200 },
          },
        },
      ]);
      expect(questioned.notes).toMatchObject([
        {
          kind: 'disagreement',
          data: { step: 'checks.idle', quantity: 'engineSpeed', spoken: 850, bus: 1200, unit: 'rpm' },
        },
      ]);
      const again = told(questioned, 850, { via, ...OTHER });
      expect(again.name).toBe('readingBack');
      expect(again.context.pending).toEqual({ kind: 'value', quantity: 'engineSpeed', si: 850, busSi: 1200 });
      expect(again.said).toMatchObject([
        { line: 'readBackDiffers', values: { bus: { quantity: 'engineSpeed', si: 1200 } } },
      ]);
      expect(told(questioned, 860, { via, ...OTHER }).lines).toEqual(['busDiffers']);
    }
  });

  it('is not questioned where the bus shows the same, or nothing, or where it is its own', () => {
    for (const how of [{ bus: { si: 860 } }, { bus: {} }, {}]) {
      const step = told(asked, 850, how);
      expect(step.name).toBe('readingBack');
      expect(step.context.pending).toEqual({ kind: 'value', quantity: 'engineSpeed', si: 850 });
    }
    expect(told(asked, 850, { ...BUS, ...OTHER }).name).toBe('next');
  });
});

describe('a speed that the microphone contradicts', () => {
  const asked = speed();
  const OTHER = { ear: { speedRpm: 1200.4 } };

  it('is questioned once, with what was heard, and said again goes its way', () => {
    const questioned = told(asked, 850, OTHER);
    expect(questioned.name).toBe('asking');
    expect(questioned.said).toMatchObject([
      {
        line: 'heardDiffers',
        priority: 'prompt',
        values: {
          name: { quantityName: 'engineSpeed' },
          spoken: { quantity: 'engineSpeed', si: 850 },
          heard: { quantity: 'engineSpeed', si: 1200 },
        },
      },
    ]);
    expect(questioned.notes).toMatchObject([
      { kind: 'disagreement', data: { quantity: 'engineSpeed', spoken: 850, heard: 1200.4, unit: 'rpm' } },
    ]);
    expect(questioned.notes[0]?.data).not.toHaveProperty('bus');
    const again = told(questioned, 850, OTHER);
    expect(again.name).toBe('readingBack');
    expect(again.context.pending).not.toHaveProperty('busSi');
    expect(told(questioned, 860, OTHER).lines).toEqual(['heardDiffers']);
  });

  it('is not questioned where it hears the same, or nothing, or what the bus gives', () => {
    for (const how of [{ ear: { speedRpm: 860 } }, {}])
      expect(told(asked, 850, how).name).toBe('readingBack');
    expect(told(asked, 850, { ...BUS, ...OTHER }).name).toBe('next');
    const kpa = new OneStep(reading('checks.charging', 'oilPressure', withinRange('oilPressure', {}), {}));
    expect(kpa.value('oilPressure', 300, OTHER).name).toBe('readingBack');
  });
});

describe("what the second person is asked, in the technician's voice", () => {
  const VOICE = { voice: { of: 'technician', certainty: 0.9 } } as const;
  const refused = (step: OneStep) => {
    expect(step.said).toMatchObject([{ line: 'otherVoice', values: {}, priority: 'notice' }]);
    expect(step.notes).toEqual([{ kind: 'otherVoice', data: { step: step.context.step, certainty: 0.9 } }]);
  };

  it('counts for nothing, a word as little as a number or a read-back', () => {
    const word = new OneStep(
      confirm('fill.coolantFilled', 'coolantFull', { by: 'second', gate: 'coolantReady' }),
    );
    refused(word.fork().reply('coolantFull', VOICE));
    const back = word.fork().reply('coolantFull');
    refused(back.fork().reply('yes', VOICE));
    expect(back.fork().reply('yes', VOICE).name).toBe('readingBack');
    const number = speed({ by: 'second' });
    refused(told(number, 850, VOICE));
    refused(told(number, 850).reply('yes', VOICE));
  });

  it('is denied, or said not to be so yet, in whatever voice', () => {
    const number = speed({ by: 'second' });
    expect(told(number, 850).reply('no', VOICE).name).toBe('asking');
    expect(number.fork().reply('notYet', VOICE).lines).toEqual(['notYet']);
  });

  it('is no matter in their own voice, in nobody’s, or where the technician is asked', () => {
    const number = speed({ by: 'second' });
    for (const of of ['second', 'neither'] as const)
      expect(told(number, 850, { voice: { of, certainty: 0.9 } }).name).toBe('readingBack');
    expect(told(number, 850).name).toBe('readingBack');
    expect(told(speed(), 850, VOICE).name).toBe('readingBack');
  });

  it('stops the engine all the same where it is what stops it', () => {
    const bounds = { judge: withinRange('engineSpeed', { max: 1500 }), cause: 'overspeed' } as const;
    const step = told(speed({ by: 'second', bounds }), 1600, VOICE);
    expect(step.name).toBe('readingBack');
    expect(step.context.pending).toMatchObject({ stops: 'overspeed' });
  });
});

describe('what only the supervisor answers for', () => {
  const sign = new OneStep(confirm('signOff.sign', 'iSign', { by: 'supervisor', gate: 'signature' }));

  it('is answered by nobody else, at the question and at its read-back', () => {
    for (const by of ['technician', 'second'] as const) {
      const asked = sign.fork().reply('iSign', { by });
      expect(asked.name).toBe('asking');
      expect(asked.said).toMatchObject([{ line: 'onlySupervisor', values: {}, priority: 'notice' }]);
      const back = sign.fork().reply('iSign').reply('yes', { by });
      expect(back.name).toBe('readingBack');
      expect(back.lines).toEqual(['onlySupervisor']);
    }
    expect(sign.fork().reply('iSign').reply('yes').name).toBe('next');
  });

  it('is answered in no voice that was misunderstood three times, but by hand', () => {
    const step = sign.fork().unclear(3);
    expect(step.fork().reply('iSign').lines).toEqual(['onlySupervisor']);
    expect(step.fork().reply('iSign', KEYS).name).toBe('next');
  });
});

describe('lamps against the bus', () => {
  const lampsOf = (id: 'keyOn.lamps' | 'firstFire.lamps') =>
    new OneStep({ ...stepOf('lamps', id), groups: [] });
  const [first] = demoSix.lamps;
  const seen = (lamp: 'lit' | 'dark') => ({ ...KEYS, bus: { lamps: { [first?.id ?? '']: lamp } } });

  it('a lamp that is said to be what the bus says it is not is questioned once', () => {
    const step = lampsOf('firstFire.lamps').reply('dark', seen('lit'));
    expect(step.name).toBe('item1');
    expect(step.said).toMatchObject([
      {
        line: 'lampDiffers',
        values: { name: first?.name, spoken: { reply: 'dark' }, bus: { reply: 'lit' } },
      },
    ]);
    expect(step.notes).toEqual([
      {
        kind: 'disagreement',
        data: { step: 'firstFire.lamps', lamp: first?.id, spoken: 'dark', bus: 'lit' },
      },
    ]);
    expect(step.reply('dark', seen('lit')).name).toBe('item2');
  });

  it('an unlit one tells nothing with the key on, and beside a running engine it does', () => {
    expect(lampsOf('keyOn.lamps').reply('lit', seen('dark')).name).toBe('item2');
    expect(lampsOf('keyOn.lamps').reply('dark', seen('lit')).lines).toEqual(['lampDiffers']);
    expect(lampsOf('firstFire.lamps').reply('lit', seen('dark')).lines).toEqual(['lampDiffers']);
  });

  it('says nothing of one that the bus does not know, or has as it was said', () => {
    for (const bus of [
      {},
      { lamps: {} },
      { lamps: { another: 'lit' } },
      { lamps: { [first?.id ?? '']: 'dark' } },
    ] as const)
      expect(lampsOf('firstFire.lamps').reply('dark', { ...KEYS, bus }).name).toBe('item2');
  });

  it('answered as a group is held against each of them by what it should be', () => {
    const step = new OneStep(stepOf('lamps', 'firstFire.lamps'));
    const differs = step.fork().reply('firstLampsRunning', seen('lit'));
    expect(differs.said).toMatchObject([
      { line: 'lampDiffers', values: { spoken: { reply: 'dark' }, bus: { reply: 'lit' } } },
    ]);
    expect(differs.reply('firstLampsRunning', seen('lit')).name).toBe('group2');
    expect(step.reply('firstLampsRunning', seen('dark')).name).toBe('group2');
  });
});

describe('what was done before a stop', () => {
  const again = (id: 'fill.coolantFilled' | 'walkRound.tools' | 'fill.coolantBled') =>
    new OneStep(confirm(id, 'coolantFull', { gate: 'coolantReady' }), {
      context: { again: [id, 'fill.coolantBled', 'job.card'], done: ['fill.coolantBled', 'fill.coolantMix'] },
    });

  it('in filling and priming is asked as a check, and elsewhere done in full', () => {
    const check = again('fill.coolantFilled');
    expect(check.name).toBe('checking');
    expect(check.lines).toEqual(['checkFirst']);
    expect(again('walkRound.tools').name).toBe('asking');
    const never = new OneStep(confirm('fill.coolantFilled', 'coolantFull'));
    expect(never.name).toBe('asking');
    const odd = confirm('fill.coolantFilled', 'coolantFull');
    expect(new OneStep(odd, { context: { again: ['fill.coolantMix'] } }).name).toBe('asking');
  });

  it('"not yet" there puts it back with what hangs on it, and nothing else', () => {
    const step = again('fill.coolantFilled').reply('notYet');
    expect(step.name).toBe('asking');
    expect(step.context.again).toEqual(['job.card']);
    expect(step.context.done).toEqual(['fill.coolantMix']);
    const alone = again('fill.coolantBled').reply('notYet');
    expect(alone.context.done).toEqual(['fill.coolantBled', 'fill.coolantMix']);
  });

  it('gone back to from its read-back waits for nothing any more', () => {
    const step = again('fill.coolantFilled').reply('coolantFull');
    expect(step.name).toBe('readingBack');
    expect(step.reply('no').context.pending).toBeNull();
  });

  it('is no check of what only time changes, of lists, nor of a dipstick', () => {
    const context = { again: ['fill.oilLevel', 'fill.coolantCool', 'fill.sensors'] as never };
    const cool = stepOf('reading', 'fill.coolantCool');
    expect(new OneStep(cool, { context }).name).toBe('asking');
    expect(new OneStep(stepOf('confirm', 'fill.oilLevel'), { context }).name).toBe('dipstick');
    const list = sensors('walkRound.sensors', { items: demoSix.sensors, ok: 'pluggedIn', groups: [] });
    expect(new OneStep(list, { context: { again: ['walkRound.sensors'] } }).name).toBe('item1');
    const look = inspect('checks.leaks', { points: [{ id: 'boots', cause: null }] });
    expect(new OneStep(look, { context: { again: ['checks.leaks'] } }).name).toBe('item1');
  });

  it('a number is asked for with what it was; where there is none, "as before" says nothing', () => {
    const strokes = stepOf('reading', 'prime.strokes');
    const step = new OneStep(strokes, { context: { again: ['prime.strokes'] } });
    expect(step.name).toBe('checking');
    expect(step.fork().reply('asBefore').name).toBe('checking');
    const readings = [{ quantity: 'primerStrokes', si: 40, atMs: 0, step: 'prime.strokes' }] as const;
    const known = new OneStep(strokes, { context: { again: ['prime.strokes'], readings } });
    expect(known.fork().reply('asBefore').context.pending).toMatchObject({ si: 40 });
    expect(known.reply('asBefore').reply('no').context.pending).toBeNull();
  });

  it('a dipstick is not held up', () => {
    const step = new OneStep(stepOf('confirm', 'fill.oilLevel'), { context: { again: ['fill.oilLevel'] } });
    expect(step.isCritical).toBe(false);
    expect(step.fork().reply('levelLow').isCritical).toBe(false);
    expect(step.fork().reply('levelRisen').isCritical).toBe(false);
  });
});

describe('a number that was only repeated', () => {
  const all = [stepOf('reading', 'job.ambient'), stepOf('reading', 'job.altitude')] as const;
  const first = { step: 'job.ambient', quantity: 'ambientTemperature', si: 5, engine: 'off' } as const;
  const readings = [
    { ...first, atMs: 0 },
    { step: 'fill.oilQuantity', quantity: 'oilQuantity', si: 15, atMs: 0 },
  ] as const;
  const asked = (context = {}) =>
    new OneStep(all[1], {
      all,
      context: { echoed: [first], done: ['job.card', 'job.ambient'], readings, ...context },
    });

  it('is taken back by "wrong", and asked for again', () => {
    const step = asked().send({ type: 'takeBack' });
    expect(step.name).toBe('next');
    expect(step.said).toMatchObject([{ line: 'takenBack', values: {}, priority: 'notice' }]);
    expect(step.notes).toEqual([
      { kind: 'takenBack', data: { step: 'job.ambient', quantity: 'ambientTemperature', value: 5 } },
    ]);
    expect(step.context).toMatchObject({ echoed: [], done: ['job.card'], readings: readings.slice(1) });
  });

  it('is the last of them, and no other', () => {
    const before = { ...first, step: 'job.coldestNight', quantity: 'coldestNight', si: -5 } as const;
    const step = asked({ echoed: [before, first] }).send({ type: 'takeBack' });
    expect(step.context.echoed).toEqual([before]);
  });

  it('is taken back only while the engine does what it did then', () => {
    const step = asked({ echoed: [{ ...first, engine: 'running' }] }).send({ type: 'takeBack' });
    expect(step.name).toBe('asking');
    expect(step.lines).toEqual(['cannotTakeBack']);
    expect(asked({ echoed: [] }).send({ type: 'takeBack' }).lines).toEqual(['cannotTakeBack']);
  });
});

it('a value of the bus counts only of an engine that has one', () => {
  const { bus, ...without } = demoSix;
  expect(bus).toBeDefined();
  const profile = changed(without, {});
  const step = new OneStep(reading('checks.idle', 'engineSpeed', withinRange('engineSpeed', {})), {
    profile,
  });
  expect(told(step, 850, BUS).name).toBe('asking');
});
