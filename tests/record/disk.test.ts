import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openNewLog, readLog, reopenLog, verifyLog } from '../../src/record/index.ts';
import { HandClock, mountTmpfs, tempFolder, writeRecord } from './support.ts';

const noMount = 'this user may not mount a file system';

describe('a full disk', () => {
  it('is told once; the record stays whole, goes on in memory and is saved elsewhere', async ({ skip }) => {
    const small = mountTmpfs(tempFolder(), 'size=64k');
    if (small === undefined) return skip(noMount);
    const path = join(small, 'session.jsonl');
    const clock = new HandClock();
    const log = await openNewLog(path, {}, clock);
    const refusals: unknown[] = [];
    for (let i = 1; i <= 200; i++) {
      clock.pass(10);
      await log.append('reading', { i, text: 'x'.repeat(900) }).catch(error => refusals.push(error));
    }
    expect(refusals).toMatchObject([{ code: 'disk', message: expect.stringContaining('the disk is full') }]);
    expect(log.failure).toBe(refusals[0]);
    expect(log.entries).toBe(201);

    // No part of a line is left on the full disk.
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 201 - log.unsavedEntries });

    await expect(log.saveTo(join(small, 'again.jsonl'))).rejects.toMatchObject({ code: 'unwritable' });
    expect(readdirSync(small).sort()).toEqual(['session.jsonl', 'session.jsonl.lock']);

    const rescue = join(tempFolder(), 'rescue.jsonl');
    await log.saveTo(rescue);
    await log.append('after', {});
    await log.close();
    const { entries } = await readLog(rescue);
    expect(entries.slice(1, -1).map(entry => entry.data.i)).toEqual(
      Array.from({ length: 200 }, (_, i) => i + 1),
    );
    expect(await verifyLog(rescue)).toMatchObject({ ok: true, entries: 202 });
  });

  it('leaves nothing behind when a record cannot even be begun', async ({ skip }) => {
    const small = mountTmpfs(tempFolder(), 'size=64k');
    if (small === undefined) return skip(noMount);
    expect(() => writeFileSync(join(small, 'filler'), Buffer.alloc(1 << 20))).toThrow('ENOSPC');
    await expect(openNewLog(join(small, 'session.jsonl'), {}, new HandClock())).rejects.toMatchObject({
      code: 'unwritable',
      message: expect.stringContaining('the disk is full'),
    });
    expect(readdirSync(small)).toEqual(['filler']);
  });
});

describe('a place that cannot be written', () => {
  it('a folder on a read-only disk', async ({ skip }) => {
    const mount = mountTmpfs(tempFolder(), 'size=64k');
    if (mount === undefined) return skip(noMount);
    const path = join(mount, 'session.jsonl');
    await writeRecord(path, 2);
    execFileSync('mount', ['-o', 'remount,ro', mount]);
    for (const attempt of [
      () => openNewLog(join(mount, 'new.jsonl'), {}, new HandClock()),
      () => reopenLog(path, () => ({ clock: new HandClock() })),
    ]) {
      await expect(attempt()).rejects.toMatchObject({
        code: 'unwritable',
        message: expect.stringContaining('the disk is read-only'),
      });
    }
    // Reading and verifying need no right to write.
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 2 });
  });

  it('a folder that is not there, a file in place of the folder, a name too long', async () => {
    const folder = tempFolder();
    writeFileSync(join(folder, 'file'), '');
    for (const [path, words] of [
      [join(folder, 'nothing', 'session.jsonl'), 'there is no such file or folder'],
      [join(folder, 'file', 'session.jsonl'), 'part of the path is not a folder'],
      [join(folder, 'x'.repeat(300)), 'the name is too long'],
    ] as const) {
      await expect(openNewLog(path, {}, new HandClock())).rejects.toMatchObject({
        code: 'unwritable',
        message: expect.stringContaining(words),
      });
    }
  });

  it('a folder in place of the file', async () => {
    const path = join(tempFolder(), 'session.jsonl');
    mkdirSync(path);
    await expect(openNewLog(path, {}, new HandClock())).rejects.toMatchObject({ code: 'exists' });
    await expect(reopenLog(path, () => ({ clock: new HandClock() }))).rejects.toMatchObject({
      code: 'unreadable',
    });
    expect(existsSync(`${path}.lock`)).toBe(false);
  });
});
