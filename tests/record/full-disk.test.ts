import { appendFileSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readLog, reopenLog, verifyLog } from '../../src/record/index.ts';
import { TRIED_AGAIN_AFTER_MS } from '../../src/record/record-log.ts';
import { recordOn, SmallDisk } from '../helpers/small-disk.ts';
import { HandClock, mountTmpfs, tempFolder, writeRecord } from './support.ts';

const noMount = 'this user may not mount a file system';

beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
afterEach(() => void vi.useRealTimers());

const passASecond = () => vi.advanceTimersByTimeAsync(TRIED_AGAIN_AFTER_MS);

const numbers = (lines: readonly string[]): number[] => lines.map(line => JSON.parse(line).seq);

/** Makes a file system take nothing any more, until what comes back is called. */
function fill(folder: string): () => void {
  const path = join(folder, 'filler');
  for (const size of [1 << 16, 1 << 12, 1])
    try {
      for (;;) appendFileSync(path, Buffer.alloc(size));
    } catch {
      // Less and less goes in.
    }
  return () => rmSync(path);
}

describe('a disk that is full for a while', () => {
  it('has every entry in its order a second after there is room, with nobody having to ask', async () => {
    const disk = new SmallDisk();
    const log = recordOn(disk, {}, new HandClock());
    await log.append('before', {});
    disk.isFull = true;
    const refused = await Promise.allSettled([log.append('a', {}), log.append('b', {}), log.append('c', {})]);
    expect(refused.filter(({ status }) => status === 'rejected')).toMatchObject([
      { reason: { code: 'disk', message: expect.stringContaining('the disk is full') } },
    ]);
    await log.append('d', {});
    expect(numbers(disk.lines)).toEqual([0, 1]);
    expect(log).toMatchObject({ unsavedEntries: 4, failure: { code: 'disk' } });

    disk.isFull = false;
    await passASecond();
    expect(numbers(disk.lines)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(log).toMatchObject({ unsavedEntries: 0, failure: undefined });
    await log.append('e', {});
    expect(numbers(disk.lines)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    await log.close();
  });

  it('is said at once and as long as it lasts, each time anew', async () => {
    const disk = new SmallDisk();
    const log = recordOn(disk, {}, new HandClock());
    const seen: (string | undefined)[] = [];
    const unwatch = log.watch(() => seen.push(log.failure?.code));
    for (let times = 1; times <= 2; times += 1) {
      disk.isFull = true;
      await expect(log.append('a', {})).rejects.toMatchObject({ code: 'disk' });
      await passASecond();
      await log.append('b', {});
      disk.isFull = false;
      await passASecond();
      expect(seen).toEqual(Array.from({ length: times }, () => ['disk', undefined]).flat());
    }
    unwatch();
    disk.isFull = true;
    await expect(log.append('c', {})).rejects.toMatchObject({ code: 'disk' });
    expect(seen).toHaveLength(4);
  });

  it('is tried once a second, not with each event, and not when all is written', async () => {
    const disk = new SmallDisk();
    const log = recordOn(disk, {}, new HandClock());
    disk.isFull = true;
    await log.append('a', {}).catch(() => {});
    for (let event = 0; event < 50; event += 1) await log.append('more', {});
    expect(disk.tries).toBe(1);
    await vi.advanceTimersByTimeAsync(TRIED_AGAIN_AFTER_MS - 1);
    expect(disk.tries).toBe(1);
    await vi.advanceTimersByTimeAsync(1 + 4 * TRIED_AGAIN_AFTER_MS);
    expect(disk.tries).toBe(6);
    disk.isFull = false;
    await passASecond();
    expect(disk.tries).toBe(7);
    await vi.advanceTimersByTimeAsync(10 * TRIED_AGAIN_AFTER_MS);
    expect(disk.tries).toBe(7);
  });

  it('is tried once more when the record is closed; if in vain the record stays open and is left alone', async () => {
    const disk = new SmallDisk();
    const log = recordOn(disk, {}, new HandClock());
    disk.isFull = true;
    await log.append('a', {}).catch(() => {});
    await expect(log.close()).rejects.toMatchObject({ code: 'unsaved' });
    const { tries } = disk;
    await vi.advanceTimersByTimeAsync(10 * TRIED_AGAIN_AFTER_MS);
    expect(disk.tries).toBe(tries);
    await log.append('b', {});
    disk.isFull = false;
    await log.close();
    expect(numbers(disk.lines)).toEqual([0, 1, 2]);
  });

  it('loses and doubles nothing, whenever it is full and whenever it has room', async () => {
    const happening = fc.constantFrom('entry', 'entries', 'full', 'room', 'second');
    await fc.assert(
      fc.asyncProperty(fc.array(happening, { maxLength: 40 }), async happenings => {
        const disk = new SmallDisk();
        const log = recordOn(disk, {}, new HandClock());
        for (const each of happenings) {
          if (each === 'full' || each === 'room') disk.isFull = each === 'full';
          else if (each === 'second') await passASecond();
          else {
            const appended = Array.from({ length: each === 'entry' ? 1 : 3 }, () => log.append('entry', {}));
            await Promise.allSettled(appended);
          }
          expect(numbers(disk.lines)).toEqual(Array.from(disk.lines, (_, nth) => nth));
          expect(disk.lines.length + log.unsavedEntries).toBe(log.entries);
          expect(log.failure === undefined).toBe(log.unsavedEntries === 0);
        }
        disk.isFull = false;
        await log.close();
        expect(disk.lines).toHaveLength(log.entries);
      }),
      { numRuns: 200 },
    );
  });

  it('a real one, with no part of a line left on it meanwhile', async ({ skip }) => {
    const small = mountTmpfs(tempFolder(), 'size=64k');
    if (small === undefined) return skip(noMount);
    const path = join(small, 'session.jsonl');
    await writeRecord(path, 3);
    const { log } = await reopenLog(path, () => ({ clock: new HandClock() }));
    const free = fill(small);
    await expect(log.append('long', { text: 'x'.repeat(9000) })).rejects.toMatchObject({ code: 'disk' });
    await log.append('short', {});
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 4 });
    await passASecond();
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 4 });
    free();
    vi.advanceTimersByTime(TRIED_AGAIN_AFTER_MS);
    await log.append('after', {});
    expect(log.failure).toBeUndefined();
    await log.close();
    const { entries } = await readLog(path);
    expect(entries.slice(3).map(({ kind }) => kind)).toEqual(['resumed', 'long', 'short', 'after']);
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 7 });
  });
});

