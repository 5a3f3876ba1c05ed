import { describe, expect, it } from 'vitest';
import type { Context, Echoed } from '../../machines/context.ts';
import { procedureFor, unmetGates } from '../../machines/first-start.ts';
import type { StepId } from '../../prompts/types.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { machineFor } from './helpers/driver.ts';
import { atStep, standingIn, upTo } from './helpers/forged.ts';
import { demoBoat, demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';

/** A session that looks for the step to be done now. */
const looking = (profile: Profile, known: Partial<Context>) =>
  standingIn(profile, { procedure: 'next' }, known).clock(0);

describe('a step as a state', () => {
  it.each([demoSix, demoBoat])('says by its tag what the engine does: $name', profile => {
    const { states } = machineFor(profile).getStateNodeById('procedure');
    for (const { id, engine } of procedureFor(profile)) {
      const [phase = '', key = ''] = id.split('.');
      const tags = states[phase]?.states[key]?.tags;
      expect(tags, id).toEqual({ off: [], running: ['running'], cranking: ['starting'] }[engine]);
    }
  });

  const gated = procedureFor(demoSix).filter(({ kind, needs }) => kind !== 'crank' && needs);
  it.each(gated.map(step => [step.id, step] as const))(
    '%s is refused with the gates that it needs named, until they are met',
    (id, step) => {
      const [phase = '', key = ''] = id.split('.');
      const node = machineFor(demoSix).getStateNodeById('procedure').states[phase]?.states[key];
      expect(node?.initial.target?.map(first => first.key)).toEqual(['entering']);
      const refused = atStep(demoSix, id, 'entering', { done: [] }).clock(0);
      expect(refused.name).toBe(`${id}.refused`);
      const unmet = step.needs ?? [];
      expect(refused.last.notes).toContainEqual({ kind: 'refused', data: { step: id, unmet } });
      expect(refused.last.said).toMatchObject([
        { line: 'gateClosed', values: { gates: { list: unmet.map(gate => ({ gate })) } } },
      ]);
      // Nothing was put right, and it is looked at once more.
      expect(refused.reply('ready', { via: 'keys' }).name).toBe(`${id}.refused`);
      expect(refused.last.notes).toContainEqual({ kind: 'refused', data: { step: id, unmet } });
      const open = atStep(demoSix, id, 'refused').reply('ready', { via: 'keys' });
      expect(open.name.startsWith(id)).toBe(true);
      expect(open.name).not.toMatch(/refused|entering/);
    },
  );

  it('that is asked at once needs no gate, and begins with its question', () => {
    expect(looking(demoSix, { done: upTo(demoSix, 'walkRound.tools'), step: 'walkRound.belts' }).name).toBe(
      'walkRound.tools.asking',
    );
  });
});

describe('the step to be done now', () => {
  const phaseStarts = (known: Partial<Context>) =>
    looking(demoSix, known).last.said.filter(({ line }) => line === 'phaseStarts');

  it('is announced with its phase where that is another than that of the step before, and at the very begin', () => {
    expect(phaseStarts({ done: upTo(demoSix, 'prime.strokes'), step: 'fill.secondFilterDry' })).toMatchObject(
      [{ values: { phase: { phase: 'prime' } } }],
    );
    expect(phaseStarts({ done: upTo(demoSix, 'prime.firm'), step: 'prime.strokes' })).toEqual([]);
    expect(phaseStarts({ done: [], step: 'job.card' })).toMatchObject([
      { values: { phase: { phase: 'job' } } },
    ]);
    expect(phaseStarts({ done: ['job.card'], step: 'job.card' })).toEqual([]);
  });

  it('keeps a wish for single questions in the list or the group that it was said in, and nowhere else', () => {
    const oneByOne = (step: StepId, wish: string, before: StepId) =>
      looking(demoSix, { done: upTo(demoSix, step), step: before, oneByOne: wish }).context.oneByOne;
    expect(oneByOne('keyOn.lamps', 'keyOn.lamps', 'keyOn.battery')).toBe('keyOn.lamps');
    expect(oneByOne('walkRound.boots', 'hosesBootsBelts', 'walkRound.hoses')).toBe('hosesBootsBelts');
    expect(oneByOne('walkRound.tools', 'hosesBootsBelts', 'walkRound.belts')).toBeNull();
    expect(oneByOne('walkRound.boots', 'walkRound.sensors', 'walkRound.hoses')).toBeNull();
    expect(oneByOne('walkRound.wiring', 'hosesBootsBelts', 'walkRound.tools')).toBeNull();
  });

  it('leaves gates open until all that hold them are done', () => {
    const steps = procedureFor(demoSix);
    const open = (done: readonly StepId[]) => unmetGates(steps, knowing(demoSix, {}, { done }));
    expect(open(steps.map(({ id }) => id))).toEqual([]);
    expect(open(upTo(demoSix, 'signOff.sign'))).toEqual(['signature']);
    const all = open([]);
    expect(new Set(all)).toEqual(new Set(steps.flatMap(({ gate }) => gate ?? [])));
    expect(all).toHaveLength(new Set(all).size);
  });
});

describe('going back', () => {
  const said = (step: StepId) => ({ step, reason: 'done before', by: 'technician' }) as const;
  const left = (step: StepId) => ({ step, by: 'technician' }) as const;
  const echo = (step: StepId): Echoed => ({ step, quantity: 'fuelInTank', si: 1, engine: 'off' });

  it('forgets what was skipped, left open and repeated from the step on that it leads to, and keeps the rest', () => {
    const places = ['fill.oilQuantity', 'fill.fuelInTank', 'fill.biodieselShare'] as const;
    const back = atStep(demoSix, 'fill.biodieselShare', 'asking', {
      skips: places.map(said),
      openItems: places.map(left),
      echoed: places.map(echo),
    }).send({ type: 'goBack' }, { via: 'keys' });
    expect(back.context.step).toBe('fill.fuelInTank');
    expect(back.context.done).toEqual(upTo(demoSix, 'fill.fuelInTank'));
    expect(back.context.skips).toEqual([said('fill.oilQuantity')]);
    expect(back.context.openItems).toEqual([left('fill.oilQuantity')]);
    expect(back.context.echoed).toEqual([echo('fill.oilQuantity')]);
  });

  it('leads to the first of a group that was asked together', () => {
    const back = atStep(demoSix, 'walkRound.tools', 'asking').send({ type: 'goBack' }, { via: 'keys' });
    expect(back.name).toBe('walkRound.hoses.together');
  });

  it('never leads to seconds that began before they were asked for, nor to another state of the engine', () => {
    const refused = (profile: Profile, id: StepId, state: string) => {
      const driver = atStep(profile, id, state).send({ type: 'goBack' }, { via: 'keys' });
      expect(driver.name).toBe(`${id}.${state}`);
      expect(driver.lines).toEqual(['cannotGoBack']);
    };
    refused(demoBoat, 'firstFire.eyes', 'item1');
    refused(demoSix, 'firstRun.drain', 'counting');
    refused(demoSix, 'job.card', 'asking');
    // Seconds that begin as it is asked for begin anew.
    const eyes = atStep(demoSix, 'firstFire.eyes', 'item1').send({ type: 'goBack' }, { via: 'keys' });
    expect(eyes.context.step).toBe('firstFire.oilPressure');
  });
});

describe('a skip', () => {
  it('is asked for its reason, and may be left alone for a while meanwhile', () => {
    const driver = atStep(demoSix, 'prime.strokes', 'asking').send({ type: 'skip' }, { via: 'keys' });
    expect(driver.name).toBe('prime.strokes.skipping');
    expect(driver.moment.hasTag('critical')).toBe(false);
    expect(driver.send({ type: 'hold' }, { via: 'keys' }).name).toBe('held');
  });
});

it('a session that has only just begun knows its profile, its job and its first step, and nothing else', () => {
  const { profile, job, step, ...known } = knowing(demoSix, {});
  expect([profile, step, job.technician]).toEqual([demoSix, 'job.card', 'T']);
  const empty = Object.entries(known).filter(([, value]) => Array.isArray(value));
  for (const [name, value] of empty) expect(value, name).toEqual([]);
  const others = Object.fromEntries(Object.entries(known).filter(([, value]) => !Array.isArray(value)));
  expect(others).toEqual({
    ...Object.fromEntries(Object.keys(others).map(name => [name, null])),
    misheard: 0,
    burstsBefore: 0,
    stops: 0,
    spokenInList: false,
    watchesBegan: {},
  });
});
