import { describe, expect, it } from 'vitest';
import { groupsOf, MOST_TOGETHER } from '../../machines/kinds/checklist.ts';
import { offerOf } from '../../machines/moment.ts';
import type { Cause } from '../../machines/vocabulary.ts';
import { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';

/** A start that was stopped for a cause when it had come to the tools, and has gone on to a state. */
const stoppedFor = (cause: Cause, state: string): Driver =>
  new Driver(demoSix).goodUntil('walkRound.tools.asking').send({ type: 'stop', cause }).goodUntil(state);

describe('what was done before a stop and may still be as it was', () => {
  const filled = stoppedFor('coolantLeak', 'fill.coolantFilled.checking');

  it('is asked by its title, with the very reply of the step', () => {
    expect(filled.last.said.at(-1)).toMatchObject({
      line: 'checkFirst',
      priority: 'prompt',
      values: { title: { step: 'fill.coolantFilled' }, reply: { reply: 'coolantFull' } },
    });
    expect(filled.context.pending).toBeNull();
    expect(filled.context.again).toContain('fill.coolantFilled');
  });

  it('said to be so, is done, with its read-back', () => {
    const driver = filled.fork().reply('coolantFull');
    expect(driver.name).toBe('fill.coolantFilled.readingBack');
    driver.reply('yes');
    expect(driver.context.done).toContain('fill.coolantFilled');
    expect(driver.context.again).not.toContain('fill.coolantFilled');
    expect(driver.context.done).toContain('fill.coolantBleed');
  });

  it('said not to be so, is done anew with all that hangs on it', () => {
    const driver = filled.fork().reply('notYet');
    expect(driver.name).toBe('fill.coolantFilled.asking');
    for (const id of ['fill.coolantFilled', 'fill.coolantBleed', 'fill.coolantBled'] as const) {
      expect(driver.context.again).not.toContain(id);
      expect(driver.context.done).not.toContain(id);
    }
    expect(driver.context.done).not.toContain('fill.coolantFreezePoint');
    expect(driver.context.done).toContain('fill.coolantMix');
    driver.reply('coolantFull').reply('yes');
    expect(driver.name).toBe('fill.coolantBleed.counting');
  });

  it('is not asked as a check where it lasts no longer than a look: the walk-round is done in full', () => {
    expect(stoppedFor('coolantLeak', 'walkRound.hoses.asking').lines).toContain('ask');
  });

  it('is not asked as a check where it was never done', () => {
    expect(new Driver(demoSix).goodUntil('fill.coolantFilled.asking').lines).not.toContain('checkFirst');
  });
});

describe('a number that was read before a stop', () => {
  const strokes = stoppedFor('fuelLeak', 'prime.strokes.checking');
  const before = strokes.context.readings.findLast(({ step }) => step === 'prime.strokes')?.si ?? Number.NaN;

  it('is asked with what it was, and may be said anew', () => {
    expect(strokes.last.said.at(-1)).toMatchObject({
      line: 'checkValue',
      values: {
        name: { quantityName: 'primerStrokes' },
        before: { quantity: 'primerStrokes', si: before },
        reply: { reply: 'asBefore' },
      },
    });
    expect(offerOf(strokes.moment)).toMatchObject({
      replies: ['asBefore', 'notYet'],
      quantity: 'primerStrokes',
      by: 'technician',
    });
    expect(strokes.context.pending).toBeNull();
  });

  it('"as before" is that number, read back', () => {
    const driver = strokes.fork().reply('asBefore');
    expect(driver.name).toBe('prime.strokes.readingBack');
    expect(driver.context.pending).toEqual({ kind: 'value', quantity: 'primerStrokes', si: before });
    driver.reply('yes');
    expect(driver.context.done).toContain('prime.strokes');
    expect(driver.context.readings.at(-1)).toMatchObject({ step: 'prime.strokes', si: before });
  });

  it('another number goes its way as ever', () => {
    const driver = strokes.fork().value('primerStrokes', before + 10, { via: 'keys' });
    expect(driver.context.readings.at(-1)).toMatchObject({ step: 'prime.strokes', si: before + 10 });
  });

  it('"not yet" asks for it in full', () => {
    const driver = strokes.fork().reply('notYet');
    expect(driver.name).toBe('prime.strokes.asking');
    expect(driver.context.again).not.toContain('prime.strokes');
  });
});

describe('oil on the dipstick of an engine that was turned', () => {
  const dipstick = new Driver(demoSix).goodUntil('noFuelCrank.oilLevel.dipstick');

  it('is asked for as good, low or risen', () => {
    expect(dipstick.last.said.at(-1)).toMatchObject({ line: 'askDipstick', values: {} });
    expect(offerOf(dipstick.moment)).toMatchObject({
      replies: ['levelGood', 'levelLow', 'levelRisen', 'notYet'],
      by: 'technician',
    });
  });

  it('is asked for plainly before it was turned, and as this after a stop', () => {
    expect(new Driver(demoSix).goodUntil('fill.oilLevel.asking').lines).not.toContain('askDipstick');
    expect(stoppedFor('oilLeak', 'fill.oilLevel.dipstick').lines).toContain('askDipstick');
  });

  it('between the marks is read back by voice, and by keys passes at once', () => {
    const driver = dipstick.fork().reply('levelGood');
    expect(driver.name).toBe('noFuelCrank.oilLevel.readingBack');
    expect(driver.last.said).toMatchObject([{ values: { reply: { reply: 'levelGood' } } }]);
    expect(driver.reply('yes').context.done).toContain('noFuelCrank.oilLevel');
    expect(dipstick.fork().reply('levelGood', { via: 'keys' }).context.done).toContain(
      'noFuelCrank.oilLevel',
    );
  });

  it('that is low is topped up and looked at again', () => {
    const driver = dipstick.fork().reply('levelLow');
    expect(driver.name).toBe('noFuelCrank.oilLevel.toppingUp');
    expect(driver.last.said).toMatchObject([{ line: 'topUp', values: {} }]);
    expect(offerOf(driver.moment).replies).toEqual(['levelGood', 'levelRisen', 'notYet']);
    expect(driver.context.done).not.toContain('noFuelCrank.oilLevel');
    expect(driver.fork().reply('levelGood').reply('yes').context.done).toContain('noFuelCrank.oilLevel');
    expect(driver.fork().reply('levelRisen').name).toBe('noFuelCrank.oilLevel.risen');
  });

  it('that has risen ends the session for good, once it has been read back', () => {
    const driver = dipstick.fork().reply('levelRisen');
    expect(driver.name).toBe('noFuelCrank.oilLevel.risen');
    expect(driver.last.said).toMatchObject([
      { line: 'readBackReply', values: { reply: { reply: 'levelRisen' } } },
    ]);
    expect(driver.fork().reply('no').name).toBe('noFuelCrank.oilLevel.dipstick');
    driver.reply('yes');
    expect(driver.over).toBe(true);
    expect(driver.name).toBe('ended');
    expect(driver.last.said[0]).toMatchObject({ line: 'oilRisen', priority: 'hazard', values: {} });
    expect(driver.last.notes).toContainEqual({
      kind: 'barred',
      data: { step: 'noFuelCrank.oilLevel', why: 'oilRisen' },
    });
  });
});

describe('a list', () => {
  const sizes = (count: number) => groupsOf(count).map(({ from, to }) => to - from);

  it('comes in the fewest groups of at most four, as equal as can be, and leaves nothing out', () => {
    expect([0, 1, 4, 5, 6, 8, 9, 10, 12, 13].map(sizes)).toEqual([
      [],
      [1],
      [4],
      [3, 2],
      [3, 3],
      [4, 4],
      [3, 3, 3],
      [3, 4, 3],
      [4, 4, 4],
      [3, 4, 3, 3],
    ]);
    for (let count = 1; count < 30; count += 1) {
      const groups = groupsOf(count);
      expect(groups.map(({ from }) => from)).toEqual([0, ...groups.slice(0, -1).map(({ to }) => to)]);
      expect(groups.at(-1)?.to).toBe(count);
      expect(Math.max(...sizes(count))).toBeLessThanOrEqual(MOST_TOGETHER);
    }
  });

  const lamps = new Driver(demoSix).goodUntil('keyOn.lamps.group1');
  const names = demoSix.lamps.map(({ name }) => name);

  it('of lamps is asked by group, each lamp with its state, with a reply of the group', () => {
    const { items, replies, affirmed } = offerOf(lamps.moment);
    expect(items).toEqual(demoSix.lamps.slice(0, 3).map(({ id }) => id));
    expect(replies).toEqual(['firstLamps', 'oneByOne', 'dark', 'notYet']);
    expect(affirmed).toEqual({ reply: 'firstLamps', always: false });
    expect(lamps.last.said.at(-1)).toMatchObject({
      line: 'together',
      values: {
        items: {
          list: demoSix.lamps.slice(0, 3).map(({ name, keyOn }) => ({
            list: [name, { reply: keyOn === 'on' ? 'lit' : 'dark' }],
            joined: 'plain',
          })),
        },
        reply: { reply: 'firstLamps' },
      },
    });
  });

  it('answered group by group is confirmed at its end, by how many there are', () => {
    const driver = lamps.fork().reply('firstLamps');
    expect(driver.name).toBe('keyOn.lamps.group2');
    expect(driver.context.spokenInList).toBe(true);
    driver.reply('secondLamps');
    expect(driver.name).toBe('keyOn.lamps.readingBack');
    expect(driver.last.said).toMatchObject([
      { line: 'readBackList', values: { count: names.length, title: { step: 'keyOn.lamps' } } },
    ]);
    expect(driver.fork().reply('no').name).toBe('keyOn.lamps.group1');
    expect(driver.fork().reply('no').context.spokenInList).toBe(false);
    expect(driver.reply('yes').context.done).toContain('keyOn.lamps');
  });

  it('answered by keys to its end needs no read-back; with one word by voice in it, it does', () => {
    const KEYS = { via: 'keys' } as const;
    const typed = lamps.fork().reply('firstLamps', KEYS).reply('secondLamps', KEYS);
    expect(typed.context.done).toContain('keyOn.lamps');
    const mixed = lamps.fork().reply('firstLamps').reply('secondLamps', KEYS);
    expect(mixed.name).toBe('keyOn.lamps.readingBack');
  });

  it('is asked one by one on wish, or as soon as anything is said of one of them', () => {
    for (const reply of ['oneByOne', 'dark'] as const) {
      const driver = lamps.fork().reply(reply);
      expect(driver.name).toBe('keyOn.lamps.item1');
      expect(driver.context).toMatchObject({ oneByOne: 'keyOn.lamps', misheard: 0 });
      expect(driver.last.said.at(-1)).toMatchObject({ line: 'item', values: { name: names[0] } });
      expect(offerOf(driver.moment)).toMatchObject({ item: demoSix.lamps[0]?.id });
    }
  });

  it('one by one names what was said wrong against the profile, and asks on', () => {
    const driver = lamps.fork().reply('oneByOne').reply('dark');
    expect(driver.last.said).toMatchObject([
      { line: 'lampWrong', values: { name: names[0], expected: { reply: 'lit' } } },
    ]);
    expect(offerOf(driver.moment)).not.toHaveProperty('affirmed');
  });

  it('of the second person has leaks each by itself, and the rest named together', () => {
    const eyes = new Driver(demoSix).goodUntil('firstFire.eyes.item1');
    expect(offerOf(eyes.moment)).toMatchObject({ by: 'second', item: 'anyLeak' });
    const together = eyes.fork().reply('pointGood');
    expect(together.name).toBe('firstFire.eyes.group1');
    expect(together.last.said.at(-1)).toMatchObject({
      line: 'togetherNamed',
      values: {
        items: { list: [{ point: 'noise' }, { point: 'smoke' }] },
        reply: { reply: 'soundAndSmoke' },
      },
    });
    expect(together.reply('soundAndSmoke').name).toBe('firstFire.eyes.readingBack');
  });

  it('of one thing is read back by its name', () => {
    const one = new Driver({ ...demoSix, sensors: demoSix.sensors.slice(0, 1) });
    one.goodUntil('walkRound.sensors.item1').good();
    expect(one.last.said).toMatchObject([
      {
        line: 'readBackItem',
        values: { name: demoSix.sensors[0]?.name, reply: { reply: expect.any(String) } },
      },
    ]);
  });
});

describe('steps that are asked together', () => {
  const mixing = new Driver(demoSix).goodUntil('fill.coolantMix.together');

  it('are named in a few words each, with their figures, and pass by one reply', () => {
    expect(mixing.last.said.at(-1)).toMatchObject({
      line: 'together',
      values: {
        items: {
          list: [
            { item: 'fill.coolantMix', values: { glycol: { glycol: 'ethylene' } } },
            { item: 'fill.coolantFilled', values: {} },
          ],
        },
        reply: { reply: 'mixedAndFull' },
      },
    });
    expect(offerOf(mixing.moment)).toMatchObject({
      group: 'coolantIn',
      items: ['fill.coolantMix', 'fill.coolantFilled'],
      replies: ['mixedAndFull', 'oneByOne', 'notYet'],
      by: 'technician',
    });
    const driver = mixing.fork().reply('mixedAndFull');
    expect(driver.name).toBe('fill.coolantMix.togetherReadBack');
    expect(driver.last.said).toMatchObject([{ values: { reply: { reply: 'mixedAndFull' } } }]);
    expect(driver.fork().reply('no').name).toBe('fill.coolantMix.together');
    driver.reply('yes');
    expect(driver.context.done.slice(-2)).toEqual(['fill.coolantMix', 'fill.coolantFilled']);
    expect(driver.last.notes).toMatchObject([
      { kind: 'passed', data: { step: 'fill.coolantMix', gate: 'coolantReady' } },
      { kind: 'passed', data: { step: 'fill.coolantFilled', gate: 'coolantReady' } },
    ]);
    expect(driver.context.step).toBe('fill.coolantBleed');
  });

  it('by keys need no read-back', () => {
    expect(mixing.fork().reply('mixedAndFull', { via: 'keys' }).context.step).toBe('fill.coolantBleed');
  });

  it('are asked one by one on wish', () => {
    const driver = mixing.fork().reply('oneByOne');
    expect(driver.name).toBe('fill.coolantMix.asking');
    expect(driver.context).toMatchObject({ oneByOne: 'coolantIn', misheard: 0 });
    driver.reply('mixReady').reply('yes');
    expect(driver.name).toBe('fill.coolantFilled.asking');
  });

  it('do not pass where one of them cannot be done', () => {
    const weak = { ...demoSix, coolant: { ...demoSix.coolant, maxShare: 0.4 } };
    const driver = new Driver(weak).goodUntil('job.coldestNight.asking').value('coldestNight', -38);
    driver.goodUntil('fill.coolantMix.together').reply('mixedAndFull');
    expect(driver.last.said).toMatchObject([{ line: 'notPossible', values: {} }]);
    expect(driver.name).toBe('fill.coolantMix.together');
  });

  it('of which only one is left are that one', () => {
    const back = stoppedFor('coolantLeak', 'fill.coolantFilled.checking');
    expect(back.context.done).toContain('fill.coolantMix');
    expect(offerOf(back.moment)).not.toHaveProperty('group');
  });

  it('with numbers in them that are wrong ask for those numbers again', () => {
    const fuel = new Driver(demoSix).goodUntil('fill.fuelGrade.together');
    expect(offerOf(fuel.moment).replies).toContain('no');
    const driver = fuel.fork().reply('no');
    expect(driver.name).toBe('fill.fuelInTank.asking');
    expect(driver.context.done).not.toContain('fill.biodieselShare');
    expect(offerOf(mixing.moment).replies).not.toContain('no');
    // What was read before them stays, though it was only said again too.
    expect(driver.context.readings).toEqual(
      fuel.context.readings.filter(({ step }) => !/fuelInTank|biodieselShare/.test(step)),
    );
    expect(driver.context.readings.length).toBeGreaterThan(3);
    const strokes = { step: 'prime.strokes', quantity: 'primerStrokes', si: 40, engine: 'off' } as const;
    const more = fuel.fork();
    more.moment = { ...more.moment, context: { ...more.context, echoed: [strokes, ...more.context.echoed] } };
    expect(more.reply('no').context.echoed).toEqual([strokes]);
    const passed = fuel.fork().reply('fuelAndFiltersRight').reply('yes');
    expect(passed.context.echoed).toEqual([]);
  });
});

describe('a question', () => {
  const meta = (state: string) => offerOf(new Driver(demoSix).goodUntil(state).moment);

  it('may be answered by a plain yes, by voice only where nothing hangs on it, and never to sign', () => {
    expect(meta('job.makerFirst.asking').affirmed).toEqual({ reply: 'understood', always: true });
    expect(meta('job.protection.asking').affirmed).toEqual({ reply: 'protectionOn', always: false });
    expect(meta('firstFire.oilPressure.asking').affirmed).toEqual({ reply: 'pressureGood', always: false });
    const signature = new Driver(demoSix).goodUntil(({ moment }) => offerOf(moment).by === 'supervisor');
    expect(offerOf(signature.moment)).not.toHaveProperty('affirmed');
  });

  it('for oil pressure is timed from the moment that it was entered, and says on the record how long it took', () => {
    const driver = new Driver(demoSix).goodUntil('firstFire.oilPressure.asking');
    const sinceMs = driver.context.deadline?.sinceMs ?? Number.NaN;
    driver.send({ type: 'unclear' });
    expect(driver.context.deadline?.sinceMs).toBe(sinceMs);
    const answeredMs = driver.reply('pressureGood').nowMs;
    driver.reply('yes', { afterMs: 3000 });
    expect(driver.last.notes[0]).toMatchObject({
      kind: 'inTime',
      data: {
        step: 'firstFire.oilPressure',
        seconds: (answeredMs - sinceMs) / 1000,
        unit: 's',
        met: true,
        max: expect.any(Number),
      },
    });
  });
});
