import { isByHand, isNearItsLimit } from '../assurance.ts';
import { judgementData, judgementLine, keepReading, noteVerdict, sayVerdict } from '../judging.ts';
import { pass, STOPPED, stopFor, stopNow } from '../progress.ts';
import type { Judgement, ReadingStep, Series } from '../steps.ts';
import { lookDue } from '../timing.ts';
import {
  atMs,
  type Effect,
  type Line,
  type Look,
  type Move,
  type Node,
  type Nodes,
  note,
  remark,
  update,
  withMeta,
} from '../toolkit.ts';
import { type Cause, quantityUnits } from '../vocabulary.ts';
import { isFromBus, isOnBus, judgedByBus, setValueAside, valueBreaks } from './bus.ts';
import { denyInTime } from './deadline.ts';
import { askFor, askValue, readBack, readBackValue, type Waiting } from './question.ts';

const causeIn = (judgement: Judgement): Cause | null =>
  'stops' in judgement ? (judgement.stops ?? null) : null;

const itemState = (index: number) => `item${index + 1}`;

/** The same gauge read several times in a row: all read back together, and judged by how they run. */
export function seriesNodes(step: ReadingStep, series: Series): Nodes {
  const { extremes } = series;
  const waiting: Waiting = { by: step.by, critical: false };
  const asked: Waiting = { ...waiting, trouble: extremes?.trouble, danger: tooFar(step, series) };
  const done = pass(step);
  /** How many values people tell, and by what they are judged. */
  const count = extremes ? 2 : series.count;
  const judgeOf = ({ event }: Look) => (event.via === 'bus' || !extremes ? series.judge : extremes.judge);
  const judgementNow = (look: Look) => judgeOf(look)(look.context, look.context.series);
  const judged = [
    note(look => ({
      kind: 'verdict',
      data: {
        step: step.id,
        quantity: step.quantity,
        value: look.context.series.at(-1)?.si ?? null,
        series: look.context.series.map(({ si }) => si),
        unit: quantityUnits[step.quantity],
        ...(look.event.via === 'bus' ? { via: 'bus' } : {}),
        ...judgementData(judgementNow(look), {
          si: look.context.series.at(-1)?.si ?? Number.NaN,
          unit: quantityUnits[step.quantity],
        }),
      },
    })),
    remark(look => {
      const { context, event } = look;
      const si = context.series.at(-1)?.si ?? 0;
      return {
        ...judgementLine(judgementNow(look), step.quantity, si),
        ...(event.via === 'bus' ? { prefix: 'fromBus' as const } : {}),
      };
    }),
    update(look => ({
      readings: [
        ...look.context.readings,
        ...look.context.series.map(({ si, atMs }) => ({ quantity: step.quantity, si, atMs, step: step.id })),
      ],
    })),
  ];
  /** How the values run stops the engine, where its rule says so. */
  const stopsIt = {
    target: STOPPED,
    actions: [...judged, update(look => stopNow(look, causeIn(judgementNow(look))))],
  };
  const nodes: Nodes = {
    begin: {
      always: { target: itemState(0), actions: update(() => ({ series: [], spokenInList: false })) },
    },
  };
  const ask = (index: number): Line =>
    index === 0 ? askFor(step) : () => ({ line: extremes ? 'highest' : 'andNow', values: {} });
  for (let index = 0; index < count; index += 1) {
    const asking = askValue(
      asked,
      ask(index),
      step.quantity,
      {
        target: index + 1 < count ? itemState(index + 1) : 'readingBack',
        actions: update(look => ({
          series: [...look.context.series, ...heard(look)],
          misheard: 0,
          spokenInList: look.context.spokenInList || look.event.via === 'voice',
        })),
      },
      index === 0 && !step.gate ? [toSampling(step)] : [],
      index + 1 === count && !step.gate ? byHand() : [],
    );
    nodes[itemState(index)] = index === 0 ? withMeta(asking, { measures: 'first' }) : asking;
  }
  /** What was read by keys or touch to its last value is judged as it stands, unless it is near a limit. */
  function byHand(): Move[] {
    const judgement = (look: Look) => judgeOf(look)(look.context, [...look.context.series, ...heard(look)]);
    const unspoken = ({ context, event }: Look) => !context.spokenInList && isByHand(event.via);
    return [
      {
        guard: look => {
          const verdict = judgement(look);
          return unspoken(look) && verdict.ok && !isNearItsLimit(verdict.value);
        },
        target: done.target,
        actions: [keepSample, ...judged, ...done.actions],
      },
    ];
  }
  const { bounds } = series;
  if (bounds) nodes.stopping = stopping(step, { ...series, bounds });
  if (!step.gate) nodes.sampling = sampling(step, series, judged, stopsIt);
  nodes.readingBack = readBack(
    waiting,
    ({ context }) => ({
      line: 'readBackValue',
      values: {
        name: { quantityName: step.quantity },
        spoken: { list: context.series.map(({ si }) => ({ number: { quantity: step.quantity, si } })) },
      },
    }),
    [
      {
        guard: look => {
          const judgement = judgementNow(look);
          return judgement.ok && judgement.value.met;
        },
        target: done.target,
        actions: [...judged, ...done.actions],
      },
      { ...stopsIt, guard: look => causeIn(judgementNow(look)) !== null },
      { target: 'begin', actions: [...judged, update(() => ({ misheard: 0 }))] },
    ],
    { target: 'begin' },
  );
  return nodes;
}

