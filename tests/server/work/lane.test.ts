import { readFileSync } from 'node:fs';
import { mkdtemp, writeFile } from 'node:fs/promises';
import { constants, getPriority, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { Lane } from '../../../src/server/work/lane.ts';
import { largeRecord } from '../support/large.ts';

let lane: Lane;
afterEach(() => lane.close());

const folder = () => mkdtemp(join(tmpdir(), 'lane-'));
/** Of the programs that this one has started; proc(5). */
const programs = () =>
  readFileSync(`/proc/self/task/${process.pid}/children`, 'utf8').trim().split(' ').map(Number);

const usual = { mostWaiting: 2, forMs: 600_000, heapMb: 512 };

describe('Heavy work', () => {
  test('of which too much waits already is refused at once, with one sentence', async () => {
    lane = new Lane('reports', usual);
    const path = join(await folder(), 'none.jsonl');
    const work = Array.from({ length: 4 }, () => lane.do('check', { path }));
    await expect(work[3]).rejects.toMatchObject({
      code: 'busy',
      message: expect.stringMatching(/^Too many reports at once/),
    });
    expect(await Promise.all(work.slice(0, 3))).toHaveLength(3);
  });

  test('that takes too long is given up, and its thread with it', async () => {
    lane = new Lane('reports', { ...usual, forMs: 1 });
    await expect(lane.do('check', { path: 'none' })).rejects.toMatchObject({
      code: 'failed',
      message: expect.stringMatching(/given up/),
    });
  });

  test('after so long is given up, and the next one is done', async () => {
    lane = new Lane('reports', { ...usual, heapMb: 40 });
    const path = join(await folder(), 'large.jsonl');
    await largeRecord(path, 40_000);
    await expect(lane.do('report', { path })).rejects.toMatchObject({ code: 'tooLong' });
    const small = join(await folder(), 'small.txt');
    await writeFile(small, 'no record\n');
    expect(await lane.do('check', { path: small })).toEqual({ isRecord: false });
  });

  test('whose program is ended from outside is told as broken off, and the next one is done', async () => {
    lane = new Lane('reports', usual);
    const path = join(await folder(), 'none.jsonl');
    await lane.do('check', { path });
    const [first, second] = [lane.do('check', { path }), lane.do('check', { path })];
    for (const pid of programs()) process.kill(pid, 'SIGTERM');
    await expect(first).rejects.toThrow('It ended (SIGTERM).');
    expect(await second).toEqual({ isRecord: false });
  });

  test('on a file that is too large is not even begun', async () => {
    lane = new Lane('reports', usual);
    const path = join(await folder(), 'huge.jsonl');
    await writeFile(path, Buffer.alloc(64 * 1024 * 1024 + 1));
    await expect(lane.do('report', { path })).rejects.toMatchObject({
      code: 'tooLong',
      message: expect.stringMatching(/too long/),
    });
  });

  test('goes behind whoever serves the faces, where both want the processor', async () => {
    const before = getPriority();
    lane = new Lane('reports', usual);
    await lane.do('check', { path: 'none' });
    expect(getPriority()).toBe(before);
    expect(Math.max(...programs().map(pid => getPriority(pid)))).toBeGreaterThanOrEqual(
      constants.priority.PRIORITY_BELOW_NORMAL,
    );
  });

  test('is refused when the server ends, whatever was waiting', async () => {
    lane = new Lane('reports', usual);
    const work = [lane.do('check', { path: 'a' }), lane.do('check', { path: 'b' })];
    lane.close();
    for (const each of work) await expect(each).rejects.toMatchObject({ code: 'busy' });
    await expect(lane.do('check', { path: 'c' })).rejects.toMatchObject({ code: 'busy' });
  });
});
