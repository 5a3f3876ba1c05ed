import type { LineId, StepId } from '../prompts/types.ts';
import type { Context, Timer } from './context.ts';
import { unansweredAlarmMs } from './kinds/unanswered.ts';
import { STOPPED, stopNow } from './progress.ts';
import { atMs, type Look, type Move, remark, update } from './toolkit.ts';
import type { Cause } from './vocabulary.ts';

/** A moment of a timed stretch at which something is spoken. */
interface Moment {
  readonly elapsedMs: number;
  readonly line: LineId;
}

const TEN_SECONDS_MS = 10_000;

/** People wait out a shorter stretch where they see its clock. */
const WORTH_HALF_MS = 240_000;

/** When a stretch of this length speaks: at half time and ten seconds before its end, where those are worth hearing. */
export function momentsOf(totalMs: number): readonly Moment[] {
  const half: Moment[] = totalMs >= WORTH_HALF_MS ? [{ elapsedMs: totalMs / 2, line: 'holdHalf' }] : [];
  const last: Moment[] =
    totalMs >= 2 * TEN_SECONDS_MS ? [{ elapsedMs: totalMs - TEN_SECONDS_MS, line: 'holdTenSeconds' }] : [];
  return [...half, ...last];
}

const elapsedMs = (timer: Timer, nowMs: number) => nowMs - timer.startedMs;

/** Beside a running engine time does not stand still for a hold: it goes on to warm up. */
const isHeldRunning = ({ heldSinceMs, unanswered }: Context) => heldSinceMs !== null && unanswered !== null;

const frozenMs = (context: Context) => (isHeldRunning(context) ? null : context.heldSinceMs);

/** Milliseconds left at `nowMs`; while on hold, those left when the hold began. */
export const leftMs = (context: Context, nowMs: number): number | null =>
  context.timer === null
    ? null
    : Math.max(0, context.timer.totalMs - elapsedMs(context.timer, frozenMs(context) ?? nowMs));

/** The next of its moments; undefined where it has said all, or says nothing. */
const nextMoment = ({ totalMs, announced }: Timer): Moment | undefined =>
  announced === null ? undefined : momentsOf(totalMs)[announced];

/** When the timer next has something to say, or ends. */
const timerAlarmMs = (timer: Timer): number =>
  timer.startedMs + (nextMoment(timer)?.elapsedMs ?? timer.totalMs);

/** Beside a running engine a hold puts off no time whose end stops it; what goes on at its end waits for the hold's. */
function heldAlarmMs(context: Context): number | null {
  const { timer } = context;
  const silenceMs = unansweredAlarmMs(context);
  return silenceMs === null || timer?.stops === undefined
    ? silenceMs
    : Math.min(silenceMs, timer.startedMs + timer.totalMs);
}

/** When the session has to look at the clock next; null when nothing is timed, or while on hold beside an engine that stands. */
export function nextAlarmMs(context: Context): number | null {
  if (context.heldSinceMs !== null) return heldAlarmMs(context);
  const alarms = [
    unansweredAlarmMs(context),
    context.timer && timerAlarmMs(context.timer),
    context.deadline?.atMs,
    context.nextLookMs,
    context.clearAtMs === null ? null : context.clearAtMs + clearValidMs(context),
  ].filter(alarm => typeof alarm === 'number');
  return alarms.length > 0 ? Math.min(...alarms) : null;
}

/** How long the second person's "clear" holds good. */
export const clearValidMs = (context: Context) => context.profile.walkRound.clearValidS * 1000;

const timerFor = (look: Look, seconds: number, announced: number | null): Partial<Context> => ({
  timer: { startedMs: atMs(look.event), totalMs: Math.round(seconds * 1000), announced },
});

export const startTimer = (seconds: (look: Look) => number) =>
  update(look => timerFor(look, seconds(look), 0));

/** A timer that ends without having said anything on the way. */
export const startSilentTimer = (seconds: (look: Look) => number) =>
  update(look => timerFor(look, seconds(look), null));

/**
 * The silent timer of a watch; one that is begun once more since the last stop goes on.
 * @param stops what its end stops with, where it does
 */
export const startWatchTimer = (id: StepId, seconds: (context: Context) => number, stops: Cause | null) =>
  update(({ context, event }) => {
    const startedMs = context.watchesBegan[id] ?? atMs(event);
    const totalMs = Math.round(seconds(context) * 1000);
    return {
      watchesBegan: { ...context.watchesBegan, [id]: startedMs },
      timer: { startedMs, totalMs, announced: null, ...(stops === null ? {} : { stops }) },
    };
  });

/** Whether a watch that was begun since the last stop has had its longest time: back in it, it would end at once. */
export function isWatchOver(
  id: StepId,
  seconds: (context: Context) => number,
  { context, event }: Look,
): boolean {
  const beganMs = context.watchesBegan[id];
  return beganMs !== undefined && atMs(event) - beganMs >= Math.round(seconds(context) * 1000);
}

export const timerOver = ({ context, event }: Look) => leftMs(context, atMs(event)) === 0;

/** In a hold beside a running engine: its end stops it there too. */
export const timerStops: Move = {
  guard: look => timerOver(look) && look.context.timer?.stops !== undefined,
  target: STOPPED,
  actions: update(look => stopNow(look, look.context.timer?.stops ?? null)),
};

/** Whether it is time to look again. */
export const lookDue = ({ context, event }: Look) =>
  context.nextLookMs !== null && atMs(event) >= context.nextLookMs;

/** The moment of a timed stretch that has come and was not spoken yet; undefined where none has, and once it is over. */
function momentNow(look: Look): Moment | undefined {
  const { timer } = look.context;
  const next = timer ? nextMoment(timer) : undefined;
  return timer && next && atMs(look.event) >= timer.startedMs + next.elapsedMs && !timerOver(look)
    ? next
    : undefined;
}

/** Speaks the moment that has come, if one has. */
export const announce = {
  guard: (look: Look) => momentNow(look) !== undefined,
  actions: [
    remark(look => ({
      line: momentNow(look)?.line ?? 'timeLeft',
      values: { time: { unit: 's', si: (leftMs(look.context, atMs(look.event)) ?? 0) / 1000 } },
    })),
    update(({ context: { timer } }) => ({
      timer: timer && { ...timer, announced: (timer.announced ?? 0) + 1 },
    })),
  ],
};

/** What a hold does to everything that is timed: it all moves by as long as the hold lasted, unless the engine ran. */
export function shiftTimes(context: Context, byMs: number): Partial<Context> {
  if (isHeldRunning(context)) return {};
  return {
    timer: context.timer && { ...context.timer, startedMs: context.timer.startedMs + byMs },
    nextLookMs: context.nextLookMs === null ? null : context.nextLookMs + byMs,
  };
}
