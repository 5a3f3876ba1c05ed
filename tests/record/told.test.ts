import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openNewLog, type RecordLog, readLog, reopenLog, verifyLog } from '../../src/record/index.ts';
import { LogFile } from '../../src/record/log-file.ts';
import { MAX_REMARKS } from '../../src/record/verify.ts';
import { HandClock, readLines, tempFolder, writeLines, writeRecord } from './support.ts';

const newPath = (): string => join(tempFolder(), 'session.jsonl');

/** A record of which each entry but the first comes a second after the one before, the wall clock set by so much. */
async function withJumps(path: string, jumpsMs: readonly number[]): Promise<void> {
  const clock = new HandClock();
  const log = await openNewLog(path, {}, clock);
  for (const jumpMs of jumpsMs) {
    clock.pass(1000);
    clock.wallMs += jumpMs;
    await log.append('reading', {});
  }
  await log.close();
}

describe('a record that is read while it grows', () => {
  it('gives as many of its lines as are wanted, from where they are wanted', async () => {
    const path = newPath();
    const log: RecordLog = await openNewLog(path, {}, new HandClock());
    for (const value of [1, 2, 3, 4]) await log.append('reading', { value });
    const lines = readLines(path);
    expect(log.linesFrom(0, 100)).toEqual(lines);
    expect(log.linesFrom(1, 2)).toEqual(lines.slice(1, 3));
    expect(log.linesFrom(4, 2)).toEqual(lines.slice(4));
    expect(log.linesFrom(5, 2)).toEqual([]);
    expect([log.entries, log.unsavedEntries]).toEqual([5, 0]);
    await log.close();
  });

  it('says where it was closed, and takes nothing more', async () => {
    const path = newPath();
    const log = await openNewLog(path, {}, new HandClock());
    await log.close();
    const closed = { code: 'closed', message: `The record ${path} is closed; nothing more is recorded.` };
    await expect(log.append('reading', {})).rejects.toMatchObject(closed);
    await expect(log.saveTo(newPath())).rejects.toMatchObject(closed);
    await expect(log.close()).rejects.toMatchObject(closed);
  });

  it('that is only in memory says so to whoever closes it', async () => {
    const log = await openNewLog(newPath(), {}, new HandClock());
    rmSync(log.path);
    await expect(log.append('reading', {})).rejects.toMatchObject({ code: 'disk' });
    // Told once; what comes after it is kept as well.
    await log.append('reading', {});
    await expect(log.close()).rejects.toMatchObject({
      code: 'unsaved',
      message: '2 entries are only in memory; save the record to another place before closing.',
    });
    await log.saveTo(newPath());
    await log.close();
  });
});

describe('a record that was continued after its report', () => {
  it('is sound, and says by how much', async () => {
    const path = newPath();
    await writeRecord(path, 6);
    const { entries } = await readLog(path);
    const remarks = async (place: number) => {
      const found = await verifyLog(path, { lastHash: entries[place]?.hash ?? '' });
      return found.ok ? found.remarks.map(({ line, sentence }) => [line, sentence]) : found.sentence;
    };
    expect(await remarks(5)).toEqual([]);
    expect(await remarks(4)).toEqual([
      [6, 'The report was made at line 5; 1 more lines were recorded after it.'],
    ]);
    expect(await remarks(1)).toEqual([
      [3, 'The report was made at line 2; 4 more lines were recorded after it.'],
    ]);
  });

  it('is unreadable by a hash that is none', async () => {
    expect(await verifyLog('nowhere', { lastHash: 'ab' })).toMatchObject({
      ok: false,
      problem: 'unreadable',
      sentence: expect.stringMatching(/^The expected hash is not one: copy all 64 digits/),
    });
  });
});

describe('a wall clock that is set', () => {
  const remarksOf = async (jumpsMs: readonly number[]) => {
    const path = newPath();
    await withJumps(path, jumpsMs);
    const found = await verifyLog(path);
    return found.ok ? found.remarks.map(({ sentence }) => sentence) : [found.sentence];
  };

  it('by more than two seconds is remarked, in either direction', async () => {
    expect(await remarksOf([2000, -2000])).toEqual([]);
    expect(await remarksOf([2001, -2100])).toEqual([
      'At line 2 the wall clock was set forward by 2.0 s.',
      'At line 3 the wall clock was set back by 2.1 s.',
    ]);
  });

  it('again and again is remarked a hundred times', async () => {
    const jumps = Array.from({ length: MAX_REMARKS + 5 }, (_, i) => (i % 2 === 0 ? 5000 : -5000));
    expect(await remarksOf(jumps)).toHaveLength(MAX_REMARKS);
  });
});

describe('a record that cannot be gone on with', () => {
  const reopened = (path: string) => reopenLog(path, () => ({ clock: new HandClock() }));

  it('says what is wrong in it', async () => {
    const path = newPath();
    const lines = await writeRecord(path, 3);
    writeLines(path, [...lines.slice(0, 2), lines[2]?.replace('reading 2', 'reading 3') ?? '']);
    const { fault } = await readLog(path);
    await expect(reopened(path)).rejects.toMatchObject({
      code: 'broken',
      message: `${path} cannot be continued; begin a new record. ${fault?.sentence}`,
    });
    writeFileSync(path, lines[0]?.slice(0, 30) ?? '');
    await expect(reopened(path)).rejects.toMatchObject({
      message: `${path} is not a record of this program.`,
    });
    // It is known by its format, and breaks off in its first line.
    writeFileSync(path, lines[0]?.slice(0, -5) ?? '');
    await expect(reopened(path)).rejects.toMatchObject({
      code: 'broken',
      message: `${path} cannot be continued; begin a new record. It holds no whole entry.`,
    });
  });

  it('or that its file cannot be made or continued', async () => {
    const path = newPath();
    await expect(LogFile.create(join(path, 'inside'), [])).rejects.toMatchObject({
      code: 'unwritable',
      message: expect.stringMatching(/inside cannot be made: .+; choose another place\.$/),
    });
    await expect(LogFile.reopen(path, 0, 0)).rejects.toMatchObject({
      code: 'unwritable',
      message: expect.stringMatching(/session\.jsonl cannot be continued: .+\.$/),
    });
    const log = await LogFile.create(path, [Buffer.from('a\n')]);
    await log.close();
    await expect(LogFile.create(path, [])).rejects.toMatchObject({
      code: 'exists',
      message: `${path} is there already; choose another name, or resume that record.`,
    });
  });
});
