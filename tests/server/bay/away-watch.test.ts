import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { english } from '../../../prompts/en/index.ts';
import { readLog } from '../../../src/record/index.ts';
import { readRecorded } from '../../../src/record/vocabulary/index.ts';
import { AwayWatch, goesOnUnheard, saidOfSecondGone } from '../../../src/server/bay/away-watch.ts';
import { CurrentRun } from '../../../src/server/bay/current-run.ts';
import type { Run } from '../../../src/server/bay/run.ts';
import { Viewer } from '../../../src/session/viewer.ts';
import { goUntil, rig } from '../../helpers/session-rig.ts';
import { partsOfABay } from './parts-of-a-bay.ts';

const CRANKING = 'noFuelCrank.untilPressure.cranking';

/** A session as a bay has it, led to this state. */
async function runAt(key: string) {
  const bench = await rig();
  const viewer = new Viewer(bench.session, 'keys');
  await bench.session.begin();
  await goUntil(bench, key);
  const run = { ...bench, id: 's', viewer, isOver: false } as unknown as Run;
  return { bench, run };
}

test('that the second person’s device has gone is said beside an engine that stands, called out beside one that runs, and neither where seconds count or in a stop', async () => {
  const { bench } = await runAt('job.card.asking');
  const said = () => saidOfSecondGone(bench.session.moment);
  expect(said()).toBe('secondGone');
  await goUntil(bench, 'firstFire.oilPressure.asking');
  expect(said()).toBeNull();
  await goUntil(bench, 'warmUp.watch.between');
  expect(said()).toBe('secondGoneRunning');
  bench.session.receive({ type: 'stop' }, 'technician', 'touch');
  expect(said()).toBeNull();
});

test('a session goes on unheard where its engine turns, and it is neither held nor stopped', async () => {
  const { bench, run } = await runAt('job.card.asking');
  expect(goesOnUnheard(run)).toBe(false);
  bench.session.receive({ type: 'hold' }, 'technician', 'touch');
  await bench.session.settled();
  expect(goesOnUnheard(run)).toBe(false);
  await bench.type('continue');
  await goUntil(bench, CRANKING);
  expect(goesOnUnheard(run)).toBe(true);
  bench.session.receive({ type: 'stop' }, 'technician', 'touch');
  expect(run.viewer.view().engine).not.toBe('off');
  expect(goesOnUnheard(run)).toBe(false);
});

describe('Who has left a bay', () => {
  beforeEach(() => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  async function at(key: string) {
    const { crew, technician, second } = await partsOfABay();
    const { bench, run } = await runAt(key);
    const current = new CurrentRun(() => {});
    current.follow(run);
    const shown: string[] = [];
    const away = new AwayWatch(crew, current, () => shown.push(bench.key()), 10_000);
    const leaves = (device: typeof technician) => {
      crew.left(device);
      away.left(device);
    };
    return { bench, crew, away, technician, second, leaves, shown };
  }

  test('and led an engine that turns is waited for; back in time, nothing is stopped, and else it is, and all are told', async () => {
    const { bench, crew, technician, second, leaves, shown } = await at(CRANKING);
    leaves(second);
    leaves(technician);
    vi.advanceTimersByTime(5_000);
    crew.came(technician);
    vi.advanceTimersByTime(20_000);
    expect(bench.key()).toBe(CRANKING);
    leaves(technician);
    vi.advanceTimersByTime(9_999);
    expect(bench.key()).toBe(CRANKING);
    expect(shown).toEqual([]);
    vi.advanceTimersByTime(1);
    expect(bench.session.moment.matches('stopped')).toBe(true);
    expect(shown).toEqual([bench.key()]);
    const problems = bench.happenings.flatMap(each => (each.kind === 'problem' ? [each.sentence] : []));
    expect(problems).toEqual(['The device that leads is away: the session was stopped. Key off.']);
  });

  test('and led an engine that stands is waited for as long as it takes, and nobody once the bay is closed', async () => {
    const standing = await at('job.card.asking');
    standing.leaves(standing.technician);
    vi.advanceTimersByTime(60_000);
    expect(standing.bench.key()).toBe('job.card.asking');
    const closed = await at(CRANKING);
    closed.leaves(closed.technician);
    closed.away.close();
    expect(vi.getTimerCount()).toBe(1);
    vi.advanceTimersByTime(60_000);
    expect(closed.bench.key()).toBe(CRANKING);
    // Nor does anybody who leaves then keep the program from its end.
    closed.leaves(closed.second);
    closed.crew.came(closed.technician);
    closed.leaves(closed.technician);
    expect(vi.getTimerCount()).toBe(0);
  });

  test('and led is waited for no longer because another one leaves as well; the stop is the tool’s', async () => {
    const { bench, technician, second, leaves } = await at(CRANKING);
    leaves(technician);
    vi.advanceTimersByTime(9_999);
    leaves(second);
    vi.advanceTimersByTime(1);
    expect(bench.session.moment.context.stop).toMatchObject({ by: 'technician' });
    await bench.session.settled();
    const { entries } = readRecorded((await readLog(bench.path)).entries);
    const events = entries.flatMap(entry => (entry.kind === 'event' ? [entry.data] : []));
    expect(events.at(-1)).toMatchObject({ type: 'stop', by: 'technician', via: 'tool' });
  });

  test('is called out ahead of everything else beside an engine that runs, if it is the second person’s', async () => {
    const { bench, second, leaves } = await at('warmUp.watch.between');
    leaves(second);
    vi.advanceTimersByTime(4_000);
    expect(bench.happenings.filter(each => each.kind === 'said').at(-1)).toMatchObject({
      line: 'secondGoneRunning',
      hazard: true,
    });
  });

  test('is missed after the time that a page takes to be loaded anew, if it is the second person’s', async () => {
    const { bench, crew, technician, second, leaves } = await at('job.card.asking');
    const missed = () => bench.said.filter(sentence => sentence === english.lines.secondGone).length;
    leaves(technician);
    leaves(second);
    crew.came(second);
    vi.advanceTimersByTime(4_000);
    expect(missed()).toBe(0);
    leaves(second);
    vi.advanceTimersByTime(3_999);
    expect(missed()).toBe(0);
    vi.advanceTimersByTime(1);
    expect(missed()).toBe(1);
  });
});
