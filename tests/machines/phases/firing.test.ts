import { describe, expect, it } from 'vitest';
import type { Context } from '../../../machines/context.ts';
import { RAW_WATER_WITHIN_S } from '../../../machines/phases/raw-water.ts';
import type { Gate } from '../../../machines/vocabulary.ts';
import type { StepId } from '../../../prompts/types.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { asksOf, idsOf, met, stepOf } from '../helpers/asks.ts';
import { firing } from '../helpers/gates-by-hand.ts';
import { changed, demoBoat, demoFour, demoGenset, demoSix } from '../helpers/profiles.ts';
import { knowing } from '../limits/known.ts';

const crank = {
  engine: 'cranking',
  until: 'fired',
  readBack: false,
  giveUp: { cause: 'noStart' },
};
const pressure = {
  ok: 'pressureGood',
  engine: 'running',
  gate: 'oilPressureShown',
  within: { cause: 'noOilPressure' },
  trouble: { reply: 'noOilPressure', cause: 'noOilPressure' },
};
const lampsRunning = {
  engine: 'running',
  groups: ['firstLampsRunning', 'secondLampsRunning', 'thirdLampsRunning'],
  expected: 'running',
  wrong: 'faultCode',
  gate: 'oilPressureShown',
};
const needs = ['engineFired'];

/** A session in which these codes were read at its begin. */
const withCodes = (profile: Profile, ...codes: readonly (readonly [spn: number, fmi: number])[]): Context =>
  knowing(profile, {}, { faults: codes.map(([spn, fmi]) => ({ spn, fmi, seenMs: 0 })) });
/** By demo-six 157/18 is watched for a minute, 97/15 may stand. */
const WATCHED = [157, 18] as const;
const MAY_GO_ON = [97, 15] as const;

describe('the first fire', () => {
  it('is followed by oil pressure, eyes and ears, lamps, and codes that may clear', () => {
    expect(asksOf(demoFour, 'firstFire').slice(0, 5)).toStrictEqual([
      { id: 'firstFire.crank', ...crank, needs: firing, gate: 'engineFired' },
      { id: 'firstFire.oilPressure', ...pressure, needs },
      {
        id: 'firstFire.eyes',
        by: 'second',
        engine: 'running',
        needs,
        gate: 'nothingAmiss',
        points: [
          { id: 'anyLeak', cause: null },
          { id: 'noise', cause: 'looseOrNoise' },
          { id: 'smoke', cause: 'smokeOrFire' },
        ],
        together: { from: 'noise', ok: 'soundAndSmoke' },
      },
      { id: 'firstFire.lamps', ...lampsRunning, needs, lamps: demoFour.lamps },
      {
        id: 'firstFire.transient',
        engine: 'running',
        needs,
        ok: 'faultCleared',
        timeUp: { cause: 'faultCode' },
      },
    ]);
  });

  const has = (profile: Profile) => stepOf(profile, 'firstFire.crank', 'crank').needs;

  it.each<[Gate, Profile, Profile]>([
    ['heaterHoldDone', demoSix, changed(demoSix, { heater: null })],
    ['regenerationOff', demoGenset, changed(demoGenset, { afterTreatment: 'none' })],
    ['rawWaterShut', demoBoat, changed(demoBoat, { exhaust: { kind: 'dry' } })],
    ['inManual', demoGenset, demoBoat],
  ])('waits for %s where the engine has what it is for, and only there', (gate, withIt, withoutIt) => {
    expect(has(withIt)).toContain(gate);
    expect(has(withoutIt)).not.toContain(gate);
  });

  it.each(['firstFire.crank', 'firstRun.restart'] as const)('%s is made in three bursts at most', id => {
    const step = stepOf(demoSix, id, 'crank');
    const context = knowing(demoSix, {});
    const { longestBurstS } = demoSix.starter;
    expect(step.burst(context)).toBe(longestBurstS);
    expect(step.giveUp.seconds(context)).toBe(3 * longestBurstS);
  });

  it.each(['firstFire.crank', 'firstRun.restart'] as const)(
    '%s tells beforehand how soon pressure has to show, and where raw water is let in, whose hand is on its cock',
    id => {
      const told = (profile: Profile) => stepOf(profile, id, 'crank').announces?.(knowing(profile, {}));
      const inTime = { line: 'pressureInTime', values: { time: { unit: 's', si: 8 } } };
      expect(told(demoSix)).toEqual([inTime]);
      expect(told(demoBoat)).toEqual([{ line: 'rawWaterAtFired', values: { at: 'raw water cock' } }, inTime]);
    },
  );

  it.each(['firstFire.oilPressure', 'firstRun.oilPressure'] as const)(
    '%s shows within the seconds of the profile, since the engine runs',
    id => {
      const { within } = stepOf(demoSix, id, 'confirm');
      if (!within) throw new Error('It has a limit.');
      const context = knowing(demoSix, {}, { runsSinceMs: 5000 });
      expect(within.seconds(context)).toBe(8);
      expect(within.firstSinceMs?.(context)).toBe(5000);
      expect(within.firstSinceMs?.(knowing(demoSix, {}))).toBeUndefined();
      expect(met(within.judge, context, 8, 8.1)).toEqual([true, false]);
    },
  );
});

