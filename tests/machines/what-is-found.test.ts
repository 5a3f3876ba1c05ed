import { describe, expect, it } from 'vitest';
import type { Context, Fault } from '../../machines/context.ts';
import { blockingFaults, judgeSessionFault, unknownFaults, watchedFaults } from '../../machines/faults.ts';
import { findingsAt } from '../../machines/findings.ts';
import { isOpenItem, leaveOpen, settle } from '../../machines/open-items.ts';
import type { Look } from '../../machines/toolkit.ts';
import type { InspectPoint } from '../../machines/vocabulary.ts';
import { carriedOut } from './helpers/carried-out.ts';
import { demoSix } from './helpers/profiles.ts';
import { knowing } from './limits/known.ts';

const at = (known: Partial<Context> = {}): Look => ({
  context: knowing(demoSix, {}, known),
  event: { type: 'reply', id: 'leak', by: 'second', via: 'voice', atMs: 4000 },
});

describe('what eyes and ears find at a running engine', () => {
  const drips = {
    leak: ['stops', 'leakMeans', null],
    spray: ['stops', 'sprayMeans', null],
  } as const;
  const leaks = { weep: ['lookAgain', 'weepMeans', null], ...drips } as const;
  const hiss = { leak: ['stops', 'hissMeans', null] } as const;
  const noise = {
    valveNoise: ['open', 'valveNoiseMeans', null],
    knocking: ['stops', 'knockingMeans', 'knocking'],
    squealing: ['stops', 'squealingMeans', null],
  } as const;
  const smoke = {
    whiteSmoke: ['open', 'whiteSmokeMeans', null],
    blueSmoke: ['open', 'blueSmokeMeans', null],
    blackSmoke: ['open', 'blackSmokeMeans', null],
    thickSmoke: ['stops', 'thickSmokeMeans', null],
  } as const;

  /** By point and reply: what comes of it, what it means, and the cause where that is more than the point could say. */
  const found: Record<InspectPoint, Readonly<Record<string, readonly [string, string, string | null]>>> = {
    // Nobody knows of what it is, and under pressure a damp joint is the beginning of a spray: never waited for.
    anyLeak: { weep: ['stops', 'unknownWeepMeans', null], ...drips },
    fuelJoints: { weep: ['stops', 'fuelWeepMeans', null], ...drips },
    coolantJoints: leaks,
    oilJoints: leaks,
    boots: hiss,
    hiss: { ...hiss, ...noise },
    noise,
    smoke,
    smellAndSmoke: { leak: ['stops', 'smellMeans', null], ...smoke },
  };

  it.each(Object.entries(found))(
    'at %s is known by what it does, what it means and its cause',
    (point, rows) => {
      const findings = findingsAt[point as InspectPoint].map(finding => [
        finding.reply,
        [finding.does, finding.means, finding.does === 'open' ? null : (finding.cause ?? null)],
      ]);
      expect(Object.fromEntries(findings)).toEqual(rows);
    },
  );

  it.each([
    ['valveNoise', 'noise', 'valveNoiseStaysMeans', 'looseOrNoise'],
    ['whiteSmoke', 'smoke', 'whiteSmokeStaysMeans', 'coolantInCylinder'],
    ['blueSmoke', 'smoke', 'blueSmokeStaysMeans', 'oilLeak'],
    ['blackSmoke', 'smoke', 'blackSmokeStaysMeans', 'other'],
  ] as const)(
    '%s of a cold engine passes for five minutes, and stops it then',
    (reply, point, means, cause) => {
      const finding = findingsAt[point].find(each => each.reply === reply);
      expect(finding).toMatchObject({ until: { seconds: 300, means, cause } });
    },
  );
});

describe('what is left open', () => {
  const charge = { step: 'checks.charging', quantity: 'chargingVoltage', si: 13.1 } as const;
  const left = (item: Parameters<typeof leaveOpen>[0], known: Partial<Context> = {}) =>
    carriedOut([...leaveOpen(item)], at(known));

  it('stands on the list and on the record, with its value in its unit and who said so', () => {
    const before = { step: 'warmUp.watch', by: 'technician' } as const;
    const { context, notes } = left(() => charge, { openItems: [before] });
    expect(context.openItems).toStrictEqual([before, { ...charge, by: 'second' }]);
    expect(notes).toStrictEqual([
      {
        kind: 'leftOpen',
        data: { step: 'checks.charging', quantity: 'chargingVoltage', value: 13.1, unit: 'V', by: 'second' },
      },
    ]);
  });

  it('has what was found, or nothing but its step', () => {
    expect(left(() => ({ step: 'firstFire.eyes', finding: 'whiteSmoke' })).notes).toStrictEqual([
      { kind: 'leftOpen', data: { step: 'firstFire.eyes', finding: 'whiteSmoke', by: 'second' } },
    ]);
    expect(left(() => ({ step: 'warmUp.watch' })).notes).toStrictEqual([
      { kind: 'leftOpen', data: { step: 'warmUp.watch', by: 'second' } },
    ]);
    expect(left(() => ({ step: 'checks.charging', quantity: 'chargingVoltage' })).notes).toMatchObject([
      { data: { value: null, unit: 'V' } },
    ]);
  });

  it('comes off the list, and of it alone, once it has come right', () => {
    const others = [
      { step: 'checks.charging', by: 'technician' },
      { step: 'warmUp.watch', by: 'technician' },
    ] as const;
    const { context, notes } = carriedOut([...settle('warmUp.watch')], at({ openItems: others }));
    expect(context.openItems).toEqual([others[0]]);
    expect(notes).toEqual([{ kind: 'settled', data: { step: 'warmUp.watch' } }]);
    expect(isOpenItem(context, 'warmUp.watch')).toBe(false);
    expect(isOpenItem(context, 'checks.charging')).toBe(true);
  });
});