/** A record whose last line was cut off, and what there is of that line. */
async function tornRecord(path: string): Promise<{ readonly sound: Buffer; readonly torn: Buffer }> {
  const lines = await writeRecord(path, 4);
  const last = Buffer.from(lines.at(-1) ?? '');
  const bytes = readFileSync(path);
  truncateSync(path, bytes.length - 40);
  return {
    sound: bytes.subarray(0, bytes.length - last.length - 1),
    torn: last.subarray(0, last.length - 39),
  };
}

/** The lock of a program that was killed as it wrote this record. */
const leaveLock = (path: string): void =>
  writeFileSync(
    `${path}.lock`,
    JSON.stringify({ pid: process.pid, host: hostname(), born: 'another boot/1' }),
  );

const tornIn = (data: { readonly tornBase64?: unknown }): string =>
  Buffer.from(String(data.tornBase64), 'base64').toString();

describe('a record that is gone on with on a full disk', () => {
  it('keeps its torn line until there is room for what takes its place, and goes on in memory', async ({
    skip,
  }) => {
    const small = mountTmpfs(tempFolder(), 'size=64k');
    if (small === undefined) return skip(noMount);
    const path = join(small, 'session.jsonl');
    // Right up to a page: the entry that keeps the torn line does not fit into it.
    await writeRecord(path, 4, index => (index === 3 ? { text: 'x'.repeat(3150) } : { index }));
    truncateSync(path, 4090);
    const before = readFileSync(path);
    leaveLock(path);
    const free = fill(small);
    const { log, resumed, entries } = await reopenLog(path, () => ({ clock: new HandClock() }));
    expect(entries).toHaveLength(3);
    expect(resumed).toMatchObject({ kind: 'recovered', seq: 3 });
    expect(log).toMatchObject({ entries: 4, unsavedEntries: 1, failure: { code: 'disk' } });
    await log.append('meanwhile', {}).catch(() => {});
    expect(readFileSync(path).equals(before)).toBe(true);

    free();
    vi.advanceTimersByTime(TRIED_AGAIN_AFTER_MS);
    await log.append('after', {});
    await log.close();
    const whole = await readLog(path);
    expect(whole.entries.slice(3).map(({ kind }) => kind)).toEqual(['recovered', 'meanwhile', 'after']);
    expect(before.toString()).toContain(tornIn(whole.entries[3]?.data ?? {}));
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 6 });
  });

  it('is as it was when nobody waits for room: the next one finds the torn line too', async ({ skip }) => {
    const small = mountTmpfs(tempFolder(), 'size=64k');
    if (small === undefined) return skip(noMount);
    const path = join(small, 'session.jsonl');
    await writeRecord(path, 4, index => (index === 3 ? { text: 'x'.repeat(3150) } : { index }));
    truncateSync(path, 4090);
    const before = readFileSync(path);
    leaveLock(path);
    const free = fill(small);
    await expect(reopenLog(path, () => ({ clock: new HandClock(), needsRoom: true }))).rejects.toMatchObject({
      code: 'unwritable',
      message: expect.stringContaining('the disk is full'),
    });
    expect(readFileSync(path).equals(before)).toBe(true);
    free();
    await (await reopenLog(path, () => ({ clock: new HandClock() }))).log.close();
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 4 });
  });

  it('takes over the lock of a dead one, though there is no room for a new one', async ({ skip }) => {
    const small = mountTmpfs(tempFolder(), 'size=64k');
    if (small === undefined) return skip(noMount);
    const path = join(small, 'session.jsonl');
    await writeRecord(path, 2);
    leaveLock(path);
    const free = fill(small);
    const { log } = await reopenLog(path, () => ({ clock: new HandClock() }));
    expect(JSON.parse(readFileSync(`${path}.lock`, 'utf8')).pid).toBe(process.pid);
    await expect(reopenLog(path, () => ({ clock: new HandClock() }))).rejects.toMatchObject({
      code: 'inUse',
    });
    free();
    await log.close();
    expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 3 });
  });
});