describe('a code that may clear by itself', () => {
  const step = stepOf(demoSix, 'firstFire.transient', 'watch');

  it('is watched where there is one, and named', () => {
    expect(step.when?.(withCodes(demoSix))).toBe(false);
    expect(step.when?.(withCodes(demoSix, MAY_GO_ON))).toBe(false);
    const context = withCodes(demoSix, WATCHED, MAY_GO_ON);
    expect(step.when?.(context)).toBe(true);
    expect(step.values?.(context)).toEqual({
      fault: { list: [{ code: { spn: 157, fmi: 18, seenMs: 0 } }] },
    });
  });

  it('is looked at each quarter of a minute, for no longer than the profile lets it stand', () => {
    const context = withCodes(demoSix, WATCHED);
    expect(step.everyS(context)).toBe(15);
    expect(step.atLeastS(context)).toBe(0);
    expect(step.timeUp.seconds(context)).toBe(60);
  });

  it('of several the shortest time counts, and each of them still stands while it is shown', () => {
    const [rule] = demoSix.faults;
    if (!rule) throw new Error('The profile has a rule.');
    const profile = changed(demoSix, {
      faults: [...demoSix.faults, { ...rule, spn: 158, watchS: 20 }],
    });
    const two = withCodes(profile, WATCHED, [158, 18]);
    const { timeUp, stillShown } = stepOf(profile, 'firstFire.transient', 'watch');
    expect(timeUp.seconds(two)).toBe(20);
    expect(stillShown?.(two, [{ spn: 158, fmi: 18 }])).toEqual([{ spn: 158, fmi: 18 }]);
  });

  it('still stands while the bus shows that very code, and not another', () => {
    const context = withCodes(demoSix, WATCHED, MAY_GO_ON);
    const shown = [
      { spn: 157, fmi: 18 },
      { spn: 157, fmi: 17 },
      { spn: 156, fmi: 18 },
      { spn: 97, fmi: 15 },
    ];
    expect(step.stillShown?.(context, shown)).toEqual([{ spn: 157, fmi: 18 }]);
  });

  it('has the warning lamp looked at once more after it, and only then', () => {
    const lamp = stepOf(demoSix, 'firstFire.warningLamp', 'lamps');
    expect(lamp.when?.(withCodes(demoSix, WATCHED))).toBe(true);
    expect(lamp.when?.(withCodes(demoSix))).toBe(false);
    expect(lamp.lamps).toHaveLength(1);
    expect(asksOf(demoSix, 'firstFire').at(-1)).toStrictEqual({
      id: 'firstFire.warningLamp',
      ...lampsRunning,
      needs,
      lamps: lamp.lamps,
    });
    const without = changed(demoSix, { lamps: demoSix.lamps.filter(({ id }) => id !== lamp.lamps[0]?.id) });
    expect(idsOf(without, 'firstFire')).not.toContain('firstFire.warningLamp');
  });
});

