import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openNewLog, reopenLog } from '../../src/record/index.ts';
import { HandClock, tempFolder, writeRecord } from './support.ts';

const newPath = (): string => join(tempFolder(), 'session.jsonl');

describe('two on one record', () => {
  it('the same program cannot open it twice either, nor save another record into it', async () => {
    const path = newPath();
    const log = await openNewLog(path, {}, new HandClock());
    await expect(reopenLog(path, () => ({ clock: new HandClock() }))).rejects.toMatchObject({
      code: 'inUse',
    });
    await expect(openNewLog(path, {}, new HandClock())).rejects.toMatchObject({ code: 'inUse' });
    const other = await openNewLog(newPath(), {}, new HandClock());
    await expect(other.saveTo(path)).rejects.toMatchObject({ code: 'inUse' });
    await other.close();
    await log.close();
  });
});

describe('a lock that was left', () => {
  const holder = (changes: object) =>
    JSON.stringify({ pid: process.pid, host: hostname(), born: '', ...changes });

  it('is taken over when a later process merely has the number of the dead one', async ({ skip }) => {
    skip(!existsSync('/proc/self/stat'), 'the system does not say when a process began');
    const path = newPath();
    await writeRecord(path, 2);
    writeFileSync(`${path}.lock`, holder({ born: 'another boot/12345' }));
    await (await reopenLog(path, () => ({ clock: new HandClock() }))).log.close();
    expect(existsSync(`${path}.lock`)).toBe(false);
  });

  it.each([
    ['of another computer', holder({ host: 'another', pid: 999_999_999 })],
    ['that nobody can read', 'rubbish'],
    ['that is still being written', ''],
    ['of a living process whose beginning is not known', holder({})],
  ])('%s counts as held', async (_name, content) => {
    const path = newPath();
    await writeRecord(path, 2);
    writeFileSync(`${path}.lock`, content);
    await expect(reopenLog(path, () => ({ clock: new HandClock() }))).rejects.toMatchObject({
      code: 'inUse',
    });
    expect(readFileSync(`${path}.lock`, 'utf8')).toBe(content);
  });
});
