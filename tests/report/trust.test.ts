import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Entry, faultOf, type JsonObject } from '../../src/record/index.ts';
import { buildDocument } from '../../src/report/document/build.ts';
import { renderHtml } from '../../src/report/html/page.ts';
import { summarize } from '../../src/report/summarize.ts';
import { goUntil } from '../helpers/session-rig.ts';
import { inputOf, sessionFor, tempFolder, writeLog } from './support.ts';

let genuine: readonly Entry[];
beforeAll(async () => {
  const rig = await sessionFor(join(mkdtempSync(join(tmpdir(), 'trust-')), 'log.jsonl'));
  await goUntil(rig);
  await rig.record.close();
  genuine = (await inputOf(rig.path)).entries;
});

/** The same record with its entries altered and chained anew, as a forger would who knows the format. */
async function forged(alter: (entry: Entry) => JsonObject | null) {
  const path = join(tempFolder(), 'forged.jsonl');
  let lastMs = 0;
  const entries = genuine.slice(1).flatMap(entry => {
    const data = alter(entry);
    const afterMs = entry.monoMs - lastMs;
    lastMs = entry.monoMs;
    return data === null ? [] : [{ kind: entry.kind, data, afterMs }];
  });
  const { v: _v, format: _f, ...header } = genuine[0]?.data ?? {};
  await writeLog(path, entries, header);
  return summarize(await inputOf(path));
}

const bannerOf = (model: ReturnType<typeof summarize>) => buildDocument(model, 'us').blocks[0];

describe('a record that was altered and chained anew', () => {
  test('is confirmed when nothing was altered', async () => {
    const model = await forged(entry => entry.data);
    expect(model.trust).toMatchObject({ sound: true });
    expect(model.trust.replayFault).toBeUndefined();
  });

  test('is found out when a verdict was turned round', async () => {
    const model = await forged(entry =>
      entry.kind === 'verdict' && entry.data.step === 'checks.oilPressure'
        ? { ...entry.data, value: 400 }
        : entry.data,
    );
    expect(model.trust.replayFault).toMatchObject({ difference: { kind: 'otherMember', member: 'value' } });
    expect(bannerOf(model)).toMatchObject({
      type: 'banner',
      tone: 'bad',
      text: expect.stringContaining('NOT CONFIRMED'),
    });
  });

  test('is confirmed where only its prose reads otherwise: a citation that was corrected since, a code told in other words', async () => {
    let reworded = 0;
    const model = await forged(entry => {
      if (entry.kind !== 'verdict' && entry.kind !== 'inTime') return entry.data;
      reworded += 1;
      return { ...entry.data, source: 'the same table, cited in other words' };
    });
    expect(reworded).toBeGreaterThan(10);
    expect(model.trust.replayFault).toBeUndefined();
  });

  test('is found out when the reason of a judgement was exchanged for another', async () => {
    const model = await forged(entry =>
      entry.kind === 'verdict' && entry.data.rule !== undefined
        ? { ...entry.data, why: 'idleHunting' }
        : entry.data,
    );
    expect(model.trust.replayFault).toMatchObject({ difference: { kind: 'otherMember', member: 'why' } });
  });

  test('is found out when a limit or the rule that set it was altered', async () => {
    for (const altered of [{ max: 1e6 }, { rule: 'a rule of my own' }]) {
      const model = await forged(entry =>
        entry.kind === 'inTime' ? { ...entry.data, ...altered } : entry.data,
      );
      const [member] = Object.keys(altered);
      expect(model.trust.replayFault).toMatchObject({ difference: { kind: 'otherMember', member } });
    }
  });

  test('is not confirmed where a gate was passed against its own judgement, whatever its procedure led to', async () => {
    const model = await forged(entry =>
      entry.kind === 'inTime' && entry.data.step === 'firstFire.oilPressure'
        ? { ...entry.data, seconds: 14.5, met: false, margin: -6.5 }
        : entry.data,
    );
    const passed = genuine.find(
      ({ kind, data }) => kind === 'passed' && data.step === 'firstFire.oilPressure',
    );
    expect(model.trust.replayFault).toEqual({
      kind: 'passedUnmet',
      line: (passed?.seq ?? 0) + 1,
      step: 'firstFire.oilPressure',
      gate: 'oilPressureShown',
    });
    expect(bannerOf(model)).toMatchObject({
      tone: 'bad',
      text: expect.stringMatching(/^NOT CONFIRMED: In line \d+ the gate 'oilPressureShown' is passed/),
    });
  });

  test('is found out when a step is said to be passed that never was', async () => {
    const model = await forged(entry =>
      entry.kind === 'event' && entry.data.id === 'iSign' ? null : entry.data,
    );
    expect(bannerOf(model)).toMatchObject({ text: expect.stringMatching(/^NOT CONFIRMED/) });
  });

  test('is found out when the sign-off stands there without the events that lead to it', async () => {
    const path = join(tempFolder(), 'forged.jsonl');
    const { v: _v, format: _f, ...header } = genuine[0]?.data ?? {};
    await writeLog(
      path,
      [
        { kind: 'passed', data: { step: 'signOff.sign', by: 'supervisor', gate: 'signature' } },
        { kind: 'closed', data: { outcome: 'signedOff' } },
      ],
      header,
    );
    const model = summarize(await inputOf(path));
    expect(model.trust.replayFault).toMatchObject({
      difference: { kind: 'nothingFollows', recorded: 'passed' },
    });
    const lead = buildDocument(model, 'us').blocks.find(block => block.type === 'lead');
    expect(lead).toMatchObject({ text: expect.stringContaining('not confirmed'), tone: 'warn' });
  });
});

test('a record that says it was signed off, though its events end before that, is found out', async () => {
  const path = join(tempFolder(), 'forged.jsonl');
  const { v: _v, format: _f, ...header } = genuine[0]?.data ?? {};
  await writeLog(path, [{ kind: 'closed', data: { outcome: 'signedOff' } }], header);
  expect(summarize(await inputOf(path)).trust.replayFault).toMatchObject({
    difference: { kind: 'otherOutcome', recorded: 'signedOff' },
  });
});

describe('a record that does not verify', () => {
  test('is reported as such in the first line, red and in words, and on every later page', () => {
    const model = summarize({
      entries: genuine.slice(0, 300),
      fault: faultOf({ found: 'altered', line: 301 }),
    });
    const report = buildDocument(model, 'us');
    expect(report.blocks[0]).toMatchObject({
      type: 'banner',
      tone: 'bad',
      text: 'NOT VERIFIED: this record is not as it was written. Line 301 was altered: its content is not what its hash says.',
    });
    expect(report.warning).toContain('NOT VERIFIED');
    const body = renderHtml(report).split('<body>')[1] ?? '';
    expect(body.trimStart()).toMatch(/^<div role="alert" class="banner bad">/);
  });

  test('is not called verified because nothing of it could be read', () => {
    const model = summarize({
      entries: [],
      fault: faultOf({ found: 'altered', line: 1 }),
    });
    expect(bannerOf(model)).toMatchObject({ tone: 'bad', text: expect.stringContaining('NOT VERIFIED') });
  });

  test('has a signature that does not hold for its reason', () => {
    const signature = {
      role: 'bay',
      keyId: 'k',
      at: '',
      valid: false,
      sentence: 'The signature of the bay does not hold.',
    };
    const model = summarize({ entries: genuine, signatures: [signature] });
    expect(bannerOf(model)).toMatchObject({
      tone: 'bad',
      text: 'NOT VERIFIED: The signature of the bay does not hold.',
    });
  });
});
