import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { exportSchema } from '../../src/report/export/schema.ts';
import { isPdf, read, run, signedOff } from '../report/command.ts';
import {
  busReadings,
  demoHeader,
  rightToLeft,
  tempFolder,
  type Written,
  writeLog,
} from '../report/support.ts';

describe('report LOG', () => {
  test('writes HTML and PDF beside the record', async () => {
    const log = await signedOff();
    const { lines, code } = await run('report', log);
    expect(code).toBe(0);
    expect(lines).toEqual([`${log}.html`, `${log}.pdf`]);
    expect(read(`${log}.html`)).toContain('Signed off after');
    expect(isPdf(`${log}.pdf`)).toBe(true);
  });

  test('shows other units when they are asked for', async () => {
    const log = await signedOff();
    await run('report', log, '--units', 'metric', '--html', `${log}.m.html`);
    await run('report', log, '--html', `${log}.u.html`);
    expect(read(`${log}.m.html`)).toContain(' bar');
    expect(read(`${log}.m.html`)).not.toContain(' psi');
    expect(read(`${log}.u.html`)).toContain(' psi');
    expect(existsSync(`${log}.pdf`)).toBe(false);
  });

  test('exports JSON that its own schema accepts, with the schema beside it', async () => {
    const log = await signedOff();
    const json = join(tempFolder(), 'out.json');
    await run('report', log, '--json', json);
    const exported = exportSchema.parse(JSON.parse(read(json)));
    expect(exported).toMatchObject({ verified: true, lastHash: expect.stringMatching(/^[0-9a-f]{64}$/) });
    expect(exported.readings.length).toBeGreaterThan(20);
    expect(exported.events.length).toBeGreaterThan(500);
    const schema = JSON.parse(read(json.replace('.json', '.schema.json')));
    expect(schema.$schema).toContain('json-schema.org');
    expect(schema.properties.readings.items.properties.value.type).toBe('number');
  });

  test('exports CSV with a row for every reading and event, its columns described', async () => {
    const log = await signedOff();
    const folder = join(tempFolder(), 'csv');
    await run('report', log, '--csv', folder);
    const [head = '', ...rows] = read(join(folder, 'readings.csv')).trimEnd().split('\r\n');
    expect(head.split(',').slice(0, 8)).toEqual([
      'seq',
      'at',
      'timeS',
      'phase',
      'step',
      'quantity',
      'value',
      'unit',
    ]);
    expect(rows.every(row => row.endsWith(',true'))).toBe(true);
    const columns: unknown = JSON.parse(read(join(folder, 'columns.schema.json')));
    const described = z
      .record(z.string(), z.object({ properties: z.record(z.string(), z.unknown()) }))
      .parse(columns);
    expect(Object.keys(described['readings.csv']?.properties ?? {})).toEqual(head.split(','));
  });

  test('lets no spreadsheet take what somebody said for a formula', async () => {
    const log = join(tempFolder(), 'log.jsonl');
    const folder = join(tempFolder(), 'csv');
    const problem: Written = { kind: 'problem', data: { sentence: '=HYPERLINK("x"),\n2' } };
    await writeLog(log, [problem], await demoHeader());
    await run('report', log, '--csv', folder);
    expect(read(join(folder, 'events.csv'))).toContain('"\'=HYPERLINK(""x""),\n2"');
  });

  test('makes pages of 5,000 readings, of none, and of names that run from right to left', async () => {
    for (const entries of [busReadings(5000, 700), []]) {
      const log = join(tempFolder(), 'log.jsonl');
      await writeLog(log, entries, await demoHeader(rightToLeft));
      expect((await run('report', log)).code).toBe(0);
      expect(isPdf(`${log}.pdf`)).toBe(true);
    }
  });

  test('says that --csv wants a folder, and makes none that is named like a file', async () => {
    const log = await signedOff();
    const table = join(tempFolder(), 't.csv');
    await expect(run('report', log, '--csv', table)).rejects.toThrow(/name a folder/);
    expect(existsSync(table)).toBe(false);
  });

  test('says which file cannot be written', async () => {
    const log = await signedOff();
    await expect(run('report', log, '--html', join(log, 'x.html'))).rejects.toThrow(
      /cannot be written: part of the path is not a folder; choose another place/,
    );
  });
});

describe('keys make, sign and verify --key', () => {
  test('a record signed with one key verifies with it, and with no other', async () => {
    const log = await signedOff();
    const folder = tempFolder();
    const [bay, other] = [join(folder, 'bay'), join(folder, 'other')];
    await run('keys', 'make', bay);
    await run('keys', 'make', other);
    expect((await run('sign', log, '--key', join(bay, 'signing-key.pem'), '--role', 'supervisor')).code).toBe(
      0,
    );
    const good = await run('verify', log, '--key', join(bay, 'public-key.pem'));
    expect(good.code).toBe(0);
    expect(good.lines[1]).toMatch(/Signed with the key [0-9a-f]{16} of the supervisor/);
    const wrong = await run('verify', log, '--key', join(other, 'public-key.pem'));
    expect(wrong.code).toBe(1);
    expect(wrong.lines[1]).toContain('Wrong key');
    await run('report', log, '--html', `${log}.html`);
    expect(read(`${log}.html`)).toContain('signed with the key of the supervisor');
  });

  test('whose key it is has to be said: a signature is never the bay’s, or the supervisor’s, by default', async () => {
    const log = await signedOff();
    const keys = join(tempFolder(), 'keys');
    await run('keys', 'make', keys);
    const unsaid = await run('sign', log, '--key', join(keys, 'signing-key.pem'));
    expect(unsaid).toMatchObject({ code: 1, lines: [expect.stringContaining('say whose key it is')] });
    expect(existsSync(`${log}.sig.json`)).toBe(false);
  });

  test('a signature of another record is told in the first line of the report', async () => {
    const [log, another] = [await signedOff(), join(tempFolder(), 'other.jsonl')];
    const keys = join(tempFolder(), 'keys');
    await run('keys', 'make', keys);
    await run('sign', log, '--key', join(keys, 'signing-key.pem'), '--role', 'bay');
    await writeLog(another, [], await demoHeader());
    writeFileSync(`${another}.sig.json`, read(`${log}.sig.json`));
    const { lines, code } = await run('report', another, '--html', `${another}.html`);
    expect(code).toBe(1);
    expect(lines[0]).toMatch(/^NOT VERIFIED: The signature of the bay .* does not hold/);
  });

  test('a key is never written over another, and an open session is not signed', async () => {
    const keys = join(tempFolder(), 'keys');
    await run('keys', 'make', keys);
    const before = read(join(keys, 'signing-key.pem'));
    const again = await run('keys', 'make', keys);
    expect(again).toMatchObject({ code: 1, lines: [expect.stringContaining('there is a key already')] });
    expect(read(join(keys, 'signing-key.pem'))).toBe(before);
    const log = join(tempFolder(), 'open.jsonl');
    await writeLog(log, [], await demoHeader());
    const signed = await run('sign', log, '--key', join(keys, 'signing-key.pem'), '--role', 'bay');
    expect(signed).toMatchObject({ code: 1, lines: [expect.stringContaining('not closed yet')] });
  });
});
