import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildDocument } from '../../src/report/document/build.ts';
import type { ReportModel } from '../../src/report/model.ts';
import { summarize } from '../../src/report/summarize.ts';
import { goUntil, type Rig } from '../helpers/session-rig.ts';
import { inputOf, sessionFor } from './support.ts';

async function modelOf(run: (rig: Rig) => Promise<void>): Promise<ReportModel> {
  const rig = await sessionFor(join(mkdtempSync(join(tmpdir(), 'story-')), 'log.jsonl'));
  await run(rig);
  await rig.record.close();
  return summarize(await inputOf(rig.path));
}

const leadOf = (model: ReportModel) =>
  buildDocument(model, 'us').blocks.find(block => block.type === 'lead')?.text ?? '';

describe('the story of a start in which all went well', () => {
  let model: ReportModel;
  beforeAll(async () => {
    model = await modelOf(rig => goUntil(rig));
  });

  test('is signed off, with every gate met and nothing open', () => {
    expect(model.trust).toMatchObject({ sound: true, notUnderstood: [] });
    expect(model.trust.replayFault).toBeUndefined();
    expect(model.gates.filter(({ met }) => !met)).toEqual([]);
    expect(model.openItems).toEqual([]);
    expect(leadOf(model)).toMatch(/^Signed off after 4 h \d+ min: all \d+ gates met, no stop but the drills/);
  });

  test('goes through all phases in their order', () => {
    const phases = [...new Set(model.timeLine.phases.map(({ phase }) => phase))];
    expect(phases).toEqual([
      'job',
      'fill',
      'prime',
      'walkRound',
      'barOver',
      'noFuelCrank',
      'keyOn',
      'firstFire',
      'firstRun',
      'checks',
      'warmUp',
      'sweeps',
      'shutdown',
      'signOff',
    ]);
  });

  test('cranks twice without fuel and twice with, for a short first run and the long one', () => {
    expect(model.timeLine.engine?.map(({ engine }) => engine)).toEqual([
      'cranking',
      'cranking',
      'cranking',
      'running',
      'cranking',
      'running',
    ]);
  });

  test('keeps both drills apart from real stops', () => {
    expect(model.stops.map(({ drill, by }) => [drill, by])).toEqual([
      [true, 'technician'],
      [true, 'second'],
    ]);
  });

  test('holds each reading against limits by a rule that names its source', () => {
    const judged = model.readings.filter(({ verdict }) => verdict);
    expect(judged.length).toBeGreaterThan(20);
    for (const { verdict } of judged) {
      // The cap is opened at the second of two looks.
      if (verdict?.why !== 'coolOnce') expect(verdict?.met).toBe(true);
      expect(verdict?.rule).toBeTruthy();
      expect(verdict?.source).toBeTruthy();
    }
  });

  test('gives each value of a series the time at which it was said', () => {
    const idle = model.readings.filter(({ quantity }) => quantity === 'engineSpeed');
    expect(idle.map(({ verdict }) => verdict !== undefined)).toEqual([false, true]);
    expect(idle.map(({ timeMs }) => timeMs - (idle[0]?.timeMs ?? 0))).toEqual([0, 1500]);
  });

  test('keeps every hold for as long as it was planned', () => {
    const holds = model.holds?.filter(({ kind }) => kind === 'hold') ?? [];
    expect(holds.length).toBeGreaterThan(3);
    for (const { fromMs, toMs, plannedMs, kept } of holds) {
      expect(kept).toBe(true);
      expect(toMs - fromMs).toBeGreaterThanOrEqual(plannedMs);
    }
  });
});

describe('the story of a start with mishaps', () => {
  let model: ReportModel;
  beforeAll(async () => {
    model = await modelOf(async rig => {
      await rig.type('mumble');
      await goUntil(rig, 'fill.coolantBleed.counting');
      await rig.pass(20_000);
      await rig.type('hold');
      await rig.pass(45_000);
      await rig.type('continue');
      await goUntil(rig, 'fill.coolantFreezePoint.asking');
      await rig.type('skip this');
      await rig.type('not fitted');
      await goUntil(rig, 'noFuelCrank.batteryLoad.readingBack');
      await rig.type('wrong');
      await goUntil(rig, 'checks.oilPressure.asking');
      await rig.type('10');
      await rig.type('correct');
      await rig.pass(4000);
      for (const reply of ['all is off', 'correct', 'ready']) await rig.type(reply);
      await goUntil(rig);
    });
  });

  test('tells what was misheard, why it did not count, and what counted then', () => {
    expect(model.misheard.map(({ text, reason, repaired }) => [text, reason, repaired?.text])).toEqual([
      ['mumble', 'outOfGrammar', 'card is right'],
      ['wrong', 'deniedAtReadBack', '10.4'],
    ]);
  });

  test('tells the pause of a hold apart from the time that it was kept', () => {
    const bleed = model.holds?.find(({ step }) => step === 'fill.coolantBleed');
    expect(bleed).toMatchObject({ pausedMs: 45_000, kept: true });
    expect((bleed?.toMs ?? 0) - (bleed?.fromMs ?? 0)).toBe((bleed?.plannedMs ?? 0) + 45_000);
  });

  test('keeps a skipped step as an open item, with its reason', () => {
    expect(model.skips).toMatchObject([{ step: 'fill.coolantFreezePoint', reason: 'reasonNotFitted' }]);
    expect(model.openItems).toContainEqual({
      kind: 'skip',
      step: 'fill.coolantFreezePoint',
      reason: 'reasonNotFitted',
    });
  });

  test('tells the stop by a reading outside its limits, its cause and what was done again', () => {
    const stop = model.stops.find(({ drill }) => !drill);
    expect(stop).toMatchObject({ trigger: 'reading', cause: 'noOilPressure', step: 'checks.oilPressure' });
    expect(stop?.again).toContain('noFuelCrank.untilPressure');
    expect(stop?.wentOnMs).toBeGreaterThan(stop?.timeMs ?? 0);
  });

  test('keeps the reading that stopped the engine, with its margin below zero', () => {
    const gate = model.gates.find(({ gate }) => gate === 'oilPressureShown');
    const step = gate?.readings.find(({ step }) => step === 'checks.oilPressure');
    expect(step?.failedBefore).toHaveLength(1);
    expect(step?.failedBefore[0]?.verdict?.margin).toBeLessThan(0);
    expect(step?.last.verdict?.met).toBe(true);
  });
});

test('a session that was stopped in its second phase says so in one line, and which gates are open', async () => {
  const model = await modelOf(async rig => {
    await goUntil(rig, 'fill.coolantFilled.asking');
    for (const reply of ['stop', 'all is off', 'correct', 'coolant leak', 'correct']) await rig.type(reply);
  });
  expect(leadOf(model)).toMatch(
    /^Stopped and not gone on with .* in phase 2 of 14, Fill: coolant leak\. The engine did not run\.$/,
  );
  expect(model.gates.find(({ gate }) => gate === 'peopleSafe')?.met).toBe(true);
  expect(model.openItems).toContainEqual({ kind: 'gate', gate: 'coolantReady' });
});
