import { expect, it } from 'vitest';
import { readLog } from '../../src/record/index.ts';
import type { LogPage } from '../../src/server/protocol/index.ts';
import { Mirror } from '../../src/tablet/remote/mirror.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';

/** A device that keeps lines, and has no room for them whenever that is said. */
function device() {
  const kept: number[] = [];
  const room = { isFull: false };
  const mirror = new Mirror({} as IDBDatabase, 'session', 'bay', {
    recordOf: async () => undefined,
    keepCopy: async (_, __, lines) => {
      if (room.isFull) throw new Error('QuotaExceededError');
      kept.push(...lines.map(({ seq }) => seq));
    },
  });
  return { mirror, kept, room };
}

async function pages(): Promise<(from: number, to: number) => LogPage['entries']> {
  const run = await rig();
  await run.session.begin();
  await goUntil(run, 'job.extinguisher.asking');
  await run.session.settled();
  await run.record.close();
  const { entries } = await readLog(run.path);
  return (from, to) => entries.slice(from, to);
}

it('a copy with a hole is not one to go on with; what is lacking is asked for again, and then it is', async () => {
  const { mirror, kept, room } = device();
  const page = await pages();
  await mirror.take(page(0, 5));
  expect(mirror.isUsable).toBe(true);
  room.isFull = true;
  await mirror.take(page(5, 10));
  room.isFull = false;
  await mirror.take(page(10, 15));
  expect(mirror.isUsable).toBe(false);
  expect(mirror.lacksFrom).toBe(5);
  expect(kept).toEqual([0, 1, 2, 3, 4]);
  await mirror.take(page(5, 15));
  expect(mirror.isUsable).toBe(true);
  expect(mirror.lacksFrom).toBeNull();
  expect(kept).toEqual(Array.from({ length: 15 }, (_, seq) => seq));
});

it('what does not fit the chain is not kept, and the copy is none to go on with from there', async () => {
  const { mirror, kept } = device();
  const page = await pages();
  await mirror.take(page(0, 5));
  await mirror.take(page(5, 10).map((entry, index) => (index === 2 ? { ...entry, kind: 'other' } : entry)));
  expect(mirror.isUsable).toBe(false);
  expect(mirror.lacksFrom).toBeNull();
  expect(kept).toEqual([0, 1, 2, 3, 4]);
});
