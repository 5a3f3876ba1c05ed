import type { StepId } from '../../prompts/types.ts';
import { replyNeedsReadBack, valueNeedsReadBack } from '../assurance.ts';
import { firstLoaded } from '../controls.ts';
import {
  breaks,
  judgementData,
  keepReading,
  limitsOf,
  meets,
  noteVerdict,
  sayVerdict,
  sayVerdictRunning,
} from '../judging.ts';
import { canBeRead } from '../limits/gauges.ts';
import { leaveOpen, settle } from '../open-items.ts';
import { lateStops, pass, stopFor } from '../progress.ts';
import type { WatchStep } from '../steps.ts';
import { leftMs, lookDue, startWatchTimer, timerOver } from '../timing.ts';
import {
  atMs,
  type Line,
  type Look,
  type Move,
  type Node,
  type Nodes,
  note,
  remark,
  speak,
  update,
  withMeta,
} from '../toolkit.ts';
import {
  isContradicted,
  isFromBus,
  isOnBus,
  judgedByBus,
  setValueAside,
  valueBreaks,
  valueMeets,
} from './bus.ts';
import { denyOutside } from './deadline.ts';
import { doubtMoves, vouchingNodes } from './doubt.ts';
import { echo } from './echo.ts';
import { movesOf } from './nodes.ts';
import {
  askFor,
  askReply,
  askValue,
  readBack,
  readBackReply,
  readBackValue,
  setAside,
  type Waiting,
} from './question.ts';

const watchedS = ({ context, event }: Look): number => {
  const { timer } = context;
  return timer === null ? 0 : (timer.totalMs - (leftMs(context, atMs(event)) ?? 0)) / 1000;
};

/** Whether a value of this watch has been read since it began: then it is only asked how it is now. */
const lookedAt = ({ id }: WatchStep, { context: { readings, timer } }: Look) =>
  readings.some(({ step, atMs: at }) => step === id && timer !== null && at >= timer.startedMs);

/** A value that was read so long ago at most is still a first look. */
const FIRST_LOOK_S = 300;

/** Whether the gauge was read just before, and could go on for a while by what it showed. */
const justRead = (before: StepId, { reading }: WatchStep, { context, event }: Look) => {
  const last = context.readings.findLast(({ step }) => step === before);
  return (
    last !== undefined &&
    last.quantity === reading?.quantity &&
    atMs(event) - last.atMs < FIRST_LOOK_S * 1000 &&
    reading.farFrom(context, last.si)
  );
};

const againS = ({ everyS, peopleEveryS = everyS }: WatchStep, { context, event }: Look) =>
  event.via === 'bus' ? everyS(context) : peopleEveryS(context);

const planNextLook = (step: WatchStep) =>
  update(look => ({
    misheard: 0,
    nextLookMs:
      (look.event.type === 'continue' ? look.context.nextLookMs : null) ??
      atMs(look.event) + Math.round(againS(step, look) * 1000),
    // "Say again" now means the question, not the read-back that was answered.
    lastSaid: { step: step.id, priority: 'prompt', ...askFor(step)(look) },
  }));

/** A value waits to be denied that stops the engine. */
const isToStop = ({ context: { pending } }: Look) => pending?.kind === 'value' && pending.stops !== undefined;

