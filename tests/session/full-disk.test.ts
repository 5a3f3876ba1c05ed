import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { TRIED_AGAIN_AFTER_MS } from '../../src/record/record-log.ts';
import { recordClock } from '../../src/session/clock.ts';
import { headerData } from '../../src/session/header.ts';
import { Session } from '../../src/session/session.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { rig, rigAround } from '../helpers/session-rig.ts';
import { recordOn, SmallDisk } from '../helpers/small-disk.ts';

beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
afterEach(() => void vi.useRealTimers());

const passASecond = () => vi.advanceTimersByTimeAsync(TRIED_AGAIN_AFTER_MS);

/** A session in its first question, on a disk that can be full. */
async function onSmallDisk(notKept?: () => string) {
  const { session: model, clock, path } = await rig();
  const disk = new SmallDisk();
  const { profile, job, units } = model.parts;
  const record = recordOn(disk, headerData({ profile, job, units, language: 'en' }), recordClock(clock));
  const session = new Session({ ...model.parts, record, ...(notKept ? { notKept } : {}) });
  const viewer = new Viewer(session, 'keys');
  const run = rigAround(session, clock, record, path);
  await session.begin();
  return { disk, session, viewer, run, record };
}

const saidOnRecord = (disk: SmallDisk): string[] =>
  disk.lines
    .map(line => JSON.parse(line))
    .filter(({ kind }) => kind === 'problem')
    .map(({ data }) => data.sentence);

describe('a session whose disk is full', () => {
  it('goes on, and every face says so from the first answer that is in memory only until it is on the disk', async () => {
    const { disk, viewer, run } = await onSmallDisk();
    expect(viewer.view().problems).toEqual([]);
    disk.isFull = true;
    await run.type('card is right');
    await run.type('understood');
    await run.type('protection on');
    expect(run.key()).toBe('job.hazards.asking');
    const [told = ''] = viewer.view().problems;
    expect(told).toMatch(/can no longer be written: the disk is full; the record is kept in memory/);
    await passASecond();
    expect(viewer.view().problems).toEqual([told]);

    disk.isFull = false;
    await passASecond();
    expect(viewer.view().problems).toEqual([
      'The record can be written again: every entry of it is on the disk, in its order.',
    ]);
    await run.session.settled();
    expect(saidOnRecord(disk)).toEqual([told, ...viewer.view().problems]);
    expect(run.record.unsavedEntries).toBe(0);
  });

  it('says it in the words of whoever runs it', async () => {
    const { disk, viewer, run } = await onSmallDisk(() => 'Make room on the laptop.');
    disk.isFull = true;
    await run.type('card is right');
    expect(viewer.view().problems).toEqual(['Make room on the laptop.']);
  });

  it('takes a stop at once all the same, and has it on the record when there is room', async () => {
    const { disk, run } = await onSmallDisk();
    disk.isFull = true;
    await run.type('card is right');
    run.session.receive({ type: 'stop' }, 'second', 'touch');
    expect(run.key()).toBe('stopped.makingSafe');
    disk.isFull = false;
    await passASecond();
    const states = disk.lines.map(line => JSON.parse(line)).filter(({ kind }) => kind === 'event');
    expect(states.at(-1)?.data).toMatchObject({ type: 'stop', by: 'second' });
  });

  it('says it from its first sentence where it was gone on with on a full disk', async () => {
    const { disk, session, record } = await onSmallDisk();
    disk.isFull = true;
    await record.append('reading', {}).catch(() => {});
    const again = new Session(session.parts, session.moment);
    const viewer = new Viewer(again, 'keys');
    await again.begin();
    expect(viewer.view().problems.join()).toContain('the record is kept in memory');
  });
});
