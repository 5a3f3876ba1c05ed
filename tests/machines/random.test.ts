import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stateName } from '../../machines/moment.ts';
import { replies } from '../../prompts/en/replies.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { passedUnmet } from '../../src/report/passed-unmet.ts';
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

/** Where a random session begins, with what a second opinion knows of the way there. */
interface Start {
  readonly driver: Driver;
  readonly held: Set<string>;
  readonly clearSinceMs: number;
}

/** All-good sessions at every tenth event, and before every burst. */
function startingPoints(profile: Profile): Start[] {
  const driver = new Driver(profile);
  const ids = stepIds(profile);
  const points: Start[] = [];
  let held = new Set<string>();
  let clearSinceMs = Number.NEGATIVE_INFINITY;
  for (let turn = 0; !driver.over; turn += 1) {
    if (turn % 10 === 0 || /\.(cranking|ready)$/.test(driver.name))
      points.push({ driver: driver.fork([]), held, clearSinceMs });
    const effect = effectOf(driver.good().last, ids, profile);
    held = holdsAfter(held, effect);
    if (effect.opens.includes('clear')) clearSinceMs = driver.nowMs;
  }
  return points;
}

const starts = [demoSix, demoFour, shortest].flatMap(startingPoints);

const opensGate = ({ notes }: Happened) => notes.filter(({ kind, data }) => kind === 'passed' && data.gate);

/** The event that may let a step with a gate pass: a confirmed read-back, the end of a hold, the drill. */
function confirmed({ event, before, notes }: Happened): boolean {
  const name = stateName(before);
  // Nothing is misheard at the keys: only what may free the engine is confirmed there too.
  const gates = notes.flatMap(({ kind, data }) => (kind === 'passed' && data.gate ? [data.gate] : []));
  const freesEngine = gates.some(gate => gate === 'fuellingDisabled' || gate === 'fuellingRestored');
  const byHand = event.via === 'keys' || event.via === 'touch';
  if (event.type === 'reply' && event.id === 'yes')
    return /(readingBack|ReadBack|released)/.test(name) || name === 'job.figures.asking';
  if (event.type === 'reply' && byHand && !freesEngine) return true;
  // That it fired is no permission: oil pressure has to show within seconds of it, or everything stops.
  if (
    event.type === 'reply' &&
    event.id === 'fired' &&
    gates.every(gate => ['engineFired', 'restarted'].includes(gate))
  )
    return /\.(cranking|outcome)$/.test(name);
  if (event.type === 'clock') return name.endsWith('.counting');
  // A free-text reason, typed by the supervisor; the codes before it were read back.
  if (event.type === 'reason') return name.endsWith('.accepting');
  return event.type === 'reply' && event.id === 'thatWasTheDrill' && name === 'stopped.drill';
}

/** What went wrong since the session's starting point, as sentences. */
function faultsOf({ driver: { profile, history }, held: heldAtStart, clearSinceMs }: Start): string[] {
  const ids = stepIds(profile);
  let held = heldAtStart;
  let clearMs = clearSinceMs;
  const validMs = profile.walkRound.clearValidS * 1000;
  return history.flatMap(happened => {
    const { event, before, after } = happened;
    const [from, to] = [stateName(before), stateName(after)];
    const effect = effectOf(happened, ids, profile);
    const unmet = unmetNeeds(held, effect);
    const wrong = [
      unmet.length > 0 && `without ${unmet.join(', ')}`,
      opensGate(happened).length > 0 && !confirmed(happened) && 'opens a gate unconfirmed',
      isCrankingState(to) && from !== to && event.atMs - clearMs >= validMs && 'with an old clear',
      event.type === 'stop' && !to.startsWith('stopped') && 'is not stopped',
      event.type === 'unclear' && from !== to && !to.startsWith('stopped') && 'by something unclear',
      after.hasTag('cranking') && after.context.heldSinceMs !== null && 'cranks on hold',
    ].filter(each => each !== false);
    if (effect.opens.includes('clear')) clearMs = event.atMs;
    held = holdsAfter(held, effect);
    return wrong.map(what => `${from} -> ${to} by ${event.type}: ${what}`);
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
      fc.property(sequences, ([place, turns]) => {
        const start = starts[place];
        if (!start) throw new Error('There is no such starting point.');
        const driver = start.driver.fork([]);
        for (const next of turns) if (!driver.over) carryOut(driver, next);
        expect(faultsOf({ ...start, driver })).toEqual([]);
        expect(
          passedUnmet(driver.notes.map((note, seq) => ({ ...note, seq, timeMs: seq, at: '' }))),
        ).toBeUndefined();
        for (const { after } of driver.history) {
          const name = stateName(after);
          reached.events += 1;
          if (isCrankingState(name)) reached.cranking += 1;
          if (isRunningState(name)) reached.running += 1;
          if (name.startsWith('stopped')) reached.stopped += 1;
        }
      }),
      { seed: SEED, numRuns: 300, interruptAfterTimeLimit: 50_000 },
    );
    // The sequences do come to where it matters.
    expect(reached.events).toBeGreaterThan(5000);
    expect(reached.cranking).toBeGreaterThan(20);
    expect(reached.running).toBeGreaterThan(500);
    expect(reached.stopped).toBeGreaterThan(500);
  });
});
