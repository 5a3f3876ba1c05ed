import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../machines/context.ts';
import { inspect, lamps, sensors } from '../../../machines/step-makers.ts';
import type { InspectStep, LampsStep, SensorsStep } from '../../../machines/steps.ts';
import { OneStep, stepOf } from '../helpers/one-step.ts';
import { demoSix } from '../helpers/profiles.ts';

const KEYS = { via: 'keys' } as const;

const things = (count: number, more: Partial<SensorsStep> = {}) =>
  sensors('walkRound.sensors', {
    items: demoSix.sensors.slice(0, count),
    ok: 'pluggedIn',
    groups: ['firstLamps', 'secondLamps'],
    ...more,
  });

const points = (more: Partial<InspectStep> = {}) => inspect('checks.leaks', { points: [], ...more });

const toItem = (step: OneStep, id: string): OneStep => {
  for (let turn = 0; step.offer.item !== id; turn += 1) {
    if (turn > 20 || step.name === 'next') throw new Error(`Never came to ${id}.`);
    const { replies, item } = step.offer;
    if (item === undefined) step.reply('oneByOne', KEYS);
    else
      step.reply(
        replies.includes('dark') && step.context.step.startsWith('first') ? 'dark' : (replies[0] ?? 'yes'),
        KEYS,
      );
  }
  return step;
};

describe('a list of things', () => {
  it('of one is asked for by its name, whatever replies there are for groups', () => {
    expect(new OneStep(things(1)).offer).toEqual({
      by: 'technician',
      item: demoSix.sensors[0]?.id,
      replies: ['pluggedIn', 'notYet'],
      affirmed: { reply: 'pluggedIn', always: false },
    });
  });

  it('of several is asked for in groups, as far as there are replies for them, and then one by one', () => {
    const step = new OneStep(things(8, { groups: ['firstLamps'] }));
    expect(step.offer.items).toHaveLength(4);
    step.reply('firstLamps', KEYS);
    expect(step.offer).toMatchObject({ item: demoSix.sensors[4]?.id, replies: ['pluggedIn', 'notYet'] });
  });

  it('asked in groups is not held up by them, and asks as often as it is not understood', () => {
    const step = new OneStep(things(8)).unclear(2);
    expect(step.said).toMatchObject([{ line: 'together', prefix: 'unclear' }]);
    expect(step.reply('firstLamps').context.misheard).toBe(0);
    expect(step.isCritical).toBe(false);
  });

  it('answered by keys to its end passes, and by voice, anywhere in it, is read back', () => {
    const list = new OneStep(things(2, { groups: [] }));
    const both = (first: 'voice' | 'keys', second: 'voice' | 'keys') =>
      list.fork().reply('pluggedIn', { via: first }).reply('pluggedIn', { via: second }).name;
    expect(both('keys', 'keys')).toBe('next');
    expect(both('voice', 'keys')).toBe('readingBack');
    expect(both('keys', 'voice')).toBe('readingBack');
    expect(both('voice', 'voice')).toBe('readingBack');
  });

  it('that frees an engine is read back by keys too', () => {
    const step = new OneStep(things(1, { gate: 'fuellingRestored' })).reply('pluggedIn', KEYS);
    expect(step.name).toBe('readingBack');
    expect(new OneStep(things(1, { gate: 'walkRoundDone' })).reply('pluggedIn', KEYS).name).toBe('next');
  });

  it('read back asks whoever was asked, and forgets what was misunderstood on the way', () => {
    const step = new OneStep(things(1, { by: 'second' })).unclear(2).reply('pluggedIn');
    expect(step.name).toBe('readingBack');
    expect(step.context.misheard).toBe(0);
    expect(step.offer).toEqual({
      by: 'second',
      replies: ['yes', 'no'],
      affirmed: { reply: 'yes', always: false },
    });
    expect(step.fork().reply('yes').name).toBe('next');
    expect(step.fork().reply('no').name).toBe('item1');
  });

  it('begun again has left nothing open of its own, and what others left stays', () => {
    const open = [
      { step: 'walkRound.sensors', by: 'technician' },
      { step: 'checks.charging', by: 'technician' },
    ] as const;
    const step = new OneStep(things(2), { context: { openItems: open, spokenInList: true } });
    expect(step.context.openItems).toEqual(open.slice(1));
    expect(step.context.spokenInList).toBe(false);
  });
});

