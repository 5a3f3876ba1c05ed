import { describe, expect, test } from 'vitest';
import { CurrentRun, standsStill } from '../../../src/server/bay/current-run.ts';
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

  test('has a hold asked for by name and time, until it is declined or nothing goes on any more', async () => {
    const bay = await partsOfABay();
    await bay.begin();
    const { current, supervisor } = bay;
    bay.clock().advance(1500);
    const asked = { by: supervisor.name, atSessionMs: 1500 };
    current.askHold(supervisor);
    expect(current.holdAsked).toEqual(asked);
    current.declineHold();
    expect(current.holdAsked).toBeNull();
    current.askHold(supervisor);
    await bay.say('card is right');
    expect(current.holdAsked).toEqual(asked);
    const { session } = bay.run();
    session.receive({ type: 'hold' }, 'technician', 'touch');
    await session.settled();
    expect(standsStill(session.moment)).toBe(true);
    expect(current.holdAsked).toBeNull();
    session.receive({ type: 'continue' }, 'technician', 'touch');
    await session.settled();
    expect(standsStill(session.moment)).toBe(false);
    current.askHold(supervisor);
    bay.stopping.stop(bay.second, '1');
    expect(standsStill(session.moment)).toBe(true);
    await session.settled();
    expect(current.holdAsked).toBeNull();
  });

  test('shows what listens to it, and puts nothing on the record of one that is over', async () => {
    const bay = await partsOfABay();
    const { current, technician } = bay;
    current.listensWith('a tablet');
    current.record(technician, '1', { do: 'takeOver' });
    await bay.begin();
    current.listensWith('a tablet');
    expect(bay.run().viewer.view().hearing.source).toBe('a tablet');
    bay.stopping.stop(technician, '2');
    await bay.answerUntil(
      () => bay.run().isOver,
      ['end the session', 'all is off', 'correct', 'false alarm'],
    );
    const before = await bay.commandsOn(bay.run());
    current.record(technician, '3', { do: 'takeOver' });
    expect(await bay.commandsOn(bay.run())).toEqual(before);
  });

  test('names its question anew as soon as another one is asked, though nobody has been told yet', async () => {
    const bay = await partsOfABay();
    await bay.begin();
    const { current } = bay;
    const asked = current.turn;
    expect(asked.startsWith(`${bay.run().id}/`)).toBe(true);
    bay.run().session.receive({ type: 'reply', id: 'cardRight' }, 'technician', 'touch');
    const next = current.turn;
    expect(next).not.toBe(asked);
    // What is no news to anybody who watches is another question all the same.
    await bay.run().session.settled();
    bay.run().session.receive({ type: 'hold' }, 'technician', 'touch');
    expect(current.turn).not.toBe(next);
  });
});
