import { beforeEach, describe, expect, it } from 'vitest';
import type { EngineHeard } from '../../../src/engineering/engine-sound/ear.ts';
import { readLog } from '../../../src/record/index.ts';
import {
  type EngineEarLink,
  joinEngineEar,
  tooFastRpm,
} from '../../../src/session/engine-ear/join-engine-ear.ts';
import { type BusRig, busRig } from '../../helpers/bus-rig.ts';
import { demoFour, demoSix } from '../../machines/helpers/profiles.ts';

let run: BusRig;
let ear: EngineEarLink;
let changes: number;
beforeEach(async () => {
  run = await busRig('checks.leaks.item1');
  changes = 0;
  ear = joinEngineEar(run.session, () => {
    changes += 1;
  });
});

/** What an ear has told: a speed or, with null, honest silence. */
const told = (rpm: number | null, more: Partial<EngineHeard> = {}): EngineHeard => ({
  toldS: run.clock.nowMs() / 1000,
  atS: run.clock.nowMs() / 1000,
  claim: rpm === null ? null : { rpm, confidence: 0.9 },
  happened: null,
  hunting: null,
  levelsDb: [],
  ...more,
});

/** Seven times a second for so long. */
async function hears(
  rpm: number | null,
  seconds: number,
  more: Partial<EngineHeard> = {},
  microphone?: string,
) {
  for (let look = 0; look < seconds * 7; look += 1) {
    ear.take(told(rpm, more), microphone);
    await run.pass(1000 / 7);
  }
}

const onRecord = async () => {
  await run.session.settled();
  return (await readLog(run.path)).entries.flatMap(({ kind, data }) =>
    kind === 'engineHeard' ? [data] : [],
  );
};
const called = () => run.said.filter(text => text.startsWith('Danger. I hear the engine'));

describe('the speed that is heard', () => {
  it('is shown for a second, and everybody who looks is told', async () => {
    expect(ear.state()).toEqual({ rpm: null, trace: [], hunting: null, change: null, microphone: '' });
    ear.take(told(752.4));
    expect(changes).toBe(1);
    await run.pass(1000);
    expect(ear.state().rpm).toBe(752.4);
    await run.pass(1);
    expect(ear.state().rpm).toBeNull();
  });

  it('is drawn by the second, the last of each, with gaps where nothing was heard, for a minute', async () => {
    const { clock } = run;
    await run.pass(1000 - (clock.nowMs() % 1000));
    ear.take(told(700));
    ear.take(told(710.6));
    await run.pass(1000);
    ear.take(told(null));
    await run.pass(3000);
    ear.take(told(720));
    expect(ear.state().trace).toEqual([711, null, null, null, 720]);
    await hears(800, 65);
    expect(ear.state().trace).toHaveLength(60);
    expect(ear.state().trace.every(rpm => rpm === 800)).toBe(true);
    await run.pass(600_000);
    ear.take(told(810));
    expect(ear.state().trace).toEqual([...Array(59).fill(null), 810]);
  });

  it('stands beside an answer that is given within a second of it, and beside no later one', async () => {
    const beside = async () => {
      await run.session.settled();
      const { entries } = await readLog(run.path);
      return entries.flatMap(({ kind, data }) => (kind === 'event' && 'ear' in data ? [data.ear] : []));
    };
    ear.take(told(750));
    await run.pass(1000);
    run.session.receive({ type: 'reply', id: 'stillLooking' }, 'second', 'keys');
    expect(await beside()).toEqual([{ speedRpm: 750 }]);
    await run.pass(1);
    run.session.receive({ type: 'reply', id: 'stillLooking' }, 'second', 'keys');
    ear.take(told(750));
    run.session.receive({ type: 'sayAgain' }, 'second', 'keys');
    expect(await beside()).toHaveLength(1);
    ear.close();
    run.session.receive({ type: 'reply', id: 'stillLooking' }, 'second', 'keys');
    expect(await beside()).toHaveLength(1);
  });

  it('is on the record by the microphone that heard it, where there are several', async () => {
    ear.take(told(750, { happened: 'running' }), 'the second person’s');
    expect(ear.state().microphone).toBe('the second person’s');
    expect(await onRecord()).toEqual([
      { happened: 'running', rpm: 750, certainty: 0.9, microphone: 'the second person’s' },
    ]);
  });

  it('is on the record without one where there is one alone, and without a speed where none was told', async () => {
    ear.take(told(null, { happened: 'stalled' }));
    ear.take(told(750));
    expect(await onRecord()).toEqual([{ happened: 'stalled' }, { rpm: 750, certainty: 0.9 }]);
    // It is there already.
    ear.take(told(750));
    expect(await onRecord()).toHaveLength(2);
  });
});

