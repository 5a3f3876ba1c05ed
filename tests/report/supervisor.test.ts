import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Block, ReportDocument } from '../../src/report/document/blocks.ts';
import { buildDocument } from '../../src/report/document/build.ts';
import { renderHtml } from '../../src/report/html/page.ts';
import type { ReportModel } from '../../src/report/model.ts';
import { summarize } from '../../src/report/summarize.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';
import { startWithMishaps } from './mishaps.ts';
import { inputOf } from './support.ts';

const folder = mkdtempSync(join(tmpdir(), 'report-'));
let model: ReportModel;
let report: ReportDocument;

beforeAll(async () => {
  const path = await startWithMishaps(join(folder, 'log.jsonl'), 'en');
  model = summarize(await inputOf(path));
  report = buildDocument(model, 'metric');
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const textOf = (blocks: readonly Block[]): string => JSON.stringify(blocks);
const sectionOf = (title: string): readonly Block[] => {
  const from = report.blocks.findIndex(block => block.type === 'section' && block.title === title);
  const rest = report.blocks.slice(from + 1);
  const to = rest.findIndex(block => block.type === 'section');
  return rest.slice(0, to < 0 ? undefined : to);
};

describe('for a supervisor the report', () => {
  test('tells stops unfolded, with the reading that called them, its limit and their cause', () => {
    const stops = textOf(sectionOf('Stops and their causes'));
    expect(stops).toContain('no oil pressure');
    expect(stops).toContain(
      'oil pressure 0.2\u00a0bar, limit at least 1.71\u00a0bar'.replaceAll('\u00a0', ' '),
    );
    expect(stops).toContain('To be done again: ');
  });

  test('folds misunderstandings behind how many there were, closed on a screen', () => {
    const [folded] = sectionOf('Misheard and repaired');
    expect(folded).toMatchObject({
      type: 'folded',
      summary: `${model.misheard.length} times, each put right in the same step.`,
    });
    const html = renderHtml(report);
    expect(html).toContain('<details><summary>');
    expect(html).not.toContain('<details open');
  });

  test('keeps readings that hold the work up apart from figures that are only calculated with', () => {
    const ungated = model.gates.filter(({ gate }) => gate === null);
    const stepsOf = (holdsUp: boolean) =>
      ungated.find(gate => gate.holdsUp === holdsUp)?.readings.map(({ step }) => step) ?? [];
    expect(stepsOf(true)).toEqual(expect.arrayContaining(['checks.idle', 'checks.charging', 'warmUp.watch']));
    expect(stepsOf(false)).toEqual(expect.arrayContaining(['job.ambient', 'job.altitude']));
    expect(textOf(sectionOf('Gates and readings'))).not.toContain('open no gate"');
  });

  test('says margins in words, and limits in the unit of what was held against them', () => {
    const gates = textOf(sectionOf('Gates and readings'));
    expect(gates).toContain('1.51 bar too low');
    expect(gates).toContain('to spare');
    // The coolant at key-off is held against the boiling point with what is yet to come out of the metal.
    expect(gates).toContain('held against the limit: 97 °C'.replace(' °', '\u00a0°'));
  });

  test('names who proved the emergency words, by which means and when', () => {
    const gates = textOf(sectionOf('Gates and readings'));
    expect(gates).toMatch(/Proved: technician by key at \d+:\d\d; second person by key at \d+:\d\d\./);
  });

  test('tells each rule in a sentence with its source', () => {
    const rules = textOf(sectionOf('Rules behind the limits'));
    expect(rules).toContain(
      'The oil pressure is not below the least for this speed and this oil temperature.',
    );
    for (const { verdict } of model.readings) expect(rules).not.toContain(`] ${verdict?.rule} `);
  });

  test('tells what could hardly be true, what it could have been, and who read it too', async () => {
    const run = await rig('demo-six', 'metric', join(folder, 'doubts.jsonl'), 'en');
    await run.session.begin();
    await goUntil(run, 'job.coldestNight.asking');
    await run.type('15');
    await run.type('15');
    expect(run.key()).toBe('job.coldestNight.vouching');
    await run.type('14');
    await run.type('correct');
    await run.record.close();
    const doubtful = summarize(await inputOf(join(folder, 'doubts.jsonl')));
    expect(doubtful.trust.replayFault).toBe(undefined);
    expect(doubtful.doubts).toMatchObject([
      { step: 'job.coldestNight', si: 15, max: 11, vouchedBy: 'second' },
    ]);
    const told = textOf(buildDocument(doubtful, 'metric').blocks).replaceAll('\u00a0', ' ');
    expect(told).toContain('Coldest night, 15 °C');
    expect(told).toContain('at most 11 °C');
    expect(told).toContain('taken: read by the second person too');
  });

  test('does not take "I sign" at the technician\'s keys for the supervisor\'s', () => {
    expect(model.signing).toEqual({ timeMs: expect.any(Number) });
    expect(textOf(sectionOf('Signatures'))).toContain('NOT PROVED');
  });

  test("takes it for proved with the supervisor's own valid key", () => {
    const signature = {
      role: 'supervisor',
      keyId: 'k',
      at: '2026-01-02T03:04:05Z',
      valid: true,
      sentence: '',
    };
    const signed = { ...model, trust: { ...model.trust, signatures: [signature] } };
    expect(textOf(buildDocument(signed, 'metric').blocks)).not.toContain('NOT PROVED');
    const bad = { ...signature, valid: false };
    const broken = { ...model, trust: { ...model.trust, signatures: [bad] } };
    expect(textOf(buildDocument(broken, 'metric').blocks)).toContain('NOT PROVED');
  });
});
