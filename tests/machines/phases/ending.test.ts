import { describe, expect, it } from 'vitest';
import type { Context } from '../../../machines/context.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { asksOf, idsOf, met, stepOf } from '../helpers/asks.ts';
import { changed, demoBoat, demoGenset, demoSix } from '../helpers/profiles.ts';
import { knowing } from '../limits/known.ts';

const running = { engine: 'running', needs: ['engineFired', 'oilPressureShown', 'noLeaks'] };
const coolantJoints = { id: 'coolantJoints', cause: 'coolantLeak' };
const fuelJoints = { id: 'fuelJoints', cause: 'fuelLeak' };
const oilJoints = { id: 'oilJoints', cause: 'oilLeak' };

describe('the shutdown', () => {
  it('is coolant, settling, key off, and then looks as the heat soaks', () => {
    const look = { by: 'second', gate: 'noLeaksAfter' };
    expect(asksOf(demoSix, 'shutdown')).toStrictEqual([
      {
        id: 'shutdown.coolant',
        quantity: 'coolantTemperature',
        outside: 'again',
        ...running,
        patience: 'hunt',
        bounds: { cause: 'overheating' },
      },
      { id: 'shutdown.settle', ...running },
      {
        id: 'shutdown.keyOff',
        ok: 'engineOff',
        ...running,
        words: { off: { line: 'keyOff', values: {} } },
        patience: 'hunt',
        standing: true,
        trouble: { reply: 'stillRunning', cause: 'overspeed' },
      },
      { id: 'shutdown.firstSoak' },
      { id: 'shutdown.firstLook', ...look, points: [coolantJoints, fuelJoints, oilJoints] },
      { id: 'shutdown.secondSoak' },
      { id: 'shutdown.secondLook', ...look, points: [coolantJoints] },
      { id: 'shutdown.thirdSoak' },
      { id: 'shutdown.thirdLook', ...look, points: [coolantJoints, oilJoints] },
    ]);
  });

  it('looks at all joints where it looks once', () => {
    const once = changed(demoSix, { shutdown: { ...demoSix.shutdown, heatSoakLooksAfterS: [300] } });
    expect(stepOf(once, 'shutdown.firstLook', 'inspect').points).toEqual([
      coolantJoints,
      fuelJoints,
      oilJoints,
    ]);
    expect(idsOf(once, 'shutdown')).not.toContain('shutdown.secondLook');
  });

  it('looks at the times of the profile, each counted from key-off', () => {
    const context = knowing(demoSix, {});
    const soak = (id: 'shutdown.firstSoak' | 'shutdown.secondSoak' | 'shutdown.thirdSoak') =>
      stepOf(demoSix, id, 'hold').seconds(context);
    expect(soak('shutdown.firstSoak')).toBe(120);
    expect(soak('shutdown.secondSoak')).toBe(420 - 120);
    expect(soak('shutdown.thirdSoak')).toBe(900 - 420);
  });

  it('settles for the time of the profile, also without load', () => {
    expect(stepOf(demoSix, 'shutdown.settle', 'hold').seconds(knowing(demoSix, {}))).toBe(180);
    expect(stepOf(demoGenset, 'shutdown.settleUnloaded', 'hold').seconds(knowing(demoGenset, {}))).toBe(120);
    expect(idsOf(demoGenset, 'shutdown')).not.toContain('shutdown.settle');
  });

  it('stops an engine that is too hot to be left running', () => {
    const { bounds } = stepOf(demoSix, 'shutdown.coolant', 'reading');
    if (!bounds) throw new Error('It has bounds.');
    const context = knowing(demoSix, { coldestNight: -8, altitude: 300 });
    expect(met(bounds.judge, context, 95, 120)).toEqual([true, false]);
  });
});

describe('the sign-off', () => {
  const levels = { gate: 'coldLevels', needs: ['coolEnough'] };
  const bottles = { together: { group: 'coldLevels', ok: 'coldFull' } };

  it('waits until it is cool, looks at the levels, retorques, and leaves the rest to the supervisor', () => {
    expect(asksOf(demoSix, 'signOff')).toStrictEqual([
      {
        id: 'signOff.cool',
        quantity: 'coolantTemperature',
        outside: 'again',
        byTime: true,
        gate: 'coolEnough',
      },
      { id: 'signOff.oilLevel', ok: 'levelGood', ...levels, dipstick: true },
      { id: 'signOff.coolantLevel', ok: 'coolantFull', ...levels, ...bottles },
      { id: 'signOff.steeringLevel', ok: 'steeringFull', ...levels, ...bottles },
      {
        id: 'signOff.retorque',
        groups: ['firstTorqued', 'secondTorqued', 'thirdTorqued'],
        items: demoSix.retorque,
        ok: 'torqued',
      },
      { id: 'signOff.openItems', ok: 'itemsNoted', by: 'supervisor' },
      {
        id: 'signOff.sign',
        ok: 'iSign',
        by: 'supervisor',
        gate: 'signature',
        needs: ['coldLevels', 'noLeaksAfter'],
      },
    ]);
  });

  it('opens a cap at the temperature of the profile, which it names, and at one look not yet', () => {
    const step = stepOf(demoSix, 'signOff.cool', 'reading');
    const context = knowing(demoSix, {});
    expect(step.judge(context, 45)).toMatchObject({ ok: false, line: 'coolOnce' });
    expect(step.judge(context, 45.1)).toMatchObject({ ok: false, line: 'notCoolYet' });
    expect(step.values?.(context)).toEqual({
      unit: { unitOf: 'coolantTemperature' },
      limit: { brief: 'coolantTemperature', si: 45 },
    });
  });

  it('asks for the coolant alone where the steering has no bottle', () => {
    const [level] = asksOf(demoBoat, 'signOff').slice(2);
    expect(level).toStrictEqual({ id: 'signOff.coolantLevel', ok: 'coolantFull', ...levels });
    expect(idsOf(demoBoat, 'signOff')).not.toContain('signOff.steeringLevel');
  });
});

