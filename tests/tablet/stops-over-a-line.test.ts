import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { ANSWER_WITHIN_MS } from '../../src/tablet/face/stop-state.ts';
import { Connection } from '../../src/tablet/remote/connection.ts';
import type { KeptStop } from '../../src/tablet/remote/kept-stops.ts';
import { emptyBay } from './helpers/bay-state.ts';

type Way = 'answers' | 'hears the tool' | 'refuses' | 'swallows';

/** What happens next: a touch, time, or the laptop's doing with what it was sent. */
type Step =
  | { readonly kind: 'touch' }
  | { readonly kind: 'pass'; readonly ms: number }
  /** The laptop turns to the oldest stop that it has not turned to on this line. */
  | { readonly kind: 'laptop'; readonly way: Way }
  | { readonly kind: 'break' }
  /** The line that is being opened is there. */
  | { readonly kind: 'open' }
  | { readonly kind: 'refusedForGood' }
  /** The page is loaded anew. */
  | { readonly kind: 'reload' }
  /** The session of the bay is over, and another one has begun: a device hears of it on its next line. */
  | { readonly kind: 'nextSession' };

const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 5, arbitrary: fc.constant({ kind: 'touch' } as const) },
  { weight: 8, arbitrary: fc.integer({ min: 1, max: 1200 }).map(ms => ({ kind: 'pass', ms }) as const) },
  {
    weight: 6,
    arbitrary: fc
      .constantFrom<Way>('answers', 'answers', 'hears the tool', 'refuses', 'swallows')
      .map(way => ({ kind: 'laptop', way }) as const),
  },
  { weight: 2, arbitrary: fc.constant({ kind: 'break' } as const) },
  { weight: 5, arbitrary: fc.constant({ kind: 'open' } as const) },
  { weight: 1, arbitrary: fc.constant({ kind: 'refusedForGood' } as const) },
  { weight: 2, arbitrary: fc.constant({ kind: 'reload' } as const) },
  { weight: 1, arbitrary: fc.constant({ kind: 'nextSession' } as const) },
);

interface Given {
  readonly atMs: number;
  /** When it was answered, and as what. */
  answer: { readonly nth: number; readonly atMs: number; readonly as: 'stopped' | 'none' } | null;
  /** When the laptop refused it. */
  refusedAtMs: number | null;
  /** When nobody was left to answer it: the laptop refused this device for good. */
  lostAtMs: number | null;
  /** When the page was loaded anew while it had no answer and no refusal. */
  readonly reloadsMs: number[];
  /** In which session, as far as this device knew; null before it knew of any. */
  readonly session: string | null;
  /** The page that was loaded anew has to find out whether its session is still there. */
  isToJudge: boolean;
  /** It was not of the session that the page found when it was back. */
  isDropped: boolean;
  /** Answered or refused in a page before this one, which knows nothing of it. */
  isPast: boolean;
}

const isOpenStop = ({ answer, refusedAtMs, isDropped }: Given) =>
  !answer && refusedAtMs === null && !isDropped;

const idOf = (nth: number) => `00000000-0000-4000-8000-${String(nth).padStart(12, '0')}`;