describe('an engine that is heard too fast', () => {
  it('is so from where its profile has it stop, else from 15 % above the highest speed that is asked for', () => {
    expect(tooFastRpm(demoSix)).toBe(3000);
    // Asked for 2100 rpm at the most.
    expect(tooFastRpm(demoFour)).toBeCloseTo(2415, 9);
  });

  it('is called out after half a second of it, and again after ten', async () => {
    const limit = tooFastRpm(run.session.parts.profile);
    ear.take(told(limit));
    await run.pass(499);
    ear.take(told(limit));
    expect(called()).toHaveLength(0);
    await run.pass(1);
    ear.take(told(limit));
    expect(called()).toHaveLength(1);
    await hears(limit, 9);
    expect(called()).toHaveLength(1);
    await hears(limit, 2);
    expect(called()).toHaveLength(2);
    expect((await onRecord()).filter(({ happened }) => happened === 'overspeed')).toEqual(
      Array(2).fill({ happened: 'overspeed', rpm: limit, certainty: 0.9 }),
    );
  });

  it('is not one that was too fast for a moment, twice, nor one that another microphone hears on', async () => {
    const limit = tooFastRpm(run.session.parts.profile);
    ear.take(told(limit));
    await run.pass(300);
    ear.take(told(limit - 1));
    await run.pass(300);
    ear.take(told(limit));
    await run.pass(300);
    ear.take(told(limit), 'another');
    await run.pass(300);
    ear.take(told(limit), 'another');
    expect(called()).toHaveLength(0);
    await run.pass(200);
    ear.take(told(limit), 'another');
    expect(called()).toHaveLength(1);
  });
});

describe('what an ear notices besides', () => {
  const hunting = { amplitudeRpm: 50, periodS: 3 };

  it('is an idle that hunts: shown while it does, on the record once a minute', async () => {
    ear.take(told(700, { hunting }));
    expect(ear.state().hunting).toEqual(hunting);
    await hears(700, 59, { hunting });
    const kept = async () => (await onRecord()).filter(({ happened }) => happened === 'hunting');
    expect(await kept()).toEqual([{ happened: 'hunting', ...hunting }]);
    await hears(700, 2, { hunting });
    expect(await kept()).toHaveLength(2);
    ear.take(told(700));
    expect(ear.state().hunting).toBeNull();
  });

  it('is a sound that has changed since its first minute: shown, and on the record once a minute', async () => {
    const quiet = Array(5).fill(-40);
    await hears(700, 61, { levelsDb: quiet });
    expect(ear.state().change).toBeNull();
    await hears(700, 30, { levelsDb: quiet.map((db, band) => (band === 2 ? -20 : db)) });
    expect(ear.state().change?.db).toBeGreaterThan(5);
    expect((await onRecord()).filter(({ happened }) => happened === 'changed')).toHaveLength(1);
  });
});

describe('an ear at a session that is over', () => {
  it('tells nothing more', async () => {
    run.session.receive({ type: 'stop' }, 'technician', 'keys');
    for (const id of ['allOff', 'endSession', 'yes'] as const) {
      await run.session.settled();
      run.session.receive({ type: 'reply', id }, 'technician', 'keys');
    }
    await run.session.settled();
    expect(run.key()).toBe('ended');
    ear.take(told(750, { happened: 'running' }));
    expect([changes, ear.state().rpm]).toEqual([0, null]);
  });
});