describe('the first run', () => {
  it('is short, then off, dipstick and a look round, and only then fired again', () => {
    const running = { engine: 'running', needs: ['engineFired', 'nothingAmiss'] };
    expect(asksOf(demoSix, 'firstRun')).toStrictEqual([
      { id: 'firstRun.run', ...running },
      {
        id: 'firstRun.keyOff',
        ok: 'engineOff',
        ...running,
        words: { off: { line: 'keyOff', values: {} } },
        patience: 'hunt',
        standing: true,
        trouble: { reply: 'stillRunning', cause: 'overspeed' },
      },
      { id: 'firstRun.drain' },
      { id: 'firstRun.oilLevel', ok: 'levelGood', gate: 'firstRunSeen', dipstick: true },
      {
        id: 'firstRun.look',
        by: 'second',
        gate: 'firstRunSeen',
        points: [
          { id: 'fuelJoints', cause: 'fuelLeak' },
          { id: 'coolantJoints', cause: 'coolantLeak' },
          { id: 'oilJoints', cause: 'oilLeak' },
        ],
      },
      {
        id: 'firstRun.restart',
        ...crank,
        needs: [...stepOf(demoSix, 'firstFire.crank', 'crank').needs, 'firstRunSeen'],
        words: { on: { line: 'keyOn', values: {} } },
        gate: 'restarted',
      },
      { id: 'firstRun.oilPressure', ...pressure, needs: ['restarted'] },
    ]);
  });

  it('is left out where the maker wants none, and the long run does not wait for it', () => {
    const none = changed(demoSix, { firstRun: null });
    expect(idsOf(none, 'firstRun')).toEqual([]);
    const needed = ['engineFired', 'nothingAmiss'];
    expect(stepOf(none, 'checks.idle', 'reading').needs).toEqual(needed);
    expect(stepOf(demoSix, 'checks.idle', 'reading').needs).toEqual([...needed, 'restarted']);
  });

  it('lasts as long as the profile says, and so does the oil on its way back', () => {
    const firstRun = { runS: 90, drainS: 240 };
    const profile = changed(demoSix, { firstRun });
    const context = knowing(profile, {});
    expect(stepOf(profile, 'firstRun.run', 'hold').seconds(context)).toBe(90);
    expect(stepOf(profile, 'firstRun.drain', 'hold').seconds(context)).toBe(240);
    const set = changed(demoGenset, { firstRun });
    expect(stepOf(set, 'firstRun.runUnloaded', 'hold').seconds(knowing(set, {}))).toBe(90);
    expect(idsOf(set, 'firstRun')).not.toContain('firstRun.run');
  });
});

describe('raw water of a wet exhaust', () => {
  it.each<[StepId, readonly Gate[], Gate]>([
    ['firstFire.rawWater', ['engineFired'], 'nothingAmiss'],
    ['firstRun.rawWaterOpen', ['restarted'], 'oilPressureShown'],
  ])('%s flows, the second person says, or the engine is stopped', (id, needed, gate) => {
    const step = stepOf(demoBoat, id, 'confirm');
    expect(step).toMatchObject({
      ok: 'waterFlows',
      by: 'second',
      engine: 'running',
      needs: needed,
      gate,
      trouble: { reply: 'staysDry', cause: 'overheating', named: true },
      within: { cause: 'overheating' },
    });
    expect(step.values?.(knowing(demoBoat, {}))).toEqual({ at: 'raw water cock' });
    expect(idsOf(demoSix, id.split('.')[0] ?? '')).not.toContain(id);
  });

  it('comes within half a minute of the end of the last burst: a dry impeller is ruined', () => {
    const { within } = stepOf(demoBoat, 'firstFire.rawWater', 'confirm');
    if (!within) throw new Error('It has a limit.');
    const bursts = [
      { step: 'noFuelCrank.holds', startMs: 0, endMs: 5000 },
      { step: 'firstFire.crank', startMs: 20_000, endMs: 24_000 },
      { step: 'firstFire.crank', startMs: 60_000, endMs: 64_000 },
    ] as const;
    const context = knowing(demoBoat, {}, { bursts });
    expect(RAW_WATER_WITHIN_S).toBe(30);
    expect(within.seconds(context)).toBe(30);
    expect(within.sinceMs?.(context)).toBe(64_000);
    expect(within.sinceMs?.(knowing(demoBoat, {}))).toBeUndefined();
    expect(met(within.judge, context, 30, 30.1, Number.NaN)).toEqual([true, false, false]);
    expect(within.judge(context, 30)).toMatchObject({
      value: {
        unit: 's',
        rule: {
          id: 'raw-water-in-time',
          source: expect.stringMatching(/^common practice, no published source/),
          validity: 'raw water pumps with a rubber impeller',
        },
      },
    });
  });

  it('is shut before each crank with fuel, by the name of its cock', () => {
    for (const [id, gate] of [
      ['keyOn.rawWater', 'rawWaterShut'],
      ['firstRun.rawWater', 'firstRunSeen'],
    ] as const) {
      const step = stepOf(demoBoat, id, 'confirm');
      expect(step).toMatchObject({ ok: 'valveClosed', by: 'technician', engine: 'off', gate });
      expect(step.values?.(knowing(demoBoat, {}))).toEqual({ at: 'raw water cock' });
    }
  });
});
