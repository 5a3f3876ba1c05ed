import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readLog } from '../../src/record/index.ts';
import { sealEntry } from '../../src/record/seal.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';
import { readLines, tempFolder, writeLines, writeRecord } from '../record/support.ts';

const program = fileURLToPath(new URL('programs/verify.ts', import.meta.url));

function verify(...args: string[]): Promise<{ code: number | string; said: string }> {
  return new Promise(resolve => {
    execFile(process.execPath, ['--import', 'tsx', program, 'verify', ...args], (error, stdout, stderr) =>
      resolve({ code: error?.code ?? 0, said: stdout + stderr }),
    );
  });
}

/** The record of a session that has begun. */
async function session(): Promise<string> {
  const run = await rig('demo-six', 'us', join(tempFolder(), 'session.jsonl'));
  await run.session.begin();
  await goUntil(run, 'job.makerFirst.asking');
  await run.record.close();
  return run.path;
}

describe('the command verify', () => {
  it('says in one line that a record is as written, and ends with 0', async () => {
    const path = await session();
    const lines = readLines(path);
    const hash = JSON.parse(lines.at(-1) ?? '').hash;
    expect(await verify(path, '--hash', hash)).toEqual({
      code: 0,
      said: `${path}: all ${lines.length} entries are as written; the last hash is ${hash}.\n`,
    });
  });

  it('does not say so of one that was altered and chained anew, and ends with 3', async () => {
    const path = await session();
    const { entries } = await readLog(path);
    let prev = '0'.repeat(64);
    const lines = entries.map(({ seq, at, monoMs, kind, data }) => {
      const told = kind === 'passed' ? { ...data, step: 'job.chocks' } : data;
      const sealed = sealEntry({ seq, at: new Date(at), monoMs, kind, data: told, prev }, 1e6);
      prev = sealed.entry.hash;
      return sealed.line;
    });
    writeLines(path, lines);
    const { code, said } = await verify(path);
    expect(code).toBe(3);
    expect(said).toContain(`all ${lines.length} entries are chained; the last hash is ${prev}.`);
    expect(said).toContain('NOT CONFIRMED: Carried out once more, the recorded events do not lead to line');
  });

  it('says the same of what is chained and is no session, and ends with 3', async () => {
    const path = join(tempFolder(), 'session.jsonl');
    await writeRecord(path, 3);
    expect(await verify(path)).toMatchObject({
      code: 3,
      said: expect.stringContaining(
        'NOT CONFIRMED: The record does not begin like a session of this version',
      ),
    });
  });

  it('says of one of an earlier version that it was not carried out once more, not that it was altered, and ends with 3', async () => {
    const path = fileURLToPath(new URL('../record/versions/version-1.jsonl', import.meta.url));
    const { code, said } = await verify(path);
    expect(code).toBe(3);
    expect(said).toContain('all 134 entries are chained');
    expect(said).toContain(
      '(vocabulary 1), by another procedure: it is told as it stands, not carried out once more.',
    );
    expect(said).not.toContain('altered');
  });

  it('names the line that was altered, and ends with 1', async () => {
    const path = join(tempFolder(), 'session.jsonl');
    const lines = await writeRecord(path, 3);
    writeLines(path, lines.with(1, lines[1]?.replace('1.5', '2.5') ?? ''));
    expect(await verify(path)).toEqual({
      code: 1,
      said: `${path}: Line 2 was altered: its content is not what its hash says.\n`,
    });
  });

  it('misses the lines after the hash of the report, and ends with 1', async () => {
    const path = join(tempFolder(), 'session.jsonl');
    await writeRecord(path, 3);
    const answer = await verify(path, '--hash', 'a'.repeat(64));
    expect(answer).toMatchObject({
      code: 1,
      said: expect.stringContaining('ends at line 3 without the hash'),
    });
  });

  it('ends with 2 when there is nothing to read', async () => {
    const path = join(tempFolder(), 'nothing.jsonl');
    expect(await verify(path)).toEqual({
      code: 2,
      said: `${path} cannot be read: there is no such file or folder.\n`,
    });
  });
});
