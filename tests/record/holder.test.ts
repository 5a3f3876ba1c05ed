import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { takeLock } from '../../src/record/lock.ts';
import { tempFolder } from './support.ts';

const newPath = (): string => join(tempFolder(), 'session.jsonl');
const contentOf = (path: string): unknown => JSON.parse(readFileSync(`${path}.lock`, 'utf8'));

/** Field 22 of /proc/self/stat (proc(5)), behind the boot; '' where the system does not say. */
function bornNow(): string {
  if (!existsSync('/proc/self/stat')) return '';
  const boot = readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim();
  const fields = readFileSync(`/proc/${process.pid}/stat`, 'utf8')
    .replace(/^.*\) /s, '')
    .split(' ');
  // The third field comes first behind the name.
  return `${boot}/${fields[22 - 3]}`;
}

const self = { pid: process.pid, host: hostname(), born: bornNow() };

describe('the lock of a record', () => {
  it('says who holds it, from when it is taken until it is released', async () => {
    const path = newPath();
    const lock = await takeLock(path);
    expect(contentOf(path)).toEqual(self);
    await lock.release();
    expect(readdirSync(dirname(path))).toEqual([]);
  });

  it('may be gone when it is released', async () => {
    const path = newPath();
    const lock = await takeLock(path);
    rmSync(`${path}.lock`);
    await expect(lock.release()).resolves.toBeUndefined();
  });

  it('is refused to a second one, with what to do', async () => {
    const path = newPath();
    const lock = await takeLock(path);
    await expect(takeLock(path)).rejects.toMatchObject({
      code: 'inUse',
      message: `${path} is being written already; close the program that does, or delete ${path}.lock if there is none.`,
    });
    await lock.release();
    await (await takeLock(path)).release();
  });

  it('cannot be taken where nothing can be made', async () => {
    const path = join(tempFolder(), 'nowhere', 'session.jsonl');
    await expect(takeLock(path)).rejects.toMatchObject({
      code: 'unwritable',
      message: expect.stringMatching(/session\.jsonl cannot be written: .+; choose another place\.$/),
    });
  });
});

describe('a lock that is found', () => {
  const found = async (content: object | string) => {
    const path = newPath();
    const text = typeof content === 'string' ? content : JSON.stringify(content);
    writeFileSync(`${path}.lock`, text);
    const taken = await takeLock(path).then(
      async lock => {
        expect(contentOf(path)).toEqual(self);
        expect(readdirSync(dirname(path))).toEqual(['session.jsonl.lock']);
        await lock.release();
        expect(readdirSync(dirname(path))).toEqual([]);
        return true;
      },
      () => false,
    );
    // One that is held is left as it was.
    if (!taken) expect(readFileSync(`${path}.lock`, 'utf8')).toBe(text);
    return taken;
  };
  const { pid: deadPid } = spawnSync(process.execPath, ['--version']);

  it('of a process that is dead is taken over, however long its own text was', async () => {
    for (const born of ['', 'x', 'another boot/12345'.repeat(20)])
      expect(await found({ ...self, pid: deadPid, born }), born).toBe(true);
  });

  it('of a living one is held: this very one, or one whose beginning is not known', async () => {
    expect(await found(self)).toBe(false);
    expect(await found({ ...self, born: '' })).toBe(false);
  });

  it('of a process that lives, but is another than it was, is taken over', async ({ skip }) => {
    skip(self.born === '', 'the system does not say when a process began');
    expect(await found({ ...self, born: `${self.born}1` })).toBe(true);
  });

  it('of a living process of somebody else is held', async ({ skip }) => {
    skip(!existsSync('/proc/1/stat'), 'there is no process 1 to be seen');
    expect(await found({ ...self, pid: 1, born: '' })).toBe(false);
  });

  it('in doubt is held', async () => {
    const doubtful = [
      '',
      'rubbish',
      '[]',
      { ...self, host: `${self.host}1`, pid: deadPid },
      { ...self, pid: -deadPid },
      { ...self, pid: 0.5 },
      { pid: deadPid, host: self.host },
    ];
    for (const content of doubtful) expect(await found(content), JSON.stringify(content)).toBe(false);
  });
});
