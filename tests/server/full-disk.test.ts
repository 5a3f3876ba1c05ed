import { execFileSync } from 'node:child_process';
import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test, vi } from 'vitest';
import { readLog, verifyLog } from '../../src/record/index.ts';
import { Face } from './support/face.ts';
import { openShop } from './support/shop.ts';

const soon = (check: () => void) => vi.waitFor(check, { timeout: 60_000, interval: 20 });

const IN_MEMORY =
  /can no longer write the record \(the disk is full\): it keeps it in memory only\. Make room/;
const ON_DISK = /every entry of it is on the disk, in its order/;

/** A disk of a megabyte; null where this user may not mount one. */
function smallDisk(): string | null {
  const folder = mkdtempSync(join(tmpdir(), 'small-'));
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'none', folder], { stdio: 'ignore' });
  } catch {
    return null;
  }
  onTestFinished(() => void execFileSync('umount', ['--lazy', folder], { stdio: 'ignore' }));
  return folder;
}

/** Leaves no room, until what comes back is called. */
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

test('On a full disk every face says so at the first answer that is in memory only, and no longer than it is', async ({
  skip,
}) => {
  const disk = smallDisk();
  if (disk === null) return skip('this user may not mount a file system');
  const shop = await openShop({ folder: disk });
  const technician = await Face.paired(shop.base, await shop.pair('technician'));
  const second = await Face.paired(shop.base, await shop.pair('second'));
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  const path = join(disk, `${technician.state?.session}.jsonl`);
  const free = fill(disk);
  // A page has room for a few answers more.
  for (let times = 0; times < 20 && !IN_MEMORY.test(problemsOf(technician)); times += 1)
    expect(
      await technician.do({ do: 'control', turn: technician.state?.turn ?? '', id: 'sayAgain' }),
    ).toMatchObject({ type: 'ack' });
  expect(problemsOf(technician)).toMatch(IN_MEMORY);
  await soon(() => expect(problemsOf(second)).toMatch(IN_MEMORY));
  expect(await second.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
  expect(await verifyLog(path)).toMatchObject({ ok: true });
  expect((await readLog(path)).entries.some(({ kind }) => kind === 'stopped')).toBe(false);

  free();
  await soon(() => {
    for (const face of [technician, second]) {
      expect(problemsOf(face)).not.toMatch(IN_MEMORY);
      expect(problemsOf(face)).toMatch(ON_DISK);
    }
  });
  expect((await readLog(path)).entries.some(({ kind }) => kind === 'stopped')).toBe(true);
  await shop.server.close();
  expect(await verifyLog(path)).toMatchObject({ ok: true });
  expect(readdirSync(disk).filter(name => name.includes('rescued'))).toEqual([]);
});

test('Killed as it wrote, and started on a full disk, it goes on in memory: the torn line is set aside in words when there is room', async ({
  skip,
}) => {
  const disk = smallDisk();
  if (disk === null) return skip('this user may not mount a file system');
  const first = await openShop({ folder: disk });
  const token = await first.pair('technician');
  const technician = await Face.paired(first.base, token);
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  await technician.say('card is right');
  const session = technician.state?.session ?? '';
  const path = join(disk, `${session}.jsonl`);
  const dead = JSON.parse(readFileSync(`${path}.lock`, 'utf8'));
  await first.server.close();
  // What a kill leaves: a lock, and a last line that is not whole.
  appendFileSync(`${path}.lock`, JSON.stringify({ ...dead, born: 'another boot/1' }));
  truncateSync(path, readFileSync(path).length - 30);
  const { entries } = await readLog(path);

  const free = fill(disk);
  const again = await openShop({ folder: disk });
  const back = await Face.paired(again.base, token);
  expect(back.state?.session).toBe(session);
  expect(back.state?.view?.state).toBe('stopped');
  await soon(() => {
    expect(problemsOf(back)).toMatch(IN_MEMORY);
    expect(problemsOf(back)).toMatch(/last line of the record had been cut short; .* set aside in entry \d+/);
  });
  expect((await readLog(path)).entries.slice(0, entries.length)).toEqual(entries);

  free();
  await soon(() => expect(problemsOf(back)).toMatch(ON_DISK));
  await again.server.close();
  const whole = await readLog(path);
  expect(whole.entries.slice(0, entries.length)).toEqual(entries);
  expect(whole.entries[entries.length]).toMatchObject({ kind: 'recovered' });
  expect(await verifyLog(path)).toMatchObject({ ok: true });
});

const problemsOf = (face: Face): string => face.state?.view?.problems.join('\n') ?? '';
