import type { ReplyId, StepId } from '../../prompts/types.ts';
import { replyNeedsReadBack, weightOf } from '../assurance.ts';
import {
  breaks,
  judgementOf,
  keepReading,
  meets,
  noteVerdict,
  sayVerdict,
  sayVerdictRunning,
} from '../judging.ts';
import { leaveOpen } from '../open-items.ts';
import { believed, freshQuestion, NEXT, pass, stopFor } from '../progress.ts';
import type { Judgement, ReadingStep } from '../steps.ts';
import { startSilentTimer, startTimer, timerOver } from '../timing.ts';
import { type Look, type Move, type Node, type Nodes, remark, speak, update, withMeta } from '../toolkit.ts';
import { isFromBus, isOnBus, judgedByBus, setValueAside, valueBreaks, valueMeets } from './bus.ts';
import { denyOutside } from './deadline.ts';
import { doubtMoves, vouchingNodes } from './doubt.ts';
import { passEchoed } from './echo.ts';
import { actionsOf, entryOf, movesOf, repliesOf } from './nodes.ts';
import {
  askFor,
  askValue,
  isReply,
  readBack,
  readBackReply,
  readBackValue,
  setAside,
  type Waiting,
} from './question.ts';
import { awaitAnswerNow } from './unanswered.ts';

/** Once something was said that was questioned, not understood, or "not yet", a step no longer passes by time alone. */
const untimed = (asking: Node, type: 'value' | 'reply' | 'unclear'): Move[] =>
  movesOf(asking, type).map(move => ({
    ...move,
    actions: [update(() => ({ timer: null })), awaitAnswerNow('glance'), ...actionsOf(move)],
  }));

type Bounds = NonNullable<ReadingStep['bounds']>;

/** What stops the session: bounds of their own, or all that is outside the limits. */
const boundsOf = ({ bounds, judge, outside }: ReadingStep): Bounds | null =>
  bounds ?? (outside === 'again' ? null : { judge, cause: outside });

/** Beside a running engine nobody is left with a value that cannot be judged and no word of what to do. */
const sayingOf = ({ engine }: ReadingStep) => (engine === 'running' ? sayVerdictRunning : sayVerdict);

/**
 * A gauge is read, the value read back, then held against its limits. One that no limit is known for is neither good nor
 * found to be bad: it does not count, and the question stays.
 */
export function readingNodes(step: ReadingStep): Nodes {
  const bounds = boundsOf(step);
  const waiting: Waiting = { by: step.by, critical: false };
  const danger = bounds ? dangerOf(step, bounds) : [];
  const asked: Waiting = { ...waiting, danger, instead: insteadOf(step) };
  const done = pass(step);
  const say = sayingOf(step);
  const judged = [noteVerdict(step.judge), remark(say(step.judge)), keepReading];
  const again = step.mayStayOpen ? 'outside' : 'asking';
  const asking = withMeta(
    askValue(
      asked,
      askFor(step),
      step.quantity,
      { target: 'readingBack' },
      [...doubtMoves(step, step.quantity), ...byBus(step)],
      passEchoed(step),
    ),
    { measures: 'once', ...(step.byTime || step.passesAfterS !== undefined ? { awaits: 'time' } : {}) },
  );
  const { passesAfterS } = step;
  const inTime: Node =
    passesAfterS === undefined
      ? asking
      : {
          ...asking,
          entry: [startTimer(() => passesAfterS), ...entryOf(asking)],
          on: {
            ...asking.on,
            value: untimed(asking, 'value'),
            reply: untimed(asking, 'reply'),
            unclear: untimed(asking, 'unclear'),
            clock: { guard: timerOver, ...done },
          },
          exit: update(() => ({ timer: null })),
        };
  return {
    asking: step.without ? { ...inTime, entry: [measuredAfterAll(step), ...entryOf(inTime)] } : inTime,
    ...(step.without
      ? { withoutReadBack: readBack(waiting, readBackReply, [passWithout(step)], { target: 'asking' }) }
      : {}),
    ...(step.mayStayOpen ? { outside: orLeaveOpen(asking, step), leavingOpen: leavingOpen(step) } : {}),
    ...(step.byTime ? { cooling: cooling(step) } : {}),
    ...vouchingNodes(step, step.quantity, 'readingBack', danger),
    readingBack: {
      ...readBack(
        bounds ? { ...waiting, danger, critical: true, late: bounds.cause } : waiting,
        readBackValue,
        [
          { guard: meets(step.judge), target: done.target, actions: [...judged, ...done.actions] },
          ...(bounds
            ? [
                {
                  guard: breaks(bounds.judge),
                  target: stopFor(bounds.cause).target,
                  actions: [...judged, ...stopFor(bounds.cause).actions],
                },
              ]
            : []),
          ...(step.byTime
            ? [
                {
                  guard: (look: Look) => waitS(judgementOf(step.judge, look)) > 0,
                  target: 'cooling',
                  actions: [
                    startSilentTimer(look => waitS(judgementOf(step.judge, look))),
                    ...judged,
                    update(() => ({ misheard: 0 })),
                  ],
                },
              ]
            : []),
          { target: again, actions: [...judged, update(() => ({ misheard: 0 }))] },
        ],
        { target: 'asking' },
        step.quantity,
      ),
      exit: update(() => ({ deadline: null })),
    },
  };
}