/** Looks again and again until what is watched for has come; when the time is up, it stops. */
export function watchNodes(step: WatchStep): Nodes {
  const waiting: Waiting = { by: step.by, critical: false };
  const done = passWatch(step);
  const ask: Line = look =>
    step.reading && lookedAt(step, look)
      ? { line: 'coolantNow', values: { unit: { unitOf: step.reading.quantity } } }
      : askFor(step)(look);
  const timeUp: Move = { guard: timerOver, ...whenTimeIsUp(step) };
  const longEnough = (look: Look) => {
    const ruled = step.enough?.(watchedS(look));
    return ruled ? ruled.ok && ruled.value.met : watchedS(look) >= step.atLeastS(look.context);
  };
  const tooEarly: Move = {
    target: 'between',
    actions: [
      remark(look => ({
        line: 'tooEarly',
        values: { time: { unit: 's', si: step.atLeastS(look.context) - watchedS(look) } },
      })),
    ],
  };
  const question = askReply(waiting, ask, [
    ...(step.reading ? [{ reply: step.ok, move: contradicted(step, step.reading) }] : []),
    { reply: step.ok, move: stillShown(step) },
    {
      reply: step.ok,
      move: { guard: replyNeedsReadBack('limit'), target: 'readingBack', actions: setAside(step.ok) },
    },
    { reply: step.ok, move: { ...done, guard: longEnough } },
    { reply: step.ok, move: tooEarly },
  ]);
  const reading = step.reading;
  const danger = reading ? dangerOf(reading) : [];
  const valued = reading
    ? askValue(
        waiting,
        ask,
        reading.quantity,
        { target: 'readingBackValue' },
        [...doubtMoves(step, reading.quantity), ...byBus(step, reading, longEnough)],
        step.gate ? [] : unread(step, reading, longEnough),
      )
    : undefined;
  const asking: Node = {
    ...question,
    meta: {
      replies: [step.ok, 'notYet' as const],
      by: step.by,
      ...(reading ? { quantity: reading.quantity, measures: 'now' as const } : {}),
    },
    on: { ...question.on, ...(valued ? { value: movesOf(valued, 'value') } : {}) },
  };

  const { follows } = step;
  const { timeUp: ends } = step;
  const startTiming = startWatchTimer(step.id, ends.seconds, 'cause' in ends ? ends.cause : null);
  const nodes: Nodes = {
    begin: {
      always: [
        ...(follows
          ? [
              {
                guard: (look: Look) => justRead(follows.step, step, look),
                target: 'between',
                actions: [startTiming, ...speak(() => ({ line: follows.line, values: {} }))],
              },
            ]
          : []),
        { target: 'asking', actions: startTiming },
      ],
    },
    asking: limited(asking, [...danger, timeUp]),
    between: {
      ...limited(
        withMeta(asking, { awaits: 'time', ...(reading ? { measures: 'later' } : {}) }),
        [...danger, timeUp],
        [{ guard: lookDue, target: 'asking' }],
      ),
      entry: planNextLook(step),
      // A hold puts no look off: the engine goes on to warm up.
      exit: update(({ event }) => (event.type === 'hold' ? {} : { nextLookMs: null })),
    },
    readingBack: limited(
      readBack(waiting, readBackReply, [{ guard: longEnough, ...done }, tooEarly], { target: 'asking' }),
      timeUp,
    ),
  };
  if (!reading) return nodes;

  for (const [key, vouching] of Object.entries(
    vouchingNodes(step, reading.quantity, 'readingBackValue', danger),
  ))
    nodes[key] = limited(vouching, [...danger, timeUp]);
  const judged = [noteVerdict(reading.bounds), keepReading];
  const outOfBounds = stopFor(reading.cause);
  const valueReadBack = limited(
    readBack(
      { ...waiting, danger, critical: true, late: reading.cause },
      readBackValue,
      [
        {
          guard: breaks(reading.bounds),
          target: outOfBounds.target,
          actions: [...judged, remark(sayVerdict(reading.bounds)), ...outOfBounds.actions],
        },
        {
          guard: look => !meets(reading.bounds)(look),
          target: 'between',
          actions: [...judged, remark(sayVerdictRunning(reading.bounds))],
        },
        {
          guard: look => meets(reading.reached)(look) && longEnough(look),
          target: done.target,
          actions: [...judged, remark(sayVerdict(reading.reached)), ...done.actions],
        },
        {
          target: 'between',
          actions: [...judged, remark(look => reading.outlook(look.context, atMs(look.event)))],
        },
      ],
      { target: 'asking' },
      reading.quantity,
    ),
    // Its time is no way round a value that stops the engine.
    [{ guard: look => timerOver(look) && isToStop(look), ...outOfBounds }, timeUp],
    lateStops([reading.cause]),
  );
  nodes.readingBackValue = { ...valueReadBack, exit: update(() => ({ deadline: null })) };
  return nodes;
}

/** What has cleared is no longer on the bus. */
function stillShown(step: WatchStep): Move {
  const shown = ({ context, event }: Look) =>
    event.type === 'reply' && event.bus?.codes ? (step.stillShown?.(context, event.bus.codes) ?? []) : [];
  return {
    guard: look => shown(look).length > 0,
    actions: [
      note(look => ({ kind: 'disagreement', data: { step: step.id, spoken: step.ok, bus: shown(look) } })),
      remark(look => ({
        line: 'codeStillShown',
        values: { codes: { list: shown(look).map(code => ({ code })) } },
      })),
    ],
  };
}

/** Too hot: shown by the bus it stops at once, said by people unless it is denied in time. Its time is no way round it. */
function dangerOf({ quantity, bounds, cause }: NonNullable<WatchStep['reading']>): Move[] {
  const stop = stopFor(cause);
  const isOut = (look: Look) =>
    look.event.type === 'value' &&
    look.event.quantity === quantity &&
    canBeRead(quantity, look.event.si) &&
    valueBreaks(bounds)(look);
  return [
    {
      guard: look => isOnBus(quantity)(look) && isOut(look),
      target: stop.target,
      actions: [...judgedByBus(bounds), ...stop.actions],
    },
    {
      guard: look => look.event.via !== 'bus' && isOut(look),
      target: 'readingBackValue',
      actions: [setValueAside, denyOutside({ judge: bounds, cause })],
    },
  ];
}

