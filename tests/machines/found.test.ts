import { describe, expect, it } from 'vitest';
import { findingsAt } from '../../machines/findings.ts';
import type { Cause, InspectPoint } from '../../machines/vocabulary.ts';
import type { ReplyId } from '../../prompts/types.ts';
import { ofKind } from '../../src/record/vocabulary/index.ts';
import type { Driver } from './helpers/driver.ts';
import { demoSix } from './helpers/profiles.ts';
import { goOn, isDone, sessionAt } from './limits/sessions.ts';

/** Each point of the leak check at the running engine, in its order, with the cause that anything there stops for. */
const points: readonly (readonly [point: InspectPoint, cause: Cause])[] = [
  ['fuelJoints', 'fuelLeak'],
  ['coolantJoints', 'coolantLeak'],
  ['oilJoints', 'oilLeak'],
  ['boots', 'looseOrNoise'],
  ['hiss', 'looseOrNoise'],
  ['smellAndSmoke', 'smokeOrFire'],
];

/** At a point of a check, each thing asked by itself. */
const at = (step: 'checks.leaks' | 'firstFire.eyes', item: number): Driver => {
  const driver = sessionAt(demoSix, `${step}.item1`);
  for (let done = 1; done < item; done += 1) driver.reply('pointGood');
  if (driver.name.endsWith('.group1')) driver.reply('oneByOne');
  return goOn(driver, `${step}.item${item}`);
};

/** The same, so many seconds after the engine fired. */
function firedAgo(driver: Driver, seconds: number): Driver {
  const firedMs = driver.context.bursts.findLast(({ step }) => step === 'firstFire.crank')?.endMs ?? 0;
  driver.nowMs = firedMs + seconds * 1000;
  return driver;
}

const found = (driver: Driver) => driver.notes.findLast(ofKind('found'))?.data;

describe('what stops a running engine at the word of whoever sees it', () => {
  const stopping = points.flatMap(([point, cause], index) =>
    findingsAt[point].flatMap(({ reply, does }) =>
      // A knock is no matter of the point at which it is heard.
      does === 'stops' ? [[point, reply, reply === 'knocking' ? 'knocking' : cause, index + 1] as const] : [],
    ),
  );

  it.each([
    ['checks.leaks', 'knocking', 'knocking'],
    ['checks.leaks', 'squealing', 'looseOrNoise'],
    ['checks.leaks', 'thickSmoke', 'smokeOrFire'],
    // At the boots it is air, at the exhaust it may burn.
    ['checks.leaks', 'leak', null],
    ['firstFire.eyes', 'knocking', 'knocking'],
    ['firstFire.eyes', 'thickSmoke', 'smokeOrFire'],
  ] as const)('is that, too, where things are asked together: %s, %s', (step, reply, cause) => {
    const driver = sessionAt(demoSix, `${step}.group1`);
    driver.reply(reply, { by: 'second' });
    expect(driver.name).toMatch(/^stopped\./);
    expect(driver.context.stop?.cause ?? null).toBe(cause);
  });

  it('is a leak at each point, and what burns, knocks or squeals', () => {
    expect(stopping.map(([point, reply]) => `${point} ${reply}`)).toEqual([
      'fuelJoints weep',
      'fuelJoints leak',
      'fuelJoints spray',
      'coolantJoints leak',
      'coolantJoints spray',
      'oilJoints leak',
      'oilJoints spray',
      'boots leak',
      'hiss leak',
      'hiss knocking',
      'hiss squealing',
      'smellAndSmoke leak',
      'smellAndSmoke thickSmoke',
    ]);
  });

  it.each(stopping)('at %s: %s, for %s', (point, reply, cause, item) => {
    const driver = at('checks.leaks', item).reply(reply, { by: 'technician', via: 'voice' });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop?.cause).toBe(cause);
    expect(found(driver)).toMatchObject({ step: 'checks.leaks', point, finding: reply, does: 'stops' });
    const means = findingsAt[point].find(each => each.reply === reply)?.means;
    expect(driver.last.said.find(({ line }) => line === means)?.priority).toBe('hazard');
  });
});

describe('a damp joint of coolant or oil', () => {
  it.each([2, 3])('passes nothing and stops nothing: it is dabbed and looked at again (%d)', item => {
    const driver = at('checks.leaks', item);
    const { name } = driver;
    driver.reply('weep');
    expect(driver.name).toBe(name);
    expect(driver.lines).toContain('weepMeans');
    expect(found(driver)).toMatchObject({ point: points[item - 1]?.[0], finding: 'weep', does: 'lookAgain' });
    expect(driver.context.openItems).toEqual([]);
  });
});

