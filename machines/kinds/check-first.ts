import type { LineId, ReplyId } from '../../prompts/types.ts';
import { replyNeedsReadBack, weightOf } from '../assurance.ts';
import { latest } from '../limits/readings.ts';
import { pass } from '../progress.ts';
import { redoneWith } from '../reopening.ts';
import type { ConfirmStep, ReadingStep, Step } from '../steps.ts';
import { type Look, type Move, type Node, type Nodes, note, remark, speak, update } from '../toolkit.ts';
import { movesOf } from './nodes.ts';
import { askReply, isReply, readBack, readBackReply, setAside, type Waiting } from './question.ts';

/** What is done in these phases is still there after a stop, as a rule: it is looked at before it is done anew. */
const LASTING = ['fill.', 'prime.'];

const wasDone =
  (step: Step) =>
  ({ context }: Look) =>
    context.again.includes(step.id);

/**
 * A step that was done once and that a stop put back on the list is asked as a check first: "not yet" leads to doing
 * it anew, with all that hangs on it. The dipstick tells more than yes and no, and what changes by itself, like the heat
 * under a cap, is never as before.
 */
export function checkFirst(step: Step, nodes: Nodes): Nodes {
  const { asking } = nodes;
  const begins = beginsWith(nodes);
  if (!asking || !begins) return nodes;
  if (step.kind === 'confirm' && step.dipstick) return dipstickNodes(step, nodes);
  if (!LASTING.some(phase => step.id.startsWith(phase))) return nodes;
  const checking =
    step.kind === 'confirm'
      ? checkOfDeed(step, asking)
      : step.kind === 'reading' && !step.byTime
        ? checkOfValue(step, asking)
        : null;
  return checking ? { ...nodes, ...begunWith('checking', wasDone(step), begins), checking } : nodes;
}

/** How a step begins that only asks, by itself or together with its group; null where more comes before the question. */
function beginsWith(nodes: Nodes): readonly Move[] | null {
  if (!('begin' in nodes)) return [{ target: 'asking' }];
  return 'together' in nodes ? ([nodes.begin?.always ?? []].flat() as Move[]) : null;
}

const begunWith = (check: string, when: (look: Look) => boolean, otherwise: readonly Move[]): Nodes => ({
  begin: { always: [{ guard: when, target: check }, ...otherwise] },
});

/** Steps that are done again are put back on the list with what hangs on them. */
const redo = (step: Step) =>
  update(({ context }) => {
    const also = redoneWith[step.id] ?? [];
    return {
      again: context.again.filter(id => id !== step.id && !also.includes(id)),
      done: context.done.filter(id => !also.includes(id)),
    };
  });

/** The question by its title, with the very replies of the step; "not yet" asks for it in full. */
const checkOfDeed = (step: ConfirmStep, asking: Node): Node => ({
  ...asking,
  entry: [
    update(() => ({ pending: null })),
    ...speak(() => ({ line: 'checkFirst', values: { title: { step: step.id }, reply: { reply: step.ok } } })),
  ],
  on: {
    ...asking.on,
    reply: [{ guard: isReply('notYet'), target: 'asking', actions: redo(step) }, ...movesOf(asking, 'reply')],
  },
});

/** "As before" says the value of then once more; another one may be said instead. */
function checkOfValue(step: ReadingStep, asking: Node): Node {
  const before = ({ context }: Look) => latest(context, step.quantity);
  return {
    ...asking,
    meta: { replies: ['asBefore', 'notYet'], quantity: step.quantity, by: step.by },
    entry: [
      update(() => ({ pending: null })),
      ...speak(look => ({
        line: 'checkValue',
        values: {
          name: { quantityName: step.quantity },
          before: { quantity: step.quantity, si: before(look) ?? 0 },
          reply: { reply: 'asBefore' },
        },
      })),
    ],
    on: {
      ...asking.on,
      reply: [
        {
          guard: look => isReply('asBefore')(look) && before(look) !== undefined,
          target: 'readingBack',
          actions: update(look => ({
            pending: { kind: 'value', quantity: step.quantity, si: before(look) ?? Number.NaN },
          })),
        },
        { guard: isReply('notYet'), target: 'asking', actions: redo(step) },
      ],
    },
  };
}

/**
 * Oil on the dipstick of an engine that has been turned: between the marks, low, or risen. Low is topped up and looked
 * at again. Risen is fuel or coolant in the oil: bearings do not outlive it, and the start is over for good.
 */
function dipstickNodes(step: ConfirmStep, nodes: Nodes): Nodes {
  const waiting: Waiting = { by: step.by, critical: false };
  const turned = (look: Look) => look.context.bursts.length > 0 || wasDone(step)(look);
  const done = pass(step);
  const good = [
    {
      reply: step.ok,
      move: {
        guard: replyNeedsReadBack(weightOf(step)),
        target: 'readingBack',
        actions: setAside(step.ok),
      },
    },
    { reply: step.ok, move: done },
  ];
  const to = (reply: ReplyId, target: string) => ({ reply, move: { target, actions: setAside(reply) } });
  const line = (id: LineId) => () => ({ line: id, values: {} }) as const;
  const risen = to('levelRisen', 'risen');
  return {
    ...nodes,
    ...begunWith('dipstick', turned, [{ target: 'asking' }]),
    dipstick: askReply(waiting, line('askDipstick'), [...good, to('levelLow', 'toppingUp'), risen]),
    toppingUp: askReply(waiting, line('topUp'), [...good, risen]),
    risen: readBack(
      waiting,
      readBackReply,
      [
        {
          target: '#ended',
          actions: [
            remark(() => ({ line: 'oilRisen', values: {}, priority: 'hazard' })),
            note(() => ({ kind: 'barred', data: { step: step.id, why: 'oilRisen' } })),
          ],
        },
      ],
      { target: 'dipstick' },
    ),
  };
}