/** A device and its laptop on a clock that the test moves. */
function bay() {
  let nowMs = 0;
  let timers: { readonly atMs: number; act(): void }[] = [];
  let line: {
    isOpen: boolean;
    inbox: string[];
    open(): void;
    tell(message: object): void;
    closed(): void;
  } | null = null;
  const given = new Map<string, Given>();
  const shouts: number[] = [];
  let ids = 0;
  let answers = 0;
  /** The laptop has refused this device for good, and this page has heard it. */
  let isOut = false;
  let refusesForGood = false;
  let sessions = 1;
  const sessionNow = () => `session ${sessions}`;
  let known: string | null = null;
  /** What the browser keeps for this tab, as it does: as text. */
  let kept = '[]';
  /** Timers of a page that is gone do nothing. */
  let pages = 0;
  const openPage = () =>
    new Connection(
      {
        token: 'secret',
        keptStops: {
          read: (): readonly KeptStop[] => JSON.parse(kept),
          write: stops => {
            kept = JSON.stringify(stops);
          },
        },
        openLine() {
          let opened = () => {};
          let texted: (text: string) => void = () => {};
          let ended = () => {};
          const own = {
            isOpen: false,
            inbox: [] as string[],
            open: () => opened(),
            tell: (message: object) => texted(JSON.stringify(message)),
            closed() {
              if (line === own) line = null;
              ended();
            },
          };
          line = own;
          return {
            send(text) {
              const { type, id }: { type: string; id?: string } = JSON.parse(text);
              if (type === 'command' && id !== undefined) own.inbox.push(id);
            },
            // Of an end from this side the browser tells late, or never.
            close() {
              if (line === own) line = null;
            },
            onOpen: handler => (opened = handler),
            onText: handler => (texted = handler),
            onClosed: handler => (ended = handler),
          };
        },
        nowMs: () => nowMs,
        wallMs: () => nowMs,
        after(ms, act) {
          const page = pages;
          timers.push({ atMs: nowMs + ms, act: () => page === pages && act() });
        },
        newId() {
          ids += 1;
          return idOf(ids);
        },
      },
      {
        onState() {},
        onSay() {},
        onHush() {},
        onCaughtUp() {},
        onRefused() {},
        onPairing() {},
        onUnanswered: () => shouts.push(nowMs),
      },
    );
  let connection = openPage();

  const pass = (ms: number) => {
    const untilMs = nowMs + ms;
    for (;;) {
      const [next] = timers.filter(({ atMs }) => atMs <= untilMs).sort((a, b) => a.atMs - b.atMs);
      if (!next) break;
      timers = timers.filter(each => each !== next);
      nowMs = next.atMs;
      next.act();
    }
    nowMs = untilMs;
  };
  const laptop = (way: Way) => {
    const id = line?.inbox.shift();
    const stop = id === undefined ? undefined : given.get(id);
    if (!line || id === undefined || !stop || way === 'swallows') return;
    if (way === 'refuses') {
      if (!stop.answer) stop.refusedAtMs ??= nowMs;
      line.tell({ type: 'error', id, code: 'failed', sentence: 'It failed.', final: false });
      return;
    }
    const as = way === 'answers' ? 'stopped' : 'none';
    if (!stop.answer) {
      answers += 1;
      stop.answer = { nth: answers, atMs: nowMs, as };
    }
    line.tell({ type: 'ack', id, again: false, ...(as === 'stopped' ? { stop: as } : {}) });
  };
  const turnAway = () => {
    isOut = true;
    for (const stop of given.values()) if (!stop.answer) stop.lostAtMs ??= nowMs;
    line?.tell({ type: 'error', id: null, code: 'notPaired', sentence: 'Pair again.', final: true });
    // Behind its last word the laptop closes the line: no answer comes any more.
    line?.closed();
  };
  const does: { readonly [K in Step['kind']]: (step: Extract<Step, { kind: K }>) => void } = {
    touch() {
      given.set(idOf(ids + 1), {
        atMs: nowMs,
        answer: null,
        refusedAtMs: null,
        lostAtMs: isOut ? nowMs : null,
        reloadsMs: [],
        session: known,
        isToJudge: false,
        isDropped: false,
        isPast: false,
      });
      connection.command({ do: 'stop' });
    },
    pass: ({ ms }) => pass(ms),
    laptop: ({ way }) => laptop(way),
    break: () => line?.closed(),
    open() {
      if (!line || line.isOpen) return;
      line.isOpen = true;
      line.open();
      if (refusesForGood) return turnAway();
      line.tell({
        type: 'welcome',
        v: PROTOCOL_VERSION,
        epoch: 'epoch-one',
        role: 'second',
        bay: 'one',
        device: 'd',
        serverMs: 0,
        seq: 0,
      });
      expect(connection.lineState).toBe('connected');
      known = sessionNow();
      for (const stop of given.values()) {
        if (!stop.isToJudge) continue;
        stop.isToJudge = false;
        stop.isDropped = stop.session !== null && stop.session !== known;
      }
      line.tell({ type: 'snapshot', seq: 1, sessionMs: 0, state: { ...emptyBay, session: known } });
    },
    refusedForGood() {
      if (!line?.isOpen) return;
      refusesForGood = true;
      turnAway();
    },
    reload() {
      pages += 1;
      isOut = false;
      known = null;
      line = null;
      for (const stop of given.values()) {
        stop.isToJudge = isOpenStop(stop);
        if (stop.isToJudge) stop.reloadsMs.push(nowMs);
        else stop.isPast = true;
      }
      connection = openPage();
      pass(0);
    },
    nextSession() {
      sessions += 1;
    },
  };
  return {
    connection: () => connection,
    given,
    shouts,
    now: () => nowMs,
    isThere: () => line !== null,
    pass,
    take(each: Step) {
      // The table above is total.
      (does[each.kind] as (step: Step) => void)(each);
    },
  };
}