describe('what was locked out for the start', () => {
  const { use } = demoGenset;
  if (use.kind !== 'generator') throw new Error('It is a generating set.');
  const givenBack = (profile: Profile) =>
    stepOf(profile, 'signOff.handBack', 'confirm').values?.(knowing(profile, {}));
  const set = {
    breaker: { line: 'breakerBack', values: { at: 'output breaker of the set' } },
    automatic: { line: 'automaticBack', values: { at: 'mode switch of the control panel' } },
    heater: { line: 'jacketHeaterBack', values: { at: 'plug of the jacket heater' } },
    regeneration: { line: 'regenerationBack', values: {} },
  };

  it('is given back before the signature, which waits for it; a set may start by itself from then on', () => {
    expect(stepOf(demoGenset, 'signOff.handBack', 'confirm')).toMatchObject({
      ok: 'handedBack',
      gate: 'handedBack',
      needs: ['coldLevels', 'noLeaksAfter'],
      by: 'technician',
      engine: 'off',
    });
    expect(givenBack(demoGenset)).toEqual({
      clear: { line: 'mayStartItself', values: {} },
      items: { list: Object.values(set) },
    });
    expect(stepOf(demoGenset, 'signOff.sign', 'confirm').needs).toContain('handedBack');
  });

  it('is the automatic start by its own name where there is no mode switch', () => {
    const profile = changed(demoGenset, { use: { ...use, autoStart: 'start panel', modeSwitch: null } });
    expect(givenBack(profile)).toMatchObject({
      items: { list: expect.arrayContaining([{ line: 'automaticBack', values: { at: 'start panel' } }]) },
    });
  });

  it('is only what this engine has', () => {
    const bare = changed(demoGenset, { jacketHeater: null, afterTreatment: 'none' });
    expect(givenBack(bare)).toMatchObject({ items: { list: [set.breaker, set.automatic] } });
    const heated = changed(demoSix, { jacketHeater: { at: 'plug of the jacket heater' } });
    expect(givenBack(heated)).toEqual({ clear: '', items: { list: [set.heater] } });
    const filtered = changed(demoSix, { afterTreatment: 'particulateFilter' });
    expect(givenBack(filtered)).toEqual({ clear: '', items: { list: [set.regeneration] } });
  });

  it.each([
    ['there is nothing', demoSix],
    ['it leaves the shop locked out', changed(demoGenset, { handsBack: false })],
  ])('is not given back where %s, and the signature does not wait for it', (_, profile) => {
    expect(idsOf(profile, 'signOff')).not.toContain('signOff.handBack');
    expect(stepOf(profile, 'signOff.sign', 'confirm').needs).toEqual(['coldLevels', 'noLeaksAfter']);
  });
});

describe('what the supervisor is told of before the signature', () => {
  const step = stepOf(demoSix, 'signOff.openItems', 'confirm');
  const left = (known: Partial<Context>) => step.values?.(knowing(demoSix, {}, known));

  it('is nothing where nothing was left', () => {
    expect(step.when?.(knowing(demoSix, {}))).toBe(false);
    expect(left({})).toEqual({ items: { list: [] } });
  });

  it.each<[string, Partial<Context>, unknown]>([
    [
      'a step that was skipped',
      { skips: [{ step: 'prime.strokes', reason: 'done before', by: 'technician' }] },
      { step: 'prime.strokes' },
    ],
    [
      'a value outside its limits',
      { openItems: [{ step: 'checks.charging', quantity: 'chargingVoltage', si: 13, by: 'technician' }] },
      {
        list: [{ step: 'checks.charging' }, { quantity: 'chargingVoltage', si: 13 }],
        joined: 'plain',
      },
    ],
    [
      'what was found',
      { openItems: [{ step: 'firstFire.eyes', finding: 'whiteSmoke', by: 'second' }] },
      { list: [{ step: 'firstFire.eyes' }, { reply: 'whiteSmoke' }], joined: 'plain' },
    ],
    [
      'what did not come in its time',
      { openItems: [{ step: 'warmUp.watch', by: 'technician' }] },
      { list: [{ step: 'warmUp.watch' }], joined: 'plain' },
    ],
    [
      'no value where nobody knows of what it is',
      { openItems: [{ step: 'checks.charging', si: 13, by: 'technician' }] },
      { list: [{ step: 'checks.charging' }], joined: 'plain' },
    ],
    [
      'a value that is known by its gauge alone',
      { openItems: [{ step: 'checks.charging', quantity: 'chargingVoltage', by: 'technician' }] },
      { list: [{ step: 'checks.charging' }], joined: 'plain' },
    ],
  ])('is %s', (_, known, item) => {
    expect(step.when?.(knowing(demoSix, {}, known))).toBe(true);
    expect(left(known)).toEqual({ items: { list: [item] } });
  });

  it('is a code that was accepted, and not one that may stand', () => {
    const accepted = { spn: 5000, fmi: 7, seenMs: 0, accepted: 'no such sensor' };
    const faults = [{ spn: 97, fmi: 15, seenMs: 0 }, accepted];
    expect(left({ faults })).toEqual({ items: { list: [{ code: accepted }] } });
    expect(step.when?.(knowing(demoSix, {}, { faults: [] }))).toBe(false);
  });
});