describe('somebody who looks round', () => {
  const one = { points: [{ id: 'boots', cause: 'looseOrNoise' }] } as const;

  it('a running engine has not come to an end yet, or has found something wrong', () => {
    const step = new OneStep(points({ ...one, engine: 'running' }));
    expect(step.offer.replies).toEqual(['pointGood', 'stillLooking', 'leak', 'somethingWrong']);
    const stopped = step.fork().reply('somethingWrong');
    expect(stopped.name).toBe('stopped');
    expect(stopped.context.stop?.cause).toBeNull();
    step.reply('pointGood');
    expect(step.name).toBe('readingBack');
    expect(step.offer.replies).toEqual(['yes', 'no']);
  });

  it('one that stands says "not yet", and so does whoever looks at lamps beside a running one', () => {
    expect(new OneStep(points(one)).offer.replies).toEqual(['pointGood', 'notYet', 'leak']);
    const running = new OneStep(stepOf('lamps', 'firstFire.lamps'));
    expect(running.offer.replies).toContain('notYet');
    expect(running.offer.replies).not.toContain('stillLooking');
    expect(running.offer.replies).not.toContain('somethingWrong');
  });
});

describe('what is wrong with one of several things', () => {
  const eyes = toTogether(new OneStep(stepOf('inspect', 'firstFire.eyes')));
  const leaks = toTogether(new OneStep(stepOf('inspect', 'checks.leaks')));

  it.each([
    ['knocking', 'knocking'],
    ['squealing', 'looseOrNoise'],
    ['thickSmoke', 'smokeOrFire'],
  ] as const)('%s stops with the cause that it tells', (reply, cause) => {
    const step = eyes.fork().reply(reply);
    expect(step.name).toBe('stopped');
    expect(step.context.stop?.cause).toBe(cause);
    expect(step.notes).toMatchObject([{ kind: 'found', data: { finding: reply, does: 'stops' } }]);
    expect(step.said[0]?.priority).toBe('hazard');
  });

  it('stops without a cause where it may be of either: that is asked for then', () => {
    const step = leaks.fork().reply('leak');
    expect(step.name).toBe('stopped');
    expect(step.context.stop?.cause).toBeNull();
    expect(step.notes.filter(({ kind }) => kind === 'found')).toEqual([]);
  });

  it('stops with its cause where all of them have the same', () => {
    const joints = points({
      points: [
        { id: 'boots', cause: 'looseOrNoise' },
        { id: 'hiss', cause: 'looseOrNoise' },
      ],
      together: { from: 'boots', ok: 'bootsSoundSmell' },
    });
    const step = new OneStep(joints).reply('leak');
    expect(step.context.stop?.cause).toBe('looseOrNoise');
  });

  it('names each reply once', () => {
    for (const { offer } of [eyes, leaks]) expect(offer.replies).toEqual([...new Set(offer.replies)]);
    expect(eyes.offer.replies).toEqual([
      'soundAndSmoke',
      'oneByOne',
      'valveNoise',
      'whiteSmoke',
      'blueSmoke',
      'blackSmoke',
      'stillLooking',
      'knocking',
      'squealing',
      'thickSmoke',
      'somethingWrong',
    ]);
  });

  /** All points before those that are asked together are good. */
  function toTogether(step: OneStep): OneStep {
    while (step.offer.items === undefined) step.reply('pointGood');
    return step;
  }
});

