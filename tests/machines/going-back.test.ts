import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../machines/first-start.ts';
import type { Step } from '../../machines/steps.ts';
import { Driver } from './helpers/driver.ts';
import { stepIds } from './helpers/paths.ts';
import { demoBoat, demoFour, demoSix } from './helpers/profiles.ts';

/** The first moment of every step of an all-good start; both emergency words are tried out within a stop. */
function firstMoments(driver: Driver): Driver[] {
  const moments = [driver.fork()];
  while (!driver.over) {
    const step = driver.context.step;
    driver.good();
    const isStopped = driver.name.startsWith('stopped');
    if (driver.context.step !== step && !driver.over && !isStopped) moments.push(driver.fork());
  }
  return moments;
}

const moments = firstMoments(new Driver(demoSix));
const engineAt = new Map<string, string>(procedureFor(demoSix).map(step => [step.id, step.engine]));
/** The coolant of an engine that has not run is cool: nobody is asked. */
const order = stepIds(demoSix).filter(id => id !== 'fill.coolantCool');

function groupSize(id: string): number {
  const groupOf = (step: Step) => (step.kind === 'confirm' ? step.together?.group : undefined);
  const steps = procedureFor(demoSix);
  const group = steps.flatMap(step => (step.id === id ? [groupOf(step)] : []))[0];
  return group === undefined ? 1 : steps.filter(step => groupOf(step) === group).length;
}

describe('going back', () => {
  it('undoes exactly the step before and what came after it, wherever the engine stays as it is', () => {
    const gone = moments.map(moment => {
      const { step, done } = moment.context;
      const before = done.at(-1) ?? null;
      const possible =
        before !== null && engineAt.get(before) === engineAt.get(step) && !moment.moment.hasTag('critical');
      const back = moment.fork().send({ type: 'goBack' });
      if (possible) {
        // What was answered together is undone together.
        const undone = done.slice(-groupSize(before));
        expect(back.context.step).toBe(undone[0]);
        expect(back.context.done).toEqual(done.slice(0, -undone.length));
      } else {
        expect(back.name).toBe(moment.name);
        expect(back.context.done).toBe(done);
        expect(back.lines[0]).toMatch(/^(cannotGoBack|notWhileCritical)$/);
      }
      return possible;
    });
    expect(gone.filter(Boolean).length).toBeGreaterThan(40);
    expect(gone.filter(possible => !possible).length).toBeGreaterThan(5);
  });

  it('never leads to where seconds that began before are over: raw water that flowed is not too late once more', () => {
    for (const profile of [demoSix, demoBoat]) {
      const driver = new Driver(profile);
      while (!driver.over) {
        for (const afterMs of [0, 35_000, 250_000]) {
          const back = driver.fork([]);
          if (back.alarmMs !== null && back.alarmMs <= back.nowMs + afterMs) continue;
          back.send({ type: 'goBack' }, { via: 'keys', afterMs });
          expect(back.context.stop === null || driver.context.stop !== null, driver.name).toBe(true);
          if (back.context.step === driver.context.step) continue;
          const { deadline } = back.context;
          if (deadline) expect(deadline.sinceMs, driver.name).toBe(back.nowMs);
        }
        driver.good();
      }
    }
  });

  it('to raw water that flows is refused in words', () => {
    const eyes = new Driver(demoBoat).goodUntil('firstFire.eyes.item1').clock(35_000);
    eyes.send({ type: 'goBack' });
    expect(eyes.name).toBe('firstFire.eyes.item1');
    expect(eyes.lines).toEqual(['cannotGoBack']);
  });

  it('never leads into cranking, out of it, into a running engine or out of one', () => {
    const crossing = moments.filter(({ context }) => {
      const before = context.done.at(-1);
      return before !== undefined && engineAt.get(before) !== engineAt.get(context.step);
    });
    expect(crossing.map(({ context }) => context.step)).toEqual([
      'noFuelCrank.untilPressure',
      'noFuelCrank.voltage',
      'firstFire.crank',
      'firstFire.oilPressure',
      'firstRun.drain',
      'firstRun.restart',
      'firstRun.oilPressure',
      'shutdown.firstSoak',
    ]);
    for (const moment of crossing)
      expect(moment.fork().send({ type: 'goBack' }).context.step).toBe(moment.context.step);
  });

  it('twice goes back two steps, and to the first of those that were answered together', () => {
    const driver = new Driver(demoSix).goodUntil('fill.coolantBled.asking');
    driver.send({ type: 'goBack' }).send({ type: 'goBack' });
    expect(driver.context.step).toBe('fill.coolantMix');
    expect(driver.context.done).toEqual(order.slice(0, order.indexOf('fill.coolantMix')));
  });

  it('after a stop also undoes later steps that had stayed done, and nothing before', () => {
    const driver = new Driver(demoSix).goodUntil('walkRound.tools.asking');
    driver.send({ type: 'stop', cause: 'coolantLeak' }).goodUntil('fill.coolantFilled.checking');
    expect(driver.context.done).toContain('fill.oilGrade');
    driver.send({ type: 'goBack' });
    expect(driver.context.step).toBe('fill.coolantMix');
    const from = order.indexOf('fill.coolantMix');
    expect(driver.context.done).toEqual(order.slice(0, from));
  });

  it('forgets what was being asked and timed', () => {
    const driver = new Driver(demoSix).goodUntil('fill.coolantBleed.counting').send({ type: 'goBack' });
    expect(driver.name).toBe('fill.coolantMix.together');
    expect(driver.alarmMs).toBe(null);
    expect(driver.context).toMatchObject({ timer: null, pending: null, misheard: 0 });
  });

  it('from a held session has to wait until work goes on', () => {
    const held = new Driver(demoSix).goodUntil('fill.coolantBled.asking').send({ type: 'hold' });
    expect(held.send({ type: 'goBack' }).name).toBe('held');
    expect(held.send({ type: 'continue' }).name).toBe('fill.coolantBled.asking');
  });

  it('reaches the correction of a figure that left no answer', () => {
    const driver = new Driver(demoFour).goodUntil('fill.fuelInTank.asking');
    // A tank full of summer fuel cannot be blended for this night.
    driver.value('fuelInTank', 70).reply('yes').goodUntil('fill.fuelGrade.asking');
    expect(driver.reply('fuelRight').lines).toEqual(['notPossible']);
    expect(driver.name).toBe('fill.fuelGrade.asking');
    driver.send({ type: 'goBack' }).send({ type: 'goBack' });
    expect(driver.name).toBe('fill.fuelInTank.asking');
    driver.goodUntil('fill.fuelGrade.asking').reply('fuelRight');
    expect(driver.name).toBe('fill.fuelGrade.readingBack');
  });
});

