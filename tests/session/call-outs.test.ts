import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import type { RecordLog } from '../../src/record/index.ts';
import { SystemClock } from '../../src/session/clock.ts';
import { Session } from '../../src/session/session.ts';
import { Viewer } from '../../src/session/viewer.ts';
import { createTypedRecognizer } from '../../src/voice/recognizers/typed.ts';
import { rig } from '../helpers/session-rig.ts';
import { demoSix } from '../machines/helpers/profiles.ts';
import { sessionAt } from '../machines/limits/sessions.ts';

const { lines } = languages.en;
const DISK_MS = 25;

/** A record on a disk that takes its time. */
const onSlowDisk = (record: RecordLog): RecordLog =>
  new Proxy(record, {
    get(target, member) {
      if (member === 'append')
        return async (...entry: Parameters<RecordLog['append']>) => {
          await setTimeout(DISK_MS);
          return target.append(...entry);
        };
      const value: unknown = Reflect.get(target, member);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });

/** A session in real time that stands in this state, and what its faces show. */
async function shownAt(state: string) {
  const base = await rig('demo-six', 'metric');
  const driver = sessionAt(demoSix, state);
  const { parts } = base.session;
  const session = new Session(
    { ...parts, clock: new SystemClock(driver.nowMs), record: onSlowDisk(base.record) },
    driver.moment,
  );
  const viewer = new Viewer(session, 'keys');
  return {
    session,
    shown: () => viewer.view().callOuts ?? [],
    prompt: () => viewer.view().prompt,
    async answers(id: 'allOff' | 'stillRunning' | 'causeSmokeOrFire' | 'notYet' | 'yes' | 'ready') {
      session.receive({ type: 'reply', id }, 'technician', 'touch');
      await session.settled();
    },
  };
}

describe('what is called out, in real time and with a disk that is slow', () => {
  it('for a fire and somebody hurt stands beside the question until all is off', async () => {
    const run = await shownAt('warmUp.watch.asking');
    run.session.receive({ type: 'stop', cause: 'smokeOrFire' }, 'second', 'touch');
    expect(run.shown()).toEqual([lines.fireCall]);
    await run.session.settled();
    expect(run.prompt()).toBe(lines.areAllOff);
    expect(run.shown()).toEqual([lines.fireCall]);

    run.session.receive({ type: 'stop', cause: 'someoneHurt' }, 'second', 'touch');
    await run.session.settled();
    // Nobody's answer takes it away, and nobody's question.
    run.session.receive({ type: 'status' }, 'technician', 'touch');
    await run.session.settled();
    expect(run.shown()).toEqual([lines.surgery, lines.fireCall]);

    await run.answers('stillRunning');
    expect(run.shown()[0]).toContain('Still running:');
    expect(run.shown().slice(1)).toEqual([lines.surgery, lines.fireCall]);
    await run.answers('notYet');
    expect(run.shown()).toHaveLength(3);

    await run.answers('allOff');
    expect(run.shown()).toEqual([]);
  });

  it('for a fire that is named as the cause stands until that is gone on from', async () => {
    const run = await shownAt('warmUp.watch.asking');
    run.session.receive({ type: 'stop' }, 'second', 'touch');
    await run.session.settled();
    expect(run.shown()).toEqual(['Stop! Key off. Stop!']);
    await run.answers('allOff');
    expect(run.shown()).toEqual([]);
    await run.answers('causeSmokeOrFire');
    expect(run.shown()).toContain(lines.fireCall);
    run.session.receive({ type: 'status' }, 'technician', 'touch');
    await run.session.settled();
    expect(run.shown()).toContain(lines.fireCall);
  });

  it('beside a running engine stands until somebody has answered', async () => {
    const run = await shownAt('warmUp.watch.asking');
    run.session.callOut('secondGoneRunning');
    await run.session.settled();
    expect(run.shown()).toEqual([lines.secondGoneRunning]);
    const keys = createTypedRecognizer();
    run.session.attach(keys, 'keys');
    keys.type('gibberish');
    expect(run.shown()).toEqual([lines.secondGoneRunning]);
    keys.type('status');
    expect(run.shown()).toEqual([]);
  });
});