const waitS = (judgement: Judgement | null): number =>
  judgement && 'waitS' in judgement ? (judgement.waitS ?? 0) : 0;

/** Only time brings another look: nobody is asked before. */
const cooling = (step: ReadingStep): Node => ({
  meta: { replies: [], by: step.by, awaits: 'time' },
  on: { clock: { guard: timerOver, target: 'asking' } },
  exit: update(({ event }) => (event.type === 'hold' ? {} : { timer: null })),
});

/** What may be answered in place of the number. */
function insteadOf(step: ReadingStep): Waiting['instead'] {
  if (step.notMeasured) return { reply: 'notMeasured', moves: [measureAgain(step.notMeasured.again)] };
  return step.without ? { reply: step.without, moves: withoutMoves(step, step.without) } : undefined;
}

/** Nothing to measure it with: what stands in for it is asked next, but not for a value that was measured and missed. */
function withoutMoves(step: ReadingStep, reply: ReplyId): Move[] {
  const measured = ({ context }: Look) => context.readings.findLast(({ step: id }) => id === step.id);
  const missed = (look: Look) => {
    const last = measured(look);
    const judged = last && step.judge(look.context, last.si);
    return judged !== undefined && !(judged.ok && judged.value.met);
  };
  return [
    {
      guard: missed,
      actions: remark(look => ({
        line: 'testedAlready',
        values: { spoken: { quantity: step.quantity, si: measured(look)?.si ?? Number.NaN } },
      })),
    },
    {
      guard: replyNeedsReadBack(weightOf(step)),
      target: 'withoutReadBack',
      actions: setAside(reply),
    },
    passWithout(step),
  ];
}

function passWithout(step: ReadingStep) {
  const done = pass(step);
  return {
    target: done.target,
    actions: [update(({ context }) => ({ without: [...context.without, step.id] })), ...done.actions],
  };
}

/** Asked anew, it may be measured this time. */
const measuredAfterAll = (step: ReadingStep) =>
  update(({ context }) => ({ without: context.without.filter(id => id !== step.id) }));

/** Nobody measured it: what it is measured in is done once more, which is the price. */
const measureAgain = (again: StepId): Move => ({
  target: NEXT,
  actions: [
    remark(() => ({ line: 'notMeasuredPrice', values: { title: { step: again } } })),
    update(({ context }) => ({ ...freshQuestion, done: context.done.filter(id => id !== again) })),
  ],
});

/**
 * A value of the bus counts at once, good or bad, except that it opens no gate: there a good one still waits for
 * somebody's "correct".
 */
function byBus(step: ReadingStep): Move[] {
  const isBus = isFromBus(step.quantity);
  const good = valueMeets(step.judge);
  const judged = judgedByBus(step.judge, sayingOf(step));
  const done = pass(step);
  const waits = ({ context, event }: Look) =>
    event.type === 'value' ? waitS(step.judge(context, event.si, event.atMs)) : 0;
  return [
    ...(step.byTime
      ? [
          {
            guard: (look: Look) => isBus(look) && waits(look) > 0,
            target: 'cooling',
            actions: [startSilentTimer(waits), ...judged, update(() => ({ pending: null }))],
          },
        ]
      : []),
    {
      guard: (look: Look) => isBus(look) && !good(look),
      ...(step.mayStayOpen ? { target: 'outside' } : {}),
      actions: [...judged, update(() => ({ pending: null }))],
    },
    ...(step.gate ? [] : [{ guard: isBus, target: done.target, actions: [...judged, ...done.actions] }]),
  ];
}

/** The same question once more; or the start goes on, with an open item. */
function orLeaveOpen(asking: Node, step: ReadingStep): Node {
  return {
    ...withMeta(asking, { replies: [...repliesOf(asking), 'leaveOpen'] }),
    entry: [
      update(() => ({ pending: null })),
      ...speak(() => ({ line: 'orLeaveOpen', values: { name: { quantityName: step.quantity } } })),
    ],
    on: {
      ...asking.on,
      reply: [
        {
          guard: look => isReply('leaveOpen')(look) && believed(look),
          target: 'leavingOpen',
          actions: setAside('leaveOpen'),
        },
        ...movesOf(asking, 'reply'),
      ],
    },
  };
}

/** Nothing is left open by a word that was taken for another. */
function leavingOpen(step: ReadingStep): Node {
  const done = pass(step);
  return readBack(
    { by: step.by, critical: false },
    readBackReply,
    [
      {
        target: done.target,
        actions: [
          remark(() => ({ line: 'leftOpen', values: {} })),
          // What was read last led here.
          ...leaveOpen(({ context: { readings } }) => ({
            step: step.id,
            quantity: step.quantity,
            si: readings.at(-1)?.si ?? Number.NaN,
          })),
          ...done.actions,
        ],
      },
    ],
    { target: 'outside' },
  );
}

/** What stops the engine: shown by the bus at once, said by people unless it is denied in time. */
function dangerOf({ quantity, judge }: ReadingStep, bounds: Bounds): Move[] {
  const stop = stopFor(bounds.cause);
  const isOut = valueBreaks(bounds.judge);
  return [
    {
      guard: look => isOnBus(quantity)(look) && isOut(look),
      target: stop.target,
      actions: [...judgedByBus(judge), ...stop.actions],
    },
    {
      guard: look => look.event.via !== 'bus' && isOut(look),
      target: 'readingBack',
      actions: [setValueAside, denyOutside(bounds)],
    },
  ];
}