describe('skipping', () => {
  it('is possible exactly where the profile allows it', () => {
    for (const [profile, from] of [
      [demoSix, moments],
      [demoFour, firstMoments(new Driver(demoFour))],
    ] as const) {
      const allowed = from
        .filter(moment => !moment.moment.hasTag('critical'))
        .filter(moment => moment.fork().send({ type: 'skip' }).name.endsWith('.skipping'))
        .map(({ context }) => context.step);
      expect(allowed.sort()).toEqual([...profile.allowedSkips].sort());
    }
  });

  it('of a step that opens a gate is never allowed', () => {
    const gated = procedureFor(demoSix).flatMap(step => (step.gate ? [step.id] : []));
    for (const skip of [...demoSix.allowedSkips, ...demoFour.allowedSkips]) expect(gated).not.toContain(skip);
  });

  const skipping = () => new Driver(demoSix).goodUntil('prime.strokes.asking').send({ type: 'skip' });

  it('needs a reason, which goes on the record with its person', () => {
    const skipped = skipping().reply('reasonDoneBefore');
    expect(skipped.name).toBe('prime.firm.together');
    expect(skipped.context.skips).toEqual([
      { step: 'prime.strokes', reason: 'reasonDoneBefore', by: 'technician' },
    ]);
    expect(skipped.last.notes).toContainEqual({
      kind: 'skipped',
      data: { step: 'prime.strokes', reason: 'reasonDoneBefore', by: 'technician' },
    });
  });

  it('takes a reason that is typed, but not an empty one', () => {
    expect(skipping().send({ type: 'reason', text: '  ' }).name).toBe('prime.strokes.skipping');
    const typed = skipping().send({ type: 'reason', text: 'pump was primed on the bench' }, { via: 'keys' });
    expect(typed.context.skips[0]?.reason).toBe('pump was primed on the bench');
  });

  it('can be thought better of', () => {
    const back = skipping().reply('notYet');
    expect(back.name).toBe('prime.strokes.asking');
    expect(back.context.skips).toEqual([]);
  });

  it('is not decided by a voice that was misunderstood three times', () => {
    const driver = skipping();
    for (const _ of [1, 2, 3]) driver.send({ type: 'unclear' });
    expect(driver.fork().reply('reasonDoneBefore').name).toBe('prime.strokes.skipping');
    expect(driver.reply('reasonDoneBefore', { via: 'keys' }).name).toBe('prime.firm.together');
  });

  it('stays an open item for the supervisor at the end', () => {
    const atEnd = skipping().reply('reasonDoneBefore').goodUntil('signOff.openItems.asking');
    expect(atEnd.context.lastSaid?.values).toEqual({ items: { list: [{ step: 'prime.strokes' }] } });
  });

  it('is undone by going back, and then no open item any more', () => {
    const back = skipping().reply('reasonDoneBefore').send({ type: 'goBack' });
    expect(back.name).toBe('prime.strokes.asking');
    expect(back.context.skips).toEqual([]);
  });
});
