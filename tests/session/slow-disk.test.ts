import { afterEach, beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import type { ReplyId } from '../../prompts/types.ts';
import { recordClock } from '../../src/session/clock.ts';
import { headerData } from '../../src/session/header.ts';
import { DISK_ANSWERS_MS, RecordWriter } from '../../src/session/record-writer.ts';
import { Session } from '../../src/session/session.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import type { Heard } from '../../src/voice/ports.ts';
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

it('a deadline that runs out while the disk takes its time stops at that moment', async () => {
  const { disk, session, clock, run } = await cranked();
  session.receive({ type: 'reply', id: 'fired' }, 'technician', 'keys');
  await vi.advanceTimersByTimeAsync(0);
  const withinMs = 1000 * demoSix.oilPressure.firstFireWithinS;
  clock.advance(withinMs - 100);
  disk.hang();
  session.hear({ kind: 'unclear', text: 'hm', reason: 'outOfGrammar' }, 'voice');
  clock.advance(99);
  expect(run.key()).toBe('firstFire.oilPressure.asking');
  clock.advance(1);
  expect(run.key()).toMatch(/^stopped\./);
});

it('an answer that came before a deadline is in time, though the disk has not taken the one before it', async () => {
  const { disk, session, clock, run } = await cranked();
  session.receive({ type: 'reply', id: 'fired' }, 'technician', 'keys');
  await vi.advanceTimersByTimeAsync(0);
  const withinMs = 1000 * demoSix.oilPressure.firstFireWithinS;
  clock.advance(withinMs - 1000);
  disk.hang();
  session.hear({ kind: 'unclear', text: 'hm', reason: 'outOfGrammar' }, 'voice');
  session.receive({ type: 'reply', id: 'pressureGood' }, 'technician', 'touch');
  clock.advance(1000);
  expect(run.key()).not.toMatch(/^stopped\./);
  expect(run.key()).not.toBe('firstFire.oilPressure.asking');
});

describe('what is heard before it has been asked', () => {
  const heard = (id: ReplyId): Heard => ({ kind: 'reply', id, text: id, confidence: 0.95 });

  it('is no answer: on a disk that hangs nobody agrees to what was never read back', async () => {
    const { disk, session, run } = await cranked();
    session.receive({ type: 'stop', cause: 'overspeed' }, 'second', 'touch');
    await vi.advanceTimersByTimeAsync(0);
    disk.hang();
    for (const id of ['allOff', 'yes', 'yes'] as const) {
      run.clock.advance(4000);
      session.hear(heard(id), 'voice');
    }
    expect(run.key()).toBe('stopped.makingSafeReadBack');
    disk.answer();
    await vi.advanceTimersByTimeAsync(0);
    await session.settled();
    const kept = disk.lines.map(line => JSON.parse(line)).filter(({ kind }) => kind === 'heard');
    expect(kept.slice(-3).map(({ data }) => [data.text, data.reason])).toEqual([
      ['allOff', undefined],
      ['yes', 'notYetAsked'],
      ['yes', 'notYetAsked'],
    ]);
    expect(run.happenings.findLast(({ kind }) => kind === 'heard')).toMatchObject({ counted: false });
    session.hear(heard('yes'), 'voice');
    await vi.advanceTimersByTimeAsync(0);
    expect(run.key()).not.toBe('stopped.makingSafeReadBack');
  });

  it('is no answer after a stop that was given once more', async () => {
    const { disk, session, run } = await cranked();
    session.receive({ type: 'stop', cause: 'overspeed' }, 'second', 'touch');
    await vi.advanceTimersByTimeAsync(0);
    run.clock.advance(4000);
    disk.hang();
    session.receive({ type: 'stop' }, 'second', 'touch');
    session.hear(heard('allOff'), 'voice');
    expect(run.key()).toBe('stopped.makingSafe');
    session.hear(heard('stillRunning'), 'voice');
    expect(run.happenings.findLast(({ kind }) => kind === 'heard')).toMatchObject({ counted: true });
  });

  it('stops and calls for help all the same', async () => {
    for (const [called, cause] of [
      [{ kind: 'stop', text: 'stop' }, null],
      [{ kind: 'stop', text: 'fire', calls: 'smokeOrFire' }, 'smokeOrFire'],
      [heard('causeSmokeOrFire'), 'smokeOrFire'],
    ] as const) {
      const { disk, session, run } = await cranked();
      disk.hang();
      session.receive({ type: 'reply', id: 'fired' }, 'technician', 'keys');
      session.hear(called, 'voice');
      expect(run.key()).toBe('stopped.makingSafe');
      expect(session.moment.context.stop?.cause ?? null).toBe(cause);
    }
  });
});

it('each entry has its three seconds: many that come one after another make no disk seem quick', async () => {
  const { disk, session, viewer } = await cranked();
  disk.hang();
  for (let second = 0; second < 3; second += 1) {
    session.keep('problem', { sentence: `entry ${second}` });
    await vi.advanceTimersByTimeAsync(DISK_ANSWERS_MS / 3);
  }
  expect(viewer.view().problems).toContainEqual(expect.stringMatching(/^The disk does not answer/));
});

it('the disk is told of once, and once more when it takes everything again', async () => {
  const { disk, session, run } = await cranked();
  const told = () => run.happenings.flatMap(each => (each.kind === 'notKept' ? [each.sentence] : []));
  disk.hang();
  session.keep('problem', { sentence: 'an entry' });
  await vi.advanceTimersByTimeAsync(3 * DISK_ANSWERS_MS);
  disk.isFull = true;
  disk.answer();
  await vi.advanceTimersByTimeAsync(0);
  disk.isFull = false;
  session.keep('problem', { sentence: 'another' });
  await vi.advanceTimersByTimeAsync(60_000);
  expect(told()).toEqual([expect.stringMatching(/^The disk does not answer/), expect.any(String), null]);
});

it('behind `closed` stands the sentence that says so, and no trouble with the disk', async () => {
  const disk = new SmallDisk();
  const { session } = await rig();
  const clock = recordClock(new VirtualClock(new Date('2026-01-02T03:04:05Z')));
  const { profile, job, units } = session.parts;
  const record = recordOn(disk, headerData({ profile, job, units, language: 'en' }), clock);
  const writer = new RecordWriter({ record }, () => {});
  disk.hang();
  writer.keep('closed', { outcome: 'ended' });
  await vi.advanceTimersByTimeAsync(DISK_ANSWERS_MS);
  writer.keep('said', { text: 'The session is over.', line: 'ended', step: 'job.card', priority: 'notice' });
  disk.answer();
  await vi.advanceTimersByTimeAsync(0);
  expect(disk.lines.map(line => JSON.parse(line).kind)).toEqual(['opened', 'closed', 'said']);
});