describe('points that are asked together', () => {
  const ids = (step: OneStep) => step.offer.items ?? step.offer.item;

  it('are those from the one that is named on, the first of all too', () => {
    const three = {
      points: [
        { id: 'boots', cause: null },
        { id: 'noise', cause: null },
        { id: 'smoke', cause: null },
      ],
    } as const;
    const from = (id: 'boots' | 'noise' | 'anyLeak') =>
      new OneStep(points({ ...three, together: { from: id, ok: 'soundAndSmoke' } }));
    expect(ids(from('boots'))).toEqual(['boots', 'noise', 'smoke']);
    expect(ids(from('noise'))).toBe('boots');
    expect(ids(from('noise').reply('pointGood'))).toEqual(['noise', 'smoke']);
    expect(ids(from('anyLeak').reply('pointGood'))).toBe('noise');
    expect(ids(new OneStep(points(three)).reply('pointGood'))).toBe('noise');
  });
});

describe('a point', () => {
  const at = (id: InspectStep['points'][number]['id'], after: InspectStep['points'] = []) =>
    new OneStep(points({ points: [{ id, cause: null }, ...after] }));

  it('is good by a plain "yes" where nothing but trouble may be said of it, or where what is found is read back', () => {
    const yes = { reply: 'pointGood', always: false };
    expect(at('anyLeak').offer.affirmed).toEqual(yes);
    expect(at('smoke').offer.affirmed).toEqual(yes);
    expect(at('coolantJoints').offer).not.toHaveProperty('affirmed');
  });

  it('with a weep of coolant is wiped and looked at again: no weep passes', () => {
    const step = at('coolantJoints').reply('weep');
    expect(step.name).toBe('item1');
    expect(step.lines).toEqual(['weepMeans']);
    expect(step.context.openItems).toEqual([]);
    expect(at('fuelJoints').reply('weep').name).toBe('stopped');
    expect(at('anyLeak').reply('weep').name).toBe('stopped');
  });

  it('with smoke of a cold engine is left open once that is read back, and the list goes on', () => {
    const smoke = points({
      points: [
        { id: 'noise', cause: null },
        { id: 'smoke', cause: null },
        { id: 'boots', cause: null },
      ],
    });
    const step = new OneStep(smoke, { context: { runsSinceMs: 0 } }).reply('pointGood').reply('whiteSmoke');
    expect(step.name).toBe('found2');
    expect(step.lines).toEqual(['whiteSmokeMeans', 'readBackReply']);
    expect(step.fork().reply('no').name).toBe('item2');
    step.unclear(2).reply('yes');
    expect(step.offer.item).toBe('boots');
    expect(step.context).toMatchObject({ misheard: 0, pending: null });
    expect(step.context.openItems).toEqual([{ step: 'checks.leaks', finding: 'whiteSmoke', by: 'second' }]);
    expect(step.notes).toMatchObject([
      { kind: 'found', data: { point: 'smoke', finding: 'whiteSmoke', does: 'open', afterS: 5 } },
      { kind: 'leftOpen', data: { step: 'checks.leaks', finding: 'whiteSmoke', by: 'second' } },
    ]);
    step.reply('pointGood').reply('yes');
    expect(step.name).toBe('next');
  });

  it('with smoke that is the last thing of the list is left open as well, and the list is read back', () => {
    const step = new OneStep(points({ points: [{ id: 'smoke', cause: null }] }), {
      context: { runsSinceMs: 0 },
    });
    step.reply('blueSmoke').reply('yes');
    expect(step.name).toBe('readingBack');
    expect(step.context.openItems).toMatchObject([{ finding: 'blueSmoke' }]);
  });

  it.each([
    ['whiteSmoke', 'coolantInCylinder'],
    ['blueSmoke', 'oilLeak'],
    ['blackSmoke', 'other'],
  ] as const)(
    'with %s that has not gone after five minutes, or on an engine that has not fired, stops',
    (reply, cause) => {
      const fired = (runsSinceMs: number | null) =>
        new OneStep(points({ points: [{ id: 'smoke', cause: null }] }), {
          context: { runsSinceMs },
          beginsS: 299,
        }).reply(reply);
      expect(fired(0).name).toBe('found1');
      for (const late of [fired(-1), fired(null)]) {
        expect(late.name).toBe('stopped');
        expect(late.context.stop?.cause).toBe(cause);
        expect(late.notes).toMatchObject([{ kind: 'found', data: { finding: reply, does: 'stops' } }]);
        expect(late.said[0]).toMatchObject({ priority: 'hazard' });
      }
    },
  );
});

