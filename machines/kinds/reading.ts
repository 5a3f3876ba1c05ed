import { keepReading, meets, noteVerdict, sayVerdict } from '../judging.ts';
import { pass, stopFor } from '../progress.ts';
import type { ReadingStep } from '../steps.ts';
import { type Look, type Move, type Nodes, remark, update, withMeta } from '../toolkit.ts';
import type { Cause } from '../vocabulary.ts';
import { isFromBus, judgedByBus, valueMeets } from './bus.ts';
import { denyInTime } from './deadline.ts';
import { doubtMoves, vouchingNode } from './doubt.ts';
import { askFor, askValue, readBack, readBackValue, type Waiting } from './question.ts';

/** A gauge is read, the value read back, then held against its limits. */
export function readingNodes(step: ReadingStep): Nodes {
  const cause = step.outside === 'again' ? null : step.outside;
  const waiting: Waiting = { by: step.by, critical: false };
  const done = pass(step);
  const judged = [noteVerdict(step.judge), remark(sayVerdict(step.judge)), keepReading];
  const stops = (look: Look) => cause !== null && !valueMeets(step.judge)(look);
  const limit = cause ? limitDenial(step, cause) : undefined;
  return {
    asking: withMeta(
      askValue(waiting, askFor(step), step.quantity, { target: 'readingBack', actions: limit }, [
        ...doubtMoves(step, step.quantity, stops),
        ...byBus(step, cause),
      ]),
      { measures: 'once', ...(step.byTime ? { awaits: 'time' } : {}) },
    ),
    vouching: vouchingNode(step, step.quantity, { target: 'readingBack', actions: limit }),
    readingBack: {
      ...readBack(
        cause ? { ...waiting, critical: true, late: cause } : waiting,
        readBackValue,
        [
          { guard: meets(step.judge), target: done.target, actions: [...judged, ...done.actions] },
          cause
            ? { target: stopFor(cause).target, actions: [...judged, ...stopFor(cause).actions] }
            : { target: 'asking', actions: [...judged, update(() => ({ misheard: 0 }))] },
        ],
        { target: 'asking' },
        step.quantity,
      ),
      exit: update(() => ({ deadline: null })),
    },
  };
}

/**
 * A value of the bus counts at once, good or bad, except that it opens no gate: there a good one still waits for
 * somebody's "correct".
 */
function byBus(step: ReadingStep, cause: Cause | null): Move[] {
  const isBus = isFromBus(step.quantity);
  const good = valueMeets(step.judge);
  const judged = judgedByBus(step.judge);
  const done = pass(step);
  const bad = cause
    ? { target: stopFor(cause).target, actions: [...judged, ...stopFor(cause).actions] }
    : { actions: [...judged, update(() => ({ pending: null }))] };
  return [
    { guard: (look: Look) => isBus(look) && !good(look), ...bad },
    ...(step.gate ? [] : [{ guard: isBus, target: done.target, actions: [...judged, ...done.actions] }]),
  ];
}

const limitDenial = (step: ReadingStep, cause: Cause) =>
  update(look => (meets(step.judge)(look) ? {} : denyInTime(look, cause)));