describe('a damp joint of fuel', () => {
  it('stops the engine, with the leak as its cause: nobody wipes where a spray begins', () => {
    const driver = at('checks.leaks', 1).reply('weep', { by: 'technician', via: 'voice' });
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop?.cause).toBe('fuelLeak');
    expect(driver.last.said).toContainEqual(
      expect.objectContaining({ line: 'fuelWeepMeans', priority: 'hazard' }),
    );
  });

  it('is what any weep may be that is seen from afar: it stops, and its cause is asked', () => {
    const driver = at('firstFire.eyes', 1).reply('weep');
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop?.cause).toBeNull();
    expect(driver.lines).toContain('unknownWeepMeans');
  });

  it('stops no less in the heat soak, with the engine off', () => {
    const driver = sessionAt(demoSix, 'shutdown.firstLook.item2').reply('weep');
    expect(driver.context.stop?.cause).toBe('fuelLeak');
  });

  it.each(['weep', 'leak', 'spray'] as const)(
    'after a stop for a fuel %s everybody hears that the rail holds its pressure',
    reply => {
      const driver = at('checks.leaks', 1).reply(reply).reply('allOff', { via: 'keys' });
      expect(driver.lines).not.toContain('railHolds');
      driver.reply('yes');
      expect(driver.last.said).toContainEqual(
        expect.objectContaining({ line: 'railHolds', priority: 'hazard' }),
      );
    },
  );
});

describe('noise and smoke of a cold engine', () => {
  const cold: readonly (readonly [ReplyId, item: number, means: string, stays: string, cause: Cause])[] = [
    ['valveNoise', 2, 'valveNoiseMeans', 'valveNoiseStaysMeans', 'looseOrNoise'],
    ['whiteSmoke', 3, 'whiteSmokeMeans', 'whiteSmokeStaysMeans', 'coolantInCylinder'],
    ['blueSmoke', 3, 'blueSmokeMeans', 'blueSmokeStaysMeans', 'oilLeak'],
    ['blackSmoke', 3, 'blackSmokeMeans', 'blackSmokeStaysMeans', 'other'],
  ];

  it.each(cold)('%s: five minutes after it fired is read back, and stays open', (reply, item, means) => {
    const driver = firedAgo(at('firstFire.eyes', item), 299).reply(reply);
    expect(driver.name).not.toMatch(/^stopped/);
    expect(driver.last.said.find(({ line }) => line === means)?.priority).toBe('notice');
    expect(found(driver)).toBeUndefined();
    driver.reply('yes');
    expect(found(driver)).toMatchObject({
      step: 'firstFire.eyes',
      finding: reply,
      does: 'open',
      afterS: 301,
    });
    expect(driver.context.openItems).toEqual([
      { step: 'firstFire.eyes', finding: reply, by: driver.last.event.by },
    ]);
    expect(driver.notes.findLast(ofKind('leftOpen'))?.data).toMatchObject({
      step: 'firstFire.eyes',
      finding: reply,
    });
  });

  it('is timed from when it fired last: while it stood after its short run it grew no warmer', () => {
    const driver = at('checks.leaks', 6);
    const { bursts } = driver.context;
    expect(bursts.at(-1)?.step).toBe('firstRun.restart');
    const firedMs = bursts.at(-1)?.endMs ?? Number.NaN;
    const firstMs = bursts.findLast(({ step }) => step === 'firstFire.crank')?.endMs ?? Number.NaN;
    expect(driver.nowMs - firstMs).toBeGreaterThan(300_000);
    expect(driver.nowMs - firedMs).toBeLessThan(300_000);
    for (const reply of ['whiteSmoke', 'blueSmoke', 'blackSmoke'] as const)
      expect(driver.fork([]).reply(reply, { by: 'second' }).lines).toContain('readBackReply');
    driver.reply('leak');
    expect(found(driver)).toMatchObject({ afterS: (driver.nowMs - firedMs) / 1000 });
  });

  it.each(cold)('%s: later means something else, and stops', (reply, item, _, stays, cause) => {
    const driver = firedAgo(at('firstFire.eyes', item), 299.001).reply(reply);
    expect(driver.name).toBe('stopped.makingSafe');
    expect(driver.context.stop?.cause).toBe(cause);
    expect(driver.last.said.find(({ line }) => line === stays)?.priority).toBe('hazard');
    expect(found(driver)).toMatchObject({ finding: reply, does: 'stops' });
  });

  it.each(cold)('%s: denied at its read-back is not found', (reply, item) => {
    const driver = firedAgo(at('firstFire.eyes', item), 60);
    const { name } = driver;
    driver.reply(reply).reply('no');
    expect(driver.name).toBe(name);
    expect(driver.context.openItems).toEqual([]);
    expect(found(driver)).toBeUndefined();
  });

  it('of an engine that never fired by the record counts as late', () => {
    const driver = at('firstFire.eyes', 2);
    driver.moment = driver.machine.resolveState({
      value: driver.moment.value,
      context: { ...driver.context, bursts: [], runsSinceMs: null },
    });
    driver.reply('valveNoise');
    expect(driver.context.stop?.cause).toBe('looseOrNoise');
    expect(found(driver)).toMatchObject({ afterS: null });
  });
});

describe('a check in which something was left open', () => {
  it('is passed all the same once the rest of it is good', () => {
    const driver = firedAgo(at('firstFire.eyes', 2), 60).reply('valveNoise').reply('yes');
    expect(isDone(driver, 'firstFire.eyes')).toBe(false);
    driver.reply('pointGood');
    while (driver.context.step === 'firstFire.eyes') driver.good();
    expect(isDone(driver, 'firstFire.eyes')).toBe(true);
    expect(driver.context.openItems).toHaveLength(1);
  });
});