describe('a restart that was itself cut short', () => {
  /** What the power leaves of a line that is written over a torn one: first what is behind it, then what is before. */
  function* leftOf(torn: Buffer, line: Buffer): Generator<Buffer> {
    const draft = Buffer.concat([line.subarray(0, -1), Buffer.from(' ')]);
    const behind = draft.subarray(torn.length);
    for (let done = 0; done <= behind.length; done += 17)
      yield Buffer.concat([torn, behind.subarray(0, done)]);
    for (let done = 0; done <= torn.length; done += 17)
      yield Buffer.concat([draft.subarray(0, done), torn.subarray(done), behind]);
    yield draft;
  }

  it('has lost nothing of the torn line until its entry is whole', async () => {
    const path = join(tempFolder(), 'session.jsonl');
    const { sound, torn } = await tornRecord(path);
    await (await reopenLog(path, () => ({ clock: new HandClock() }))).log.close();
    const line = readFileSync(path).subarray(sound.length);
    for (const left of leftOf(torn, line)) {
      writeFileSync(path, Buffer.concat([sound, left]));
      const { log, resumed } = await reopenLog(path, () => ({ clock: new HandClock() }));
      await log.close();
      expect(resumed.kind).toBe('recovered');
      expect(tornIn(resumed.data)).toBe(left.toString());
      expect(await verifyLog(path)).toMatchObject({ ok: true, entries: 4 });
    }
  });
});
