import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Entry, Json } from '../../src/record/index.ts';
import { readRecorded } from '../../src/record/vocabulary/index.ts';
import { buildDocument } from '../../src/report/document/build.ts';
import { toExport } from '../../src/report/export/json.ts';
import { exportSchema } from '../../src/report/export/schema.ts';
import { renderHtml } from '../../src/report/html/page.ts';
import { renderPdf } from '../../src/report/pdf/render.ts';
import { summarize } from '../../src/report/summarize.ts';
import { demoHeader } from './support.ts';

const name = fc.constantFrom(
  'constructor',
  '__proto__',
  'toString',
  'signOff.sign',
  'checks.oilPressure',
  'oilPressure',
  'engineSpeed',
  'kPa',
  'degC',
  'technician',
  'stopped.drill',
  'held',
);
const number = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constantFrom(0, -0, 1e308, -1e308, 5e-324, 280, 1000),
);
const names = fc.array(name, { maxLength: 4 });
const by = fc.constantFrom('technician', 'second');

const of = (kind: string, members: Record<string, fc.Arbitrary<Json>>) =>
  fc.record(members).map(data => ({ kind, data }));

/** Entries of the right shape that no session would write. */
const entry = fc.oneof(
  of('verdict', {
    step: name,
    quantity: name,
    value: number,
    unit: name,
    met: fc.boolean(),
    min: number,
    max: number,
    margin: number,
    rule: name,
    series: fc.array(number, { maxLength: 5 }),
  }),
  of('verdict', { step: name, quantity: name, value: number, unit: name, met: fc.boolean(), max: number }),
  of('reading', { quantity: name, si: number, via: name }),
  of('passed', { step: name, by: name, gate: name, misheard: number }),
  of('stopped', { step: name, cause: name, by: name }),
  of('reopened', { cause: name, steps: names }),
  of('skipped', { step: name, reason: name, by: name }),
  of('refused', { step: name, unmet: names }),
  of('faults', {
    step: name,
    faults: fc.array(fc.record({ spn: number, fmi: number, decision: name, accepted: name }), {
      maxLength: 3,
    }),
  }),
  of('heard', { text: name, kind: fc.constantFrom('unclear', 'reply'), via: name, by: name }),
  of('event', {
    type: fc.constantFrom('stop', 'hold', 'continue', 'clock', 'unclear'),
    atMs: fc.nat(),
    by,
    via: fc.constant('keys'),
    state: name,
  }),
  of('event', {
    type: fc.constant('value'),
    quantity: name,
    si: number,
    atMs: fc.nat(),
    by,
    via: fc.constant('bus'),
    state: name,
  }),
  of('closed', { outcome: fc.constantFrom('signedOff', 'ended', 'x') }),
  of('resumed', {}),
  of('constructor', {}),
);
const chain = fc.array(fc.tuple(entry, fc.constantFrom(0, 1, 1e3, 1e9, 1e300)), { maxLength: 40 });

function entriesOf(
  header: Entry['data'],
  list: readonly (readonly [{ kind: string; data: Entry['data'] }, number])[],
): Entry[] {
  const rest = { v: 1 as const, at: '2026-01-01T00:00:00.000Z', prev: '0'.repeat(64), hash: 'a'.repeat(64) };
  let monoMs = 0;
  return [
    { ...rest, seq: 0, monoMs, kind: 'opened', data: header },
    ...list.map(([{ kind, data }, afterMs], index) => {
      monoMs += afterMs;
      return { ...rest, seq: index + 1, monoMs, kind, data };
    }),
  ];
}

/** What would betray a value that is no value, in a drawing or between words. */
const nonsense = /NaN|Infinity|undefined|\[object/;

test('entries of the right shape with absurd content are told without a crash and without nonsense', async () => {
  const header = await demoHeader();
  fc.assert(
    fc.property(chain, fc.boolean(), fc.constantFrom('us', 'metric'), (list, withHeader, units) => {
      const entries = entriesOf(withHeader ? header : {}, list);
      const model = summarize({ entries });
      const [, body = ''] = renderHtml(buildDocument(model, units)).split('<body>');
      expect(nonsense.exec(body)).toBeNull();
      const exported = toExport(model, readRecorded(entries).entries);
      exportSchema.parse(JSON.parse(JSON.stringify(exported)));
    }),
    { numRuns: 150 },
  );
});

test('the PDF, too, is drawn whatever the entries hold', async () => {
  const header = await demoHeader();
  await fc.assert(
    fc.asyncProperty(chain, async list => {
      const report = buildDocument(summarize({ entries: entriesOf(header, list) }), 'metric');
      expect((await renderPdf(report, new Date(0))).subarray(0, 5).toString()).toBe('%PDF-');
    }),
    { numRuns: 20 },
  );
});

test('a reading of an absurd size is counted as not understood, never shown or plotted', async () => {
  const entries = entriesOf(await demoHeader(), [
    [{ kind: 'reading', data: { quantity: 'oilPressure', si: 1e300, via: 'bus' } }, 0],
  ]);
  const { readings, trust } = summarize({ entries });
  expect(readings).toEqual([]);
  expect(trust.notUnderstood).toEqual([1]);
});
