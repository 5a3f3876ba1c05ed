import { readFile, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import {
  addSignature,
  checkSignature,
  makeKeys,
  readLog,
  readPrivateKey,
  readSignatures,
  signHash,
  verifyLog,
} from '../../src/record/index.ts';
import { summarize } from '../../src/report/summarize.ts';
import { continueRecord } from '../../src/session/record-keeping.ts';
import { ResumeError } from '../../src/session/resume.ts';
import { Session } from '../../src/session/session.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { goUntil, type Rig, rig, rigAround } from '../helpers/session-rig.ts';
import { inputOf } from '../report/support.ts';

/** A new run of the program, `afterMs` later by the wall clock. */
const laterBy = (before: Rig, afterMs: number) => (beginMs: number) =>
  new VirtualClock(new Date(before.clock.wall().getTime() + afterMs - beginMs), beginMs);

async function endedEarly(): Promise<Rig> {
  const run = await rig();
  await run.session.begin();
  await run.type('stop');
  for (const reply of ['all is off', 'correct', 'another cause', 'correct', 'end the session', 'correct'])
    await run.type(reply);
  expect(run.key()).toBe('ended');
  await run.record.close();
  return run;
}

describe('going on with a record that is closed', () => {
  it('is refused without adding to it, so that a signature still holds', async () => {
    const run = await endedEarly();
    const { privatePem } = makeKeys();
    const { entries } = await readLog(run.path);
    const lastHash = entries.at(-1)?.hash ?? '';
    await addSignature(run.path, signHash(lastHash, readPrivateKey(privatePem, 'k'), 'bay', new Date(0)));
    const before = await readFile(run.path, 'utf8');
    for (let time = 0; time < 3; time += 1)
      await expect(continueRecord(run.path, laterBy(run, 60_000))).rejects.toThrow(
        new ResumeError(`${run.path} is closed: its session was ended. Begin a new one.`, true),
      );
    expect(await readFile(run.path, 'utf8')).toBe(before);
    const [signature] = await readSignatures(run.path);
    expect(
      signature && checkSignature(signature, (await readLog(run.path)).entries.at(-1)?.hash ?? ''),
    ).toMatchObject({
      valid: true,
    });
  });

  it('leaves the right to write it to others', async () => {
    const run = await endedEarly();
    await expect(continueRecord(run.path, laterBy(run, 0))).rejects.toThrow(ResumeError);
    await expect(continueRecord(run.path, laterBy(run, 0))).rejects.toThrow(/is closed/);
  });
});

it('a record torn in its very last lines is ended by the next run, and is confirmed', async () => {
  const run = await endedEarly();
  const lines = (await readFile(run.path, 'utf8')).split('\n');
  const closed = lines.findIndex(line => line.includes('"kind":"closed"'));
  await writeFile(run.path, `${lines.slice(0, closed).join('\n')}\n${lines[closed]?.slice(0, 40)}`);
  await expect(continueRecord(run.path, laterBy(run, 5000))).rejects.toThrow(
    /broke off as its session was over/,
  );
  expect(await verifyLog(run.path)).toMatchObject({ ok: true, remarks: [] });
  const { trust, outcome } = summarize(await inputOf(run.path));
  expect(outcome).toEqual({ kind: 'ended' });
  expect([trust.replayFault, trust.notUnderstood]).toEqual([undefined, []]);
  await expect(continueRecord(run.path, laterBy(run, 9000))).rejects.toThrow(/is closed/);
});

/** Breaks off at a state and goes on as the program does. */
async function goOn(before: Rig, afterMs: number): Promise<Rig> {
  await before.record.close();
  const { record, restored, clock } = await continueRecord(before.path, laterBy(before, afterMs));
  if (!(clock instanceof VirtualClock)) throw new Error('another clock');
  const session = new Session({ ...before.session.parts, clock, record }, restored.moment);
  const run = rigAround(session, clock, record, before.path);
  await session.begin();
  return run;
}

describe('a session that is gone on with', () => {
  it.each([0, 30_000, 3_600_000])('after %i ms has no clock set back on its record', async afterMs => {
    const before = await rig();
    await before.session.begin();
    await goUntil(before, 'job.ambient.asking');
    const after = await goOn(before, afterMs);
    await after.pass(5000);
    await after.record.close();
    expect(await verifyLog(before.path)).toMatchObject({ ok: true, remarks: [] });
  });

  it('keeps its session time through every restart', async () => {
    let run = await rig();
    await run.session.begin();
    await run.pass(40_000);
    await run.type('something that does not count');
    for (let restart = 0; restart < 3; restart += 1) run = await goOn(run, 1000);
    expect(run.clock.nowMs()).toBeGreaterThanOrEqual(40_000);
    await run.record.close();
    const { entries } = await readLog(run.path);
    expect(entries.filter(({ kind }) => kind === 'resumed').map(({ monoMs }) => monoMs >= 40_000)).toEqual([
      true,
      true,
      true,
    ]);
    expect(summarize(await inputOf(run.path)).trust.replayFault).toBeUndefined();
  });

  it('whose wall clock really was set back meanwhile is remarked once, where that was', async () => {
    const before = await rig();
    await before.session.begin();
    await before.pass(10_000);
    const after = await goOn(before, -60_000);
    await after.pass(5000);
    await after.record.close();
    expect(await verifyLog(before.path)).toMatchObject({ ok: true, remarks: [{ kind: 'wallClockJump' }] });
  });
});