/** A value that stops the engine is not waited with until the series is through: denied in time, or it counts. */
function tooFar(step: ReadingStep, { bounds }: Series): Move[] {
  if (!bounds) return [];
  const bad = valueBreaks(bounds.judge);
  const stop = stopFor(bounds.cause);
  return [
    {
      guard: look => isOnBus(step.quantity)(look) && bad(look),
      target: stop.target,
      actions: [...judgedByBus(bounds.judge), ...stop.actions],
    },
    {
      guard: look => look.event.via !== 'bus' && bad(look),
      target: 'stopping',
      actions: [setValueAside, update(look => denyInTime(look, bounds.cause))],
    },
  ];
}

function stopping(
  step: ReadingStep,
  series: Series & { readonly bounds: NonNullable<Series['bounds']> },
): Node {
  const { judge, cause } = series.bounds;
  const stop = stopFor(cause);
  return {
    ...readBack(
      { by: step.by, critical: true, late: cause, danger: tooFar(step, series) },
      readBackValue,
      [
        {
          target: stop.target,
          actions: [noteVerdict(judge), remark(sayVerdict(judge)), keepReading, ...stop.actions],
        },
      ],
      { target: 'begin' },
      step.quantity,
    ),
    exit: update(() => ({ deadline: null })),
  };
}

/** A bus that falls silent in the middle of a series leaves it to people after this. */
const NEXT_SAMPLE_WITHIN_S = 6;

const keepSample = update(look => ({ series: [...look.context.series, ...heard(look)] }));

const awaitNextSample = update(look => ({
  nextLookMs: atMs(look.event) + NEXT_SAMPLE_WITHIN_S * 1000,
}));

const toSampling = (step: ReadingStep): Move => ({
  guard: isFromBus(step.quantity),
  target: 'sampling',
  actions: keepSample,
});

/** The bus gives the whole series, without a word between; what it makes of it counts like any other reading. */
function sampling(
  step: ReadingStep,
  series: Series,
  judged: Effect[],
  stopsIt: { readonly target: string; readonly actions: Effect[] },
): Node {
  const isBus = isFromBus(step.quantity);
  const isLast = (look: Look) => isBus(look) && look.context.series.length + 1 >= series.count;
  const done = pass(step);
  const judgement = (look: Look) => series.judge(look.context, [...look.context.series, ...heard(look)]);
  const good = (look: Look) => {
    const whole = judgement(look);
    return whole.ok && whole.value.met;
  };
  return {
    meta: { replies: [], by: step.by, measures: 'next', awaits: 'time' },
    // Whatever leads here, a hold that is over too: nobody is asked, so time alone must lead on.
    entry: awaitNextSample,
    on: {
      value: [
        ...tooFar(step, series),
        {
          guard: look => isLast(look) && good(look),
          target: done.target,
          actions: [keepSample, ...judged, ...done.actions],
        },
        {
          ...stopsIt,
          guard: look => isLast(look) && causeIn(judgement(look)) !== null,
          actions: [keepSample, ...stopsIt.actions],
        },
        { guard: isLast, target: 'begin', actions: [keepSample, ...judged] },
        { guard: isBus, actions: [keepSample, awaitNextSample] },
      ],
      clock: { guard: lookDue, target: 'begin' },
    },
    exit: update(() => ({ nextLookMs: null })),
  };
}

const heard = ({ event }: Look) => (event.type === 'value' ? [{ si: event.si, atMs: atMs(event) }] : []);
