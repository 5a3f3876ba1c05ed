import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Json, RecordError } from '../../src/record/index.ts';
import { exportSchema } from '../../src/report/export/schema.ts';
import { isPdf, read, run, signedOff } from '../report/command.ts';
import { demoHeader, tempFolder, writeLog } from '../report/support.ts';

describe('a record that was tampered with', () => {
  const notVerified = async (change: (lines: string[]) => string[]) => {
    const log = await signedOff();
    writeFileSync(
      log,
      change(read(log).trimEnd().split('\n'))
        .map(line => `${line}\n`)
        .join(''),
    );
    const json = `${log}.json`;
    const { lines, code } = await run(
      'report',
      log,
      '--html',
      `${log}.html`,
      '--pdf',
      `${log}.pdf`,
      '--json',
      json,
    );
    expect(code).toBe(1);
    expect(lines[0]).toMatch(/^NOT VERIFIED/);
    const [, body = ''] = read(`${log}.html`).split('<body>');
    expect(body.trimStart()).toMatch(/^<div role="alert" class="banner bad"><bdi>NOT VERIFIED/);
    expect(exportSchema.parse(JSON.parse(read(json))).verified).toBe(false);
    expect(isPdf(`${log}.pdf`)).toBe(true);
  };
  const swapped = (lines: string[], at: number) =>
    lines.map((line, index) =>
      index === at ? (lines[at + 1] ?? line) : index === at + 1 ? (lines[at] ?? line) : line,
    );

  test('by swapping two lines is reported as not verified', () => notVerified(lines => swapped(lines, 200)));
  test('by doubling a line is reported as not verified', () =>
    notVerified(lines => lines.toSpliced(300, 0, lines[299] ?? '')));
  test('by taking a line out is reported as not verified', () =>
    notVerified(lines => lines.toSpliced(400, 1)));
  test('by a giant line is reported as not verified', () =>
    notVerified(lines => lines.toSpliced(100, 0, `{"at":"${'x'.repeat(3_000_000)}"}`)));
  test('in its first line is reported as not verified', () =>
    notVerified(([first = '', ...rest]) => [first.replace('demo', 'demi').replace('Demo', 'Demi'), ...rest]));
});

describe('whatever stands in a file', () => {
  test('random bytes are refused with one sentence, and nothing is written', async () => {
    const log = join(tempFolder(), 'log.jsonl');
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ minLength: 1, maxLength: 2000 }), async bytes => {
        writeFileSync(log, bytes);
        const error: unknown = await run('report', log).catch((thrown: unknown) => thrown);
        expect(error).toBeInstanceOf(RecordError);
        expect(existsSync(`${log}.html`)).toBe(false);
      }),
      { numRuns: 40 },
    );
  });

  test('a sound chain of random JSON is reported without a crash, and never as confirmed', async () => {
    const kinds = [
      'event',
      'heard',
      'said',
      'passed',
      'verdict',
      'stopped',
      'reopened',
      'skipped',
      'faults',
      'refused',
      'problem',
      'closed',
      'reading',
      'constructor',
      'x',
    ];
    const names = fc.constantFrom(
      'constructor',
      '__proto__',
      'toString',
      'signOff.sign',
      'oilPressure',
      'stop',
      'reply',
      'yes',
      'signature',
    );
    const number = fc.double({ noNaN: true, noDefaultInfinity: true });
    const value = fc.oneof(
      names,
      number,
      fc.boolean(),
      fc.constant(null),
      fc.string({ unit: 'binary', maxLength: 30 }).filter(text => !/\p{Surrogate}/u.test(text)),
      fc.array(names, { maxLength: 3 }),
    );
    const members = [
      'step',
      'by',
      'gate',
      'quantity',
      'value',
      'unit',
      'met',
      'min',
      'max',
      'margin',
      'series',
      'text',
      'kind',
      'via',
      'line',
      'priority',
      'cause',
      'steps',
      'reason',
      'outcome',
      'si',
      'type',
      'state',
      'atMs',
      'id',
      'unmet',
      'sentence',
    ];
    const data = fc
      .array(fc.tuple(fc.constantFrom(...members), value), { maxLength: 27 })
      .map((pairs): Record<string, Json> => Object.fromEntries(pairs));
    const entry = fc.record({
      kind: fc.constantFrom(...kinds),
      data,
      afterMs: fc.constantFrom(0, 1, 1e6, 1e12),
    });
    const header = await demoHeader();
    await fc.assert(
      fc.asyncProperty(
        fc.array(entry, { minLength: 1, maxLength: 25 }),
        fc.boolean(),
        async (entries, withHeader) => {
          const log = join(tempFolder(), 'log.jsonl');
          await writeLog(log, entries, withHeader ? header : {});
          await run(
            'report',
            log,
            '--html',
            `${log}.html`,
            '--pdf',
            `${log}.pdf`,
            '--json',
            `${log}.json`,
            '--csv',
            `${log}-tables`,
          );
          expect(isPdf(`${log}.pdf`)).toBe(true);
          const exported = exportSchema.parse(JSON.parse(read(`${log}.json`)));
          if (!withHeader) expect(exported.verified).toBe(false);
          expect(exported.gates.filter(({ met }) => met && exported.verified)).toEqual([]);
        },
      ),
      { numRuns: 25 },
    );
  });
});
