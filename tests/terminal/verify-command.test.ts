import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { tempFolder, writeLines, writeRecord } from '../record/support.ts';

const program = fileURLToPath(new URL('programs/verify.ts', import.meta.url));

function verify(...args: string[]): Promise<{ code: number | string; said: string }> {
  return new Promise(resolve => {
    execFile(process.execPath, ['--import', 'tsx', program, 'verify', ...args], (error, stdout, stderr) =>
      resolve({ code: error?.code ?? 0, said: stdout + stderr }),
    );
  });
}

describe('the command verify', () => {
  it('says in one line that a record is as written, and ends with 0', async () => {
    const path = join(tempFolder(), 'session.jsonl');
    const lines = await writeRecord(path, 3);
    const hash = JSON.parse(lines[2] ?? '').hash;
    expect(await verify(path, '--hash', hash)).toEqual({
      code: 0,
      said: `${path}: all 3 entries are as written; the last hash is ${hash}.\n`,
    });
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