/** How it stands with the stops that this page knows of, by the rule itself: the worst of them. */
function expectedState(all: readonly Given[], nowMs: number): string {
  const stops = all.filter(({ isDropped, isPast }) => !isDropped && !isPast);
  const open = stops.filter(isOpenStop);
  const isOverdue = ({ atMs, lostAtMs, reloadsMs }: Given) =>
    lostAtMs !== null || reloadsMs.length > 0 || nowMs - atMs >= ANSWER_WITHIN_MS;
  const lastRefused = stops.findLastIndex(({ answer, refusedAtMs }) => !answer && refusedAtMs !== null);
  // One that was refused is made up for by the answer to a later one.
  const isMadeUpFor = stops.slice(lastRefused + 1).some(({ answer }) => answer !== null);
  if ((lastRefused >= 0 && !isMadeUpFor) || open.some(isOverdue)) return 'unanswered';
  if (open.length > 0) return 'stopping';
  const answers = stops.flatMap(({ answer }) => answer ?? []).sort((a, b) => a.nth - b.nth);
  return answers.at(-1)?.as ?? 'none';
}

it('whatever comes in whatever order, a stop without an answer is shouted within its second, an answered one never', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 30 }), steps => {
      const { connection, given, shouts, now, pass, take } = bay();
      for (const each of [...steps, { kind: 'pass', ms: 2 * ANSWER_WITHIN_MS } as const]) {
        take(each);
        const stops = [...given.values()];
        expect([now(), connection().stop]).toEqual([now(), expectedState(stops, now())]);
      }
      pass(0);
      for (const { atMs, answer, refusedAtMs, lostAtMs, reloadsMs } of given.values()) {
        const never = Number.POSITIVE_INFINITY;
        const dueMs = Math.min(
          atMs + ANSWER_WITHIN_MS,
          refusedAtMs ?? never,
          lostAtMs ?? never,
          reloadsMs[0] ?? never,
        );
        if (answer && answer.atMs < dueMs) continue;
        // Between the touch and then: people may have been told just before because of another one.
        expect(shouts.some(shoutMs => shoutMs >= atMs && shoutMs <= dueMs)).toBe(true);
      }
      // Nobody is told to shout for nothing.
      for (const shoutMs of shouts)
        expect(
          [...given.values()].some(
            ({ atMs, answer, refusedAtMs, lostAtMs, reloadsMs }) =>
              atMs <= shoutMs &&
              (!answer || answer.atMs >= shoutMs) &&
              (shoutMs - atMs >= ANSWER_WITHIN_MS ||
                refusedAtMs === shoutMs ||
                lostAtMs === shoutMs ||
                reloadsMs.includes(shoutMs)),
          ),
        ).toBe(true);
    }),
    { numRuns: 3000 },
  );
});

it('a device that leaves takes a stop along that still waits: to its answer, or until people are told', async () => {
  for (const way of ['answers', 'swallows'] as const) {
    const { connection, take, shouts } = bay();
    let left = false;
    take({ kind: 'open' });
    take({ kind: 'touch' });
    const leaves = connection()
      .close()
      .then(() => {
        left = true;
      });
    await Promise.resolve();
    expect(left).toBe(false);
    take({ kind: 'laptop', way });
    take({ kind: 'pass', ms: ANSWER_WITHIN_MS });
    await leaves;
    expect([left, connection().stop, shouts.length]).toEqual(
      way === 'answers' ? [true, 'stopped', 0] : [true, 'unanswered', 1],
    );
  }
});

it('a device that leaves with nothing under way has left at once, for good', async () => {
  const { connection, take, isThere } = bay();
  take({ kind: 'open' });
  const left = connection().close();
  expect(isThere()).toBe(false);
  await left;
  take({ kind: 'pass', ms: 60_000 });
  expect(isThere()).toBe(false);
});
