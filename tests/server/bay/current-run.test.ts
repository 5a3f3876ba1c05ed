import { describe, expect, test } from 'vitest';
import { CurrentRun } from '../../../src/server/bay/current-run.ts';
import type { Run } from '../../../src/server/bay/run.ts';
import { partsOfABay } from './parts-of-a-bay.ts';

describe('The session of a bay', () => {
  test('is none before one has begun, and there is no time and no question of it', () => {
    const current = new CurrentRun(() => {});
    expect([current.run, current.goingOn, current.sessionMs, current.holdAsked]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect(current.turn).toBe('/0');
  });

  test('is the one that was put here last, and whoever watches is told of it', async () => {
    const bay = await partsOfABay();
    await bay.begin();
    const followed: Run[] = [];
    const current = new CurrentRun(run => followed.push(run));
    current.follow(bay.run());
    expect(followed).toEqual([bay.run()]);
    expect(current.goingOn).toBe(bay.run());
    expect(current.sessionMs).toBe(0);
    current.askHold(bay.supervisor);
    current.leave();
    expect([current.run, current.goingOn, current.sessionMs, current.holdAsked]).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });

  test('names its question anew as soon as another one is asked, though nobody has been told yet', async () => {
    const bay = await partsOfABay();
    await bay.begin();
    const { current } = bay;
    const asked = current.turn;
    expect(asked.startsWith(`${bay.run().id}/`)).toBe(true);
    bay.run().session.receive({ type: 'reply', id: 'cardRight' }, 'technician', 'touch');
    expect(current.turn).not.toBe(asked);
  });
});
