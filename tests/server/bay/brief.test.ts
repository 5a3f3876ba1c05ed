import { describe, expect, test } from 'vitest';
import { briefOf } from '../../../src/server/bay/brief.ts';
import type { Run } from '../../../src/server/bay/run.ts';
import type { BayState } from '../../../src/server/protocol/index.ts';
import { Viewer } from '../../../src/session/viewer.ts';
import { type Rig, rig } from '../../helpers/session-rig.ts';
import { bareBay, deviceIn } from './bare-bay.ts';

type View = NonNullable<BayState['view']>;

/** A bay whose session has begun, as its faces see it; some of the view changed. */
async function atWork(
  changed: Partial<View> = {},
): Promise<{ state: BayState; run: Run; bench: Rig; view: View }> {
  const bench = await rig();
  await bench.session.begin();
  const view = { ...(new Viewer(bench.session, 'keys').view() as View), ...changed };
  const run = { session: bench.session } as Run;
  return { state: { ...bareBay, session: 's', view }, run, bench, view };
}

describe('A bay in a line', () => {
  test('in which nothing runs is free, and names no more than itself', () => {
    expect(briefOf(bareBay, null, 0)).toEqual({
      bay: 'bay',
      session: null,
      state: 'free',
      outcome: null,
      vehicle: '',
      profile: '',
      phase: '',
      phaseNumber: 0,
      phaseCount: 0,
      title: '',
      engine: 'off',
      waitsFor: null,
      timer: null,
      sessionMs: 0,
      holdAsked: false,
      away: [],
    });
  });

  test('in which a session was lost is not free, and nobody knows what its engine does', async () => {
    expect(briefOf({ ...bareBay, lost: { session: 's' } }, null, 0)).toMatchObject({
      state: 'lost',
      engine: 'unsure',
    });
  });

  test('in which a session runs tells what it works on, where it is and whom it waits for', async () => {
    const { state, run, bench, view } = await atWork();
    expect(briefOf(state, run, 1234)).toEqual({
      bay: 'bay',
      session: 's',
      state: 'working',
      outcome: null,
      vehicle: bench.session.parts.job.vehicle,
      profile: view.profileName,
      phase: view.phase,
      phaseNumber: 1,
      phaseCount: view.phaseCount,
      title: view.title,
      engine: 'off',
      waitsFor: { role: 'technician', name: view.addressedName },
      timer: null,
      sessionMs: 1234,
      holdAsked: false,
      away: [],
    });
    expect(view.phaseCount).toBeGreaterThan(1);
  });

  test.each(['working', 'held', 'stopped', 'over'] as const)('that is %s says so', async state => {
    const { state: bay, run } = await atWork({ state, engine: 'running' });
    expect(briefOf(bay, run, 0)).toMatchObject({ state, engine: 'running' });
  });

  test('in which a stop word is tried out is not one that was stopped', async () => {
    const { state, run } = await atWork({ state: 'stopped', drill: true });
    expect(briefOf(state, run, 0).state).toBe('drill');
  });

  test('waits for somebody where something may be chosen or a number is asked for, and never when it is over', async () => {
    const number = { name: 'oil', unit: 'l', min: 0, max: 40 };
    const waits = async (changed: Partial<View>) => {
      const { state, run } = await atWork(changed);
      return briefOf(state, run, 0).waitsFor !== null;
    };
    expect(await waits({ choices: ['done'], number: null })).toBe(true);
    expect(await waits({ choices: [], number })).toBe(true);
    expect(await waits({ choices: [], number: null })).toBe(false);
    expect(await waits({ choices: ['done'], number, outcome: 'signedOff' })).toBe(false);
  });

  test('tells its timer, how it came out, and that a hold is asked for', async () => {
    const { state, run } = await atWork({
      timer: { title: 'Starter rests', totalMs: 120_000, leftMs: 30_000, held: true },
      outcome: 'ended',
    });
    const holdAsked = { name: 'Someone', sessionMs: 0 } as unknown as BayState['holdAsked'];
    expect(briefOf({ ...state, holdAsked }, run, 0)).toMatchObject({
      timer: { title: 'Starter rests', leftMs: 30_000, held: true },
      outcome: 'ended',
      holdAsked: true,
    });
  });

  test('names the devices that are away, and no others', () => {
    const devices = [
      deviceIn({ id: 'a', role: 'technician', name: 'Ada', connected: true }),
      deviceIn({ id: 'b', role: 'second', name: 'Ben', connected: false }),
    ];
    expect(briefOf({ ...bareBay, devices }, null, 0).away).toEqual([{ role: 'second', name: 'Ben' }]);
  });
});
