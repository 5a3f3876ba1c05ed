import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openNewLog, reopenLog, verifyLog } from '../../src/record/index.ts';
import { startProgram } from './children.ts';
import { HandClock, tempFolder, writeRecord } from './support.ts';

const newPath = (): string => join(tempFolder(), 'session.jsonl');

describe('two on one record', () => {
  it('the second program is told so in one sentence, and may have it once the first is done', async () => {
    const path = newPath();
    const first = startProgram('hold-open', [path, 'new']);
    expect(await first.firstLine()).toBe('open');
    const second = startProgram('hold-open', [path, 'reopen']);
    expect(await second.firstLine()).toMatch(
      /^inUse: .* is being written already; close the program that does/,
    );
    await first.finish();
    const third = startProgram('hold-open', [path, 'reopen']);
    expect(await third.firstLine()).toBe('open');
    await third.finish();
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 2 });
  });

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

  it('of several that find the lock of a dead one, exactly one gets the record', async () => {
    const path = newPath();
    const dead = startProgram('hold-open', [path, 'new']);
    await dead.firstLine();
    dead.kill();
    await dead.finish();
    expect(existsSync(`${path}.lock`)).toBe(true);
    const programs = Array.from({ length: 4 }, () => startProgram('hold-open', [path, 'reopen']));
    const answers = await Promise.all(programs.map(program => program.firstLine()));
    expect(answers.filter(answer => answer === 'open')).toHaveLength(1);
    expect(answers.filter(answer => answer.startsWith('inUse: '))).toHaveLength(3);
    await Promise.all(programs.map(program => program.finish()));
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 2 });
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
