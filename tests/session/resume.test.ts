import { describe, expect, it } from 'vitest';
import { readLog, reopenLog, verifyLog } from '../../src/record/index.ts';
import { recordClock } from '../../src/session/clock.ts';
import { ResumeError, restore } from '../../src/session/resume.ts';
import { Session } from '../../src/session/session.ts';
import { VirtualClock } from '../../src/session/virtual-clock.ts';
import { goUntil, type Rig, rig, rigAround } from '../helpers/session-rig.ts';

/** Breaks a session off at a state, as a power loss would, and goes on with its record. */
async function breakOffAt(key: string): Promise<{ before: Rig; after: Rig }> {
  const before = await rig();
  await before.session.begin();
  await goUntil(before, key);
  await before.record.close();
  const clock = new VirtualClock(new Date('2026-01-02T09:00:00Z'), before.clock.nowMs() + 60_000);
  const { log, entries } = await reopenLog(before.path, () => ({ clock: recordClock(clock) }));
  const { moment, header, leftAt } = restore(entries, before.path);
  const session = new Session(
    { ...before.session.parts, ...header, language: before.session.parts.language, clock, record: log },
    moment,
    leftAt,
  );
  return { before, after: rigAround(session, clock, log, before.path) };
}

const places = [
  'noFuelCrank.disabled.readingBack',
  'fill.coolantBleed.counting',
  'noFuelCrank.untilPressure.cranking',
  'keyOn.lamps.item2',
  'firstFire.oilPressure.asking',
  'warmUp.watch.between',
  'shutdown.firstSoak.counting',
  'signOff.retorque.item1',
];

describe('a session that broke off', () => {
  it.each(places)('at %s first asks what the engine is doing', async key => {
    const { before, after } = await breakOffAt(key);
    expect(after.session.moment.context.done).toEqual(before.session.moment.context.done);
    await after.session.begin();
    expect(after.key()).toBe('stopped.makingSafe');
    expect(after.session.moment.context.stop?.cause).toBe('toolRestarted');
    expect(after.said.join(' ')).toMatch(/what the engine is doing/);
  });

  it('is led to sign-off after it, through first fire again, and the record verifies', async () => {
    const { after } = await breakOffAt('warmUp.watch.between');
    await after.session.begin();
    for (const reply of ['all is off', 'correct', 'correct', 'ready', 'correct']) await after.type(reply);
    expect(after.session.moment.context.done).not.toContain('firstFire.crank');
    await goUntil(after);
    expect(after.key()).toBe('signedOff');
    await after.record.close();
    expect(await verifyLog(after.path)).toMatchObject({ ok: true });
  });

  it('is not gone on with once it is over', async () => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run);
    await run.record.close();
    const { entries } = await readLog(run.path);
    expect(() => restore(entries, 'the file')).toThrow(ResumeError);
  });
});