/** What is said to have come counts only where the last value read says so too: a gauge that shows otherwise is read first. */
function contradicted(step: WatchStep, { quantity, agrees }: NonNullable<WatchStep['reading']>): Move {
  const judged = ({ context }: Look) => {
    const last = context.readings.findLast(reading => reading.step === step.id);
    return last?.quantity === quantity ? agrees(context, last.si) : null;
  };
  return {
    guard: look => {
      const judgement = judged(look);
      return !(judgement?.ok && judgement.value.met);
    },
    actions: [
      note(look => ({
        kind: 'doubted',
        data: { step: step.id, quantity, reply: step.ok, ...judgementData(judged(look)) },
      })),
      remark(look => ({
        line: 'readFirst',
        values: {
          reply: { reply: step.ok },
          name: { quantityName: quantity },
          limits: limitsOf(agrees(look.context, Number.NaN)),
        },
      })),
    ],
  };
}

/** It has come: what an earlier watch left open is settled by it. */
function passWatch(step: WatchStep) {
  const done = pass(step);
  return step.settles ? { ...done, actions: [...settle(step.settles), ...done.actions] } : done;
}

/** It has not come in time: a stop, or on with an open item. */
function whenTimeIsUp(step: WatchStep) {
  if ('cause' in step.timeUp) return stopFor(step.timeUp.cause);
  const { open } = step.timeUp;
  const done = pass(step);
  return {
    target: done.target,
    actions: [
      remark(({ context }) => ({ line: open, values: { load: firstLoaded(context.profile) } })),
      ...(step.settles ? settle(step.settles) : []),
      ...leaveOpen(() => ({ step: step.id })),
      ...done.actions,
    ],
  };
}

/** A number inside its bounds needs no read-back by keys: it is said again, and ends the watch or goes on with it. */
function unread(
  step: WatchStep,
  reading: NonNullable<WatchStep['reading']>,
  longEnough: (look: Look) => boolean,
): Move[] {
  const needsReadBack = valueNeedsReadBack('limit', reading.bounds);
  const done = passWatch(step);
  return [
    {
      guard: look =>
        !needsReadBack(look) &&
        !isContradicted(look) &&
        valueMeets(reading.reached)(look) &&
        longEnough(look),
      target: done.target,
      actions: [setValueAside, noteVerdict(reading.reached), ...echo(step), keepReading, ...done.actions],
    },
    {
      guard: look => !needsReadBack(look) && !isContradicted(look) && !valueMeets(reading.reached)(look),
      target: 'between',
      actions: [
        setValueAside,
        noteVerdict(reading.bounds),
        ...echo(step),
        keepReading,
        remark(look => reading.outlook(look.context, atMs(look.event))),
      ],
    },
  ];
}

/** What the bus shows is judged without a read-back, like what was read back. */
function byBus(
  step: WatchStep,
  reading: NonNullable<WatchStep['reading']>,
  longEnough: (look: Look) => boolean,
): Move[] {
  if (step.gate) return [];
  const isBus = isFromBus(reading.quantity);
  const done = passWatch(step);
  return [
    {
      guard: look => isBus(look) && !valueMeets(reading.bounds)(look),
      target: 'between',
      actions: [...judgedByBus(reading.bounds, sayVerdictRunning), planNextLook(step)],
    },
    {
      guard: look => isBus(look) && valueMeets(reading.reached)(look) && longEnough(look),
      target: done.target,
      actions: [...judgedByBus(reading.reached), ...done.actions],
    },
    {
      guard: isBus,
      target: 'between',
      actions: [
        setValueAside,
        noteVerdict(reading.bounds),
        keepReading,
        remark(({ event }) => ({
          line: 'busValue',
          values:
            event.type === 'value'
              ? { name: { quantityName: event.quantity }, spoken: { quantity: event.quantity, si: event.si } }
              : {},
        })),
        remark(look => reading.outlook(look.context, atMs(look.event))),
        planNextLook(step),
      ],
    },
  ];
}

/** When the time is up it stops, and no answer counts any more. */
const limited = (node: Node, timeUp: Move | readonly Move[], atClock: readonly Move[] = []): Node => ({
  ...node,
  on: {
    ...node.on,
    ...Object.fromEntries(
      (['reply', 'value'] as const).map(type => [type, [...[timeUp].flat(), ...movesOf(node, type)]]),
    ),
    clock: [...[timeUp].flat(), ...atClock],
  },
});
