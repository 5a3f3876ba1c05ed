import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isOver, stateName } from '../../machines/moment.ts';
import { replies } from '../../prompts/en/replies.ts';
import type { EventBody } from '../../src/session/hearing.ts';
import { Driver, type Happened } from './helpers/driver.ts';
import { goodBody } from './helpers/good.ts';
import { effectOf, holdsAfter, isCrankingState, isRunningState, unmetNeeds } from './helpers/oracle.ts';
import { stepIds } from './helpers/paths.ts';
import { demoFour, demoSix, shortest } from './helpers/profiles.ts';

/** The same sequences on every run; fast-check prints the seed and the shrunk path of a failure. */
const SEED = 20_260_101;

const replyIds = Object.keys(replies).flatMap(id => (isReplyId(id) ? [id] : []));
function isReplyId(id: string): id is keyof typeof replies {
  return id in replies;
}

const quantities = ['oilPressure', 'coolantTemperature', 'batteryVoltage', 'failureMode'] as const;
const control = fc.constantFrom('hold', 'continue', 'goBack', 'skip', 'unclear', 'status', 'sayAgain');

type Deed =
  | { readonly kind: 'good' }
  | { readonly kind: 'offered'; readonly which: number }
  | { readonly kind: 'body'; readonly body: EventBody };

const body = (arbitrary: fc.Arbitrary<EventBody>): fc.Arbitrary<Deed> =>
  arbitrary.map(made => ({ kind: 'body', body: made }));

const deed: fc.Arbitrary<Deed> = fc.oneof(
  { weight: 12, arbitrary: fc.constant({ kind: 'good' as const }) },
  { weight: 4, arbitrary: fc.nat(20).map(which => ({ kind: 'offered' as const, which })) },
  { weight: 2, arbitrary: body(fc.constant({ type: 'clock' })) },
  { weight: 2, arbitrary: body(control.map(type => ({ type }))) },
  { weight: 1, arbitrary: body(fc.constant({ type: 'stop' })) },
  {
    weight: 1,
    arbitrary: body(fc.constantFrom(...replyIds).map(id => ({ type: 'reply', id }))),
  },
  {
    weight: 1,
    arbitrary: body(
      fc.record({
        type: fc.constant('value' as const),
        quantity: fc.constantFrom(...quantities),
        si: fc.oneof(fc.double({ min: -100, max: 1000 }), fc.constant(Number.NaN)),
      }),
    ),
  },
  { weight: 1, arbitrary: body(fc.string().map(text => ({ type: 'reason', text }))) },
);

const turn = fc.record({
  deed,
  afterMs: fc.oneof(
    { weight: 6, arbitrary: fc.integer({ min: 200, max: 3000 }) },
    { weight: 1, arbitrary: fc.integer({ min: 0, max: 120_000 }) },
  ),
  by: fc.constantFrom('technician' as const, 'second' as const, 'supervisor' as const),
  via: fc.constantFrom('voice' as const, 'voice' as const, 'keys' as const),
});
type Turn = typeof turn extends fc.Arbitrary<infer T> ? T : never;

function carryOut(driver: Driver, { deed: todo, ...how }: Turn): void {
  if (todo.kind === 'body') driver.send(todo.body, how);
  else if (todo.kind === 'good') {
    const good = goodBody(driver.moment);
    if (good) driver.send(good, { afterMs: how.afterMs });
    else if (driver.alarmMs !== null) driver.ring();
  } else {
    const offered = Object.values(driver.moment.getMeta()).flatMap(offer => offer?.replies ?? []);
    const id = offered[todo.which % Math.max(1, offered.length)];
    if (id) driver.reply(id, how);
  }
}

/** All-good sessions at every tenth event: where the random ones begin. */
function startingPoints(driver: Driver): Driver[] {
  const points: Driver[] = [driver.fork()];
  while (!driver.over) {
    driver.good();
    if (driver.history.length % 10 === 0 || /\.(cranking|ready)$/.test(driver.name))
      points.push(driver.fork());
  }
  return points.filter(point => !point.over);
}

const starts = [demoSix, demoFour, shortest].flatMap(profile => startingPoints(new Driver(profile)));

const opensGate = ({ notes }: Happened) => notes.filter(({ kind, data }) => kind === 'passed' && data.gate);

/** The event that may let a step with a gate pass: a confirmed read-back, the end of a hold, the drill. */
function confirmed({ event, before }: Happened): boolean {
  const name = stateName(before);
  if (event.type === 'reply' && event.id === 'yes') return /(readingBack|ReadBack|released)/.test(name);
  if (event.type === 'clock') return name.endsWith('.counting');
  // A free-text reason, typed by the supervisor; the codes before it were read back.
  if (event.type === 'reason') return name.endsWith('.accepting');
  return event.type === 'reply' && event.id === 'thatWasTheDrill' && name === 'stopped.drill';
}

function check(driver: Driver, begin: number): void {
  const ids = stepIds(driver.profile);
  let held = new Set<string>();
  let clearSinceMs = Number.NEGATIVE_INFINITY;
  driver.history.forEach((happened, index) => {
    const { event, before, after } = happened;
    const [from, to] = [stateName(before), stateName(after)];
    const effect = effectOf(happened, ids, driver.profile);
    if (index >= begin) {
      const way = `${from} -> ${to}`;
      expect([way, unmetNeeds(held, effect)]).toEqual([way, []]);
      if (opensGate(happened).length > 0) expect([way, confirmed(happened)]).toEqual([way, true]);
      if (isCrankingState(to) && from !== to)
        expect(event.atMs - clearSinceMs).toBeLessThan(driver.profile.walkRound.clearValidS * 1000);
      if (event.type === 'stop' && !isOver(before)) expect(to).toMatch(/^stopped\./);
      if (event.type === 'unclear' && from !== to) expect(to).toMatch(/^stopped\./);
      expect(after.hasTag('cranking') ? after.context.heldSinceMs : null).toBe(null);
    }
    if (effect.opens.includes('clear')) clearSinceMs = event.atMs;
    held = holdsAfter(held, effect);
  });
}

const sequences = fc.tuple(
  fc.nat(starts.length - 1),
  fc.array(turn, { minLength: 20, maxLength: 80, size: 'max' }),
);

describe('whatever happens in whatever order', () => {
  it(`no gate opens unconfirmed, nothing cranks or runs past an unmet one (seed ${SEED})`, () => {
    const reached = { cranking: 0, running: 0, stopped: 0, events: 0 };
    fc.assert(
      fc.property(sequences, ([start, turns]) => {
        const driver = (starts[start] ?? new Driver(demoSix)).fork();
        const begin = driver.history.length;
        for (const next of turns) if (!driver.over) carryOut(driver, next);
        check(driver, begin);
        for (const { after } of driver.history.slice(begin)) {
          const name = stateName(after);
          reached.events += 1;
          if (isCrankingState(name)) reached.cranking += 1;
          if (isRunningState(name)) reached.running += 1;
          if (name.startsWith('stopped')) reached.stopped += 1;
        }
      }),
      { seed: SEED, numRuns: 400, interruptAfterTimeLimit: 50_000 },
    );
    // The sequences do come to where it matters.
    expect(reached.events).toBeGreaterThan(5000);
    expect(reached.cranking).toBeGreaterThan(20);
    expect(reached.running).toBeGreaterThan(500);
    expect(reached.stopped).toBeGreaterThan(500);
  });
});
