import { afterEach, beforeEach, expect, it, onTestFinished, vi } from 'vitest';
import { recordClock } from '../../src/session/clock.ts';
import { headerData } from '../../src/session/header.ts';
import { DISK_ANSWERS_MS } from '../../src/session/record-writer.ts';
import { Session } from '../../src/session/session.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { rig, rigAround } from '../helpers/session-rig.ts';
import { recordOn, SmallDisk } from '../helpers/small-disk.ts';
import { Driver } from '../machines/helpers/driver.ts';
import { demoSix } from '../machines/helpers/profiles.ts';

beforeEach(() => void vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] }));
afterEach(() => void vi.useRealTimers());

/** An engine that is being cranked for its first fire, on a disk that may hang. */
async function cranked() {
  const { session: model, path } = await rig();
  const driver = new Driver(demoSix).goodUntil('firstFire.crank.cranking');
  const clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'), driver.nowMs);
  const disk = new SmallDisk();
  const { profile, job, units } = model.parts;
  const record = recordOn(disk, headerData({ profile, job, units, language: 'en' }), recordClock(clock));
  const session = new Session({ ...model.parts, clock, record }, driver.moment);
  const viewer = new Viewer(session, 'keys');
  onTestFinished(() => disk.answer());
  return { disk, session, viewer, clock, run: rigAround(session, clock, record, path) };
}

it('an engine without oil pressure is stopped in time though the disk neither takes anything nor fails', async () => {
  const { disk, session, viewer, clock, run } = await cranked();
  disk.hang();
  session.receive({ type: 'reply', id: 'fired' }, 'technician', 'keys');
  await vi.advanceTimersByTimeAsync(DISK_ANSWERS_MS);
  expect(run.key()).toBe('firstFire.oilPressure.asking');
  expect(viewer.view().problems).toContainEqual(expect.stringMatching(/^The disk does not answer/));

  clock.advance(1000 * demoSix.oilPressure.firstFireWithinS - 1);
  await vi.advanceTimersByTimeAsync(0);
  expect(run.key()).toBe('firstFire.oilPressure.asking');
  clock.advance(1);
  await vi.advanceTimersByTimeAsync(0);
  expect(run.key()).toMatch(/^stopped\./);
  expect(run.said.join(' ')).toMatch(/no oil pressure/i);
});

it('everything is on the disk in its order when it answers again, and that is told', async () => {
  const { disk, session, viewer, run } = await cranked();
  disk.hang();
  session.receive({ type: 'reply', id: 'fired' }, 'technician', 'keys');
  await vi.advanceTimersByTimeAsync(DISK_ANSWERS_MS);
  session.receive({ type: 'stop' }, 'technician', 'keys');
  const before = disk.lines.length;
  disk.answer();
  await vi.advanceTimersByTimeAsync(0);
  await session.settled();
  expect(viewer.view().problems.join()).toMatch(/The record can be written again/);
  const kept = disk.lines.slice(before).map(line => JSON.parse(line));
  expect(kept.map(({ kind, data }) => `${kind} ${data.type ?? ''}`.trim())).toEqual(
    expect.arrayContaining(['event reply', 'event stop']),
  );
  expect(run.record.unsavedEntries).toBe(0);
});

it('a disk that takes its time, but less, is waited for', async () => {
  const { disk, session, viewer, run } = await cranked();
  disk.hang();
  session.receive({ type: 'reply', id: 'fired' }, 'technician', 'keys');
  await vi.advanceTimersByTimeAsync(DISK_ANSWERS_MS - 1);
  // What cannot wait is called out at once; what is asked waits.
  expect(run.said).toEqual(['Release the starter!']);
  disk.answer();
  await vi.advanceTimersByTimeAsync(0);
  expect(run.said.join(' ')).toMatch(/oil pressure/i);
  expect(viewer.view().problems).toEqual([]);
});
