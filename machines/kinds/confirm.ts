import { judgementData } from '../judging.ts';
import { pass } from '../progress.ts';
import type { ConfirmStep, Judge } from '../steps.ts';
import { type Look, type Nodes, note, remark, withMeta } from '../toolkit.ts';
import { refuseTurning } from './bus.ts';
import { startDeadline } from './deadline.ts';
import { askFor, askReply, readBack, readBackReply, setAside, type Waiting } from './question.ts';

/** Asks; reads back what opens a gate; passes only on a confirmed reply. */
export function confirmNodes(step: ConfirmStep): Nodes {
  const waiting: Waiting = {
    by: step.by,
    critical: step.within !== undefined,
    late: step.within?.cause,
    trouble: step.trouble,
  };
  const ask = askFor(step);
  if (step.drill) return drillNodes(step);
  const passed = pass(step);
  const done = step.within ? { ...passed, actions: [inTime(step.within.judge), ...passed.actions] } : passed;
  const possible = ({ context }: Look) => step.possible?.(context) ?? true;
  const nodes: Nodes = {
    asking: askReply(waiting, ask, [
      ...(step.standing ? [{ reply: step.ok, move: refuseTurning }] : []),
      {
        reply: step.ok,
        move: {
          guard: look => !possible(look),
          actions: remark(() => ({ line: 'notPossible', values: {} })),
        },
      },
      { reply: step.ok, move: step.gate ? { target: 'readingBack', actions: setAside(step.ok) } : done },
    ]),
  };
  if (step.gate) nodes.readingBack = readBack(waiting, readBackReply, [done], { target: 'asking' });
  return step.within ? { ...limited(step.within), ...nodes } : nodes;
}

/** The limit begins when the step is entered, not again with each question. */
const limited = (within: NonNullable<ConfirmStep['within']>): Nodes => ({
  begin: {
    always: { target: 'asking', actions: startDeadline(look => within.seconds(look.context), within.cause) },
  },
});

/** How long the reply took, held against its rule; the time of its read-back does not count. */
const inTime = (judge: Judge) =>
  note(({ context }) => {
    const { deadline, pending } = context;
    const seconds =
      deadline && pending?.kind === 'reply' ? (pending.atMs - deadline.sinceMs) / 1000 : Number.NaN;
    return {
      kind: 'inTime',
      data: { step: context.step, seconds, unit: 's', ...judgementData(judge(context, seconds)) },
    };
  });

/** Here the stop words are the reply, and they do what they always do; `stopped` leads back. */
function drillNodes(step: ConfirmStep): Nodes {
  const waiting: Waiting = { by: step.by, critical: false };
  return { asking: withMeta(askReply(waiting, askFor(step), []), { awaits: 'drill' }) };
}
