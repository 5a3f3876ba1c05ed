import { describe, expect, it } from 'vitest';
import { procedureFor } from '../../machines/first-start.ts';
import { offerOf } from '../../machines/moment.ts';
import type { Profile } from '../../src/profile/schema.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import { Driver, type How } from './helpers/driver.ts';
import { goodValue } from './helpers/good.ts';
import { demoBoat, demoSix } from './helpers/profiles.ts';
import { sessionAt } from './limits/sessions.ts';

type Deed = (driver: Driver) => Driver;

const engineOf = ({ profile, context }: Driver) =>
  procedureFor(profile).find(({ id }) => id === context.step)?.engine;

/** Beside an engine that runs something has to come of silence, held or not. */
const isUnwatched = (driver: Driver) =>
  !driver.name.startsWith('stopped') && engineOf(driver) === 'running' && driver.alarmMs === null;

/** What may happen next: every answer that is offered, every means, what changes nothing, and time. */
function deedsAt({ moment, alarmMs }: Driver): Deed[] {
  const { replies, quantity } = offerOf(moment);
  const send =
    (body: EventBody, how: How = {}): Deed =>
    driver =>
      driver.send(body, how);
  const number = (si: number, how: How) =>
    quantity ? [send({ type: 'value', quantity, si }, how)] : ([] as Deed[]);
  const good = quantity ? goodValue(quantity, moment) : Number.NaN;
  return [
    ...replies.map(id => send({ type: 'reply', id }, { via: 'voice' })),
    ...number(good, { via: 'voice' }),
    ...number(good, { via: 'bus' }),
    ...number(0, { via: 'voice' }),
    send({ type: 'hold' }),
    send({ type: 'continue' }),
    send({ type: 'unclear' }),
    send({ type: 'goBack' }),
    ...(alarmMs === null ? [] : [((driver: Driver) => driver.ring()) satisfies Deed]),
  ];
}

/** The first moment in every state beside the running engine, of a start in which all goes well. */
function runningPlaces(profile: Profile): Driver[] {
  const driver = new Driver(profile);
  const places = new Map<string, Driver>();
  for (let turn = 0; turn < 2000 && !driver.over; turn += 1) {
    if (driver.moment.hasTag('running') && !places.has(driver.name)) places.set(driver.name, driver.fork([]));
    driver.good();
  }
  return [...places.values()];
}

describe('a state beside a running engine', () => {
  it.each([
    ['a truck', demoSix],
    ['a boat', demoBoat],
  ] as const)('is never without an alarm: %s, whatever two things happen in it', (_, profile) => {
    const unwatched: string[] = [];
    const places = runningPlaces(profile);
    for (const place of places)
      for (const first of deedsAt(place)) {
        const after = first(place.fork([]));
        for (const second of deedsAt(after)) {
          const then = second(after.fork([]));
          if (isUnwatched(then)) unwatched.push(`${place.name}, ${after.name}, ${then.name}`);
        }
      }
    expect(places.length).toBeGreaterThan(20);
    expect(unwatched).toEqual([]);
  });

  it('is left by time where the bus falls silent during a hold in the middle of its series', () => {
    const driver = sessionAt(demoSix, 'checks.idle.item1').value('engineSpeed', 850, { via: 'bus' });
    expect(driver.name).toBe('checks.idle.sampling');
    driver.send({ type: 'hold' }).send({ type: 'continue' }, { afterMs: 10_000 });
    expect(driver.name).toBe('checks.idle.sampling');
    driver.ring();
    expect(driver.name).toBe('checks.idle.item1');
    expect(driver.context.unanswered).not.toBeNull();
  });
});