describe('a fault code that was read', () => {
  const fault = (spn: number, fmi: number, more: Partial<Fault> = {}): Fault => ({
    spn,
    fmi,
    seenMs: 0,
    ...more,
  });
  const decisionOf = (each: Fault, nowMs = 0, known: Partial<Context> = {}) =>
    judgeSessionFault(knowing(demoSix, {}, known), each, nowMs).decision;
  const fired = {
    done: ['firstFire.crank'],
    bursts: [{ step: 'firstFire.crank', startMs: 20_000, endMs: 30_000 }],
  } as const satisfies Partial<Context>;

  it('is judged as the profile says, with its reason', () => {
    expect(decisionOf(fault(100, 1))).toEqual({ decision: 'blocks', because: 'rule' });
    expect(decisionOf(fault(97, 15))).toEqual({ decision: 'mayGoOn', because: 'rule' });
    expect(judgeSessionFault(knowing(demoSix, {}), fault(100, 1), 0)).toMatchObject({
      code: { spn: 100, fmi: { number: 1 } },
      because: 'oil pressure below its floor',
    });
    // The rule is for this failure mode and no other.
    expect(judgeSessionFault(knowing(demoSix, {}), fault(100, 3), 0).because).toBe('');
    expect(decisionOf(fault(100, 3))).toEqual({ decision: 'blocks', because: 'unknown' });
  });

  it('that may clear has its minute from the fire on, and from when it was first seen', () => {
    const watched = (seenMs: number, nowMs: number, known: Partial<Context> = fired) =>
      decisionOf(fault(157, 18, { seenMs }), nowMs, known);
    expect(watched(0, 90_000, {})).toEqual({ decision: 'watch', leftS: 60 });
    expect(watched(0, 50_000)).toEqual({ decision: 'watch', leftS: 40 });
    expect(watched(0, 89_000)).toEqual({ decision: 'watch', leftS: 1 });
    expect(watched(0, 90_000)).toEqual({ decision: 'blocks', because: 'stillThere' });
    expect(watched(60_000, 90_000)).toEqual({ decision: 'watch', leftS: 30 });
    expect(watched(0, 10_000)).toEqual({ decision: 'watch', leftS: 60 });
    expect(watched(0, 90_000, { bursts: fired.bursts })).toEqual({ decision: 'watch', leftS: 60 });
  });

  it('that is unknown blocks until it is accepted, and then names who let it stand and why', () => {
    const accepted = { accepted: 'no such sensor' };
    expect(decisionOf(fault(5000, 7))).toEqual({ decision: 'blocks', because: 'unknown' });
    expect(decisionOf(fault(5000, 7, accepted))).toEqual({
      decision: 'mayGoOn',
      because: 'accepted',
      acceptance: { spn: 5000, fmi: 7, supervisor: 'U', reason: 'no such sensor' },
    });
    expect(decisionOf(fault(100, 1, accepted))).toMatchObject({ decision: 'blocks' });
  });

  it('that no code can be blocks, is not decoded, and nobody can accept it', () => {
    const impossible = fault(9_999_999, 7);
    expect(judgeSessionFault(knowing(demoSix, {}), impossible, 0)).toMatchObject({
      code: null,
      decision: null,
    });
    const context = knowing(
      demoSix,
      {},
      { faults: [impossible, fault(97, 15), fault(100, 1), fault(5000, 7)] },
    );
    expect(blockingFaults(context, 0).map(row => row.fault.spn)).toEqual([9_999_999, 100, 5000]);
    expect(unknownFaults(context, 0).map(row => row.fault.spn)).toEqual([5000]);
    expect(watchedFaults(context)).toEqual([]);
  });

  it('that is watched is told with its seconds, as of when it was first seen', () => {
    const context = knowing(demoSix, {}, { ...fired, faults: [fault(157, 18, { seenMs: 80_000 })] });
    expect(watchedFaults(context)).toEqual([{ fault: fault(157, 18, { seenMs: 80_000 }), watchS: 60 }]);
  });
});