describe('lamps', () => {
  const lampsOf = (more: Partial<LampsStep> = {}) =>
    lamps('keyOn.lamps', { lamps: demoSix.lamps, expected: 'keyOn', wrong: 'again', groups: [], ...more });

  it('are lit or dark as the profile has them; the other word is said what it should be', () => {
    const step = new OneStep(lampsOf());
    const [first] = demoSix.lamps;
    expect(step.offer).toEqual({ by: 'technician', item: first?.id, replies: ['lit', 'dark', 'notYet'] });
    step.reply('dark', KEYS);
    expect(step.name).toBe('item1');
    expect(step.said).toMatchObject([
      { line: 'lampWrong', values: { name: first?.name, expected: { reply: 'lit' } } },
    ]);
    for (const { keyOn } of demoSix.lamps) step.reply(keyOn === 'on' ? 'lit' : 'dark', KEYS);
    expect(step.name).toBe('next');
  });

  it('in the wrong state beside a running engine stop it', () => {
    const step = new OneStep(lampsOf({ wrong: 'faultCode' })).reply('dark', KEYS);
    expect(step.context.stop?.cause).toBe('faultCode');
  });

  const running = stepOf('lamps', 'firstFire.lamps');
  const code: Fault = { spn: 157, fmi: 18, seenMs: 0 };
  const lit = (
    id: string,
    { faults = [], step = running }: { faults?: readonly Fault[]; step?: LampsStep } = {},
  ) => toItem(new OneStep(step, { context: { faults } }), id).reply('lit', KEYS);

  it.each(['amberWarning', 'malfunction'])('%s may be lit while a code is watched', id => {
    const named = {
      ...running,
      lamps: running.lamps.map(lamp => (lamp.id === 'amberWarning' ? { ...lamp, id } : lamp)),
    };
    const step = lit(id, { faults: [code], step: named });
    expect(step.offer.item ?? step.offer.items).not.toBe(id);
    expect(step.said[0]).toMatchObject({ line: 'litWhileWatched', values: { name: 'amber warning' } });
    expect(step.context.openItems).toEqual([]);
    expect(lit(id, { step: named }).context.stop?.cause).toBe('faultCode');
  });

  it('no other one may be, and none with the key on or once the code has cleared', () => {
    expect(lit('redStop', { faults: [code] }).name).toBe('stopped');
    const later = stepOf('lamps', 'firstFire.warningLamp');
    expect(lit('amberWarning', { faults: [code], step: later }).name).toBe('stopped');
    const on = { ...running, lamps: running.lamps.map(lamp => ({ ...lamp, running: 'on' as const })) };
    const dark = new OneStep({ ...on, groups: [] }, { context: { faults: [code] } }).reply('dark', KEYS);
    expect(dark.name).toBe('stopped');
  });

  it('that of charging may be lit as an open item, whatever is watched, and the list goes on', () => {
    const step = lit('charging');
    expect(step.said[0]).toMatchObject({ line: 'chargeLampLit', values: {}, priority: 'notice' });
    expect(step.context.openItems).toEqual([{ step: 'firstFire.lamps', finding: 'lit', by: 'technician' }]);
    expect(step.name).not.toBe('stopped');
  });

  it('the last of which is let by end the list all the same, by voice behind its read-back', () => {
    const charge = running.lamps.filter(({ id }) => id === 'charging');
    const last = new OneStep({ ...running, lamps: charge });
    const typed = last.fork().reply('lit', KEYS);
    expect(typed.name).toBe('next');
    expect(typed.lines).toEqual(['chargeLampLit']);
    expect(typed.context.done).toEqual(['firstFire.lamps']);
    const spoken = last.fork().reply('lit');
    expect(spoken.name).toBe('readingBack');
    expect(spoken.lines).toEqual(['chargeLampLit', 'readBackItem']);
    expect(spoken.context.openItems).toHaveLength(1);
  });
});
