import { believed, gateMet } from '../progress.ts';
import type { Step } from '../steps.ts';
import { type Line, type Look, type Node, note, speak, update } from '../toolkit.ts';
import type { Gate } from '../vocabulary.ts';
import { isReply, notUnderstood } from './question.ts';

/** The gates that a step needs and that are not met. */
export const unmetNeeds =
  (step: Step, all: readonly Step[]) =>
  ({ context }: Look): Gate[] =>
    (step.needs ?? []).filter(gate => !gateMet(all, context, gate));

/** The step is not begun while a gate is shut that it needs; "ready" looks again. */
export function refused(step: Step, all: readonly Step[], again: string): Node {
  const unmet = unmetNeeds(step, all);
  const closed: Line = look => ({
    line: 'gateClosed',
    values: { gates: { list: unmet(look).map(gate => ({ gate })) } },
  });
  return {
    meta: { replies: ['ready'], by: step.by, awaits: 'repair', needs: step.needs ?? [] },
    entry: [
      ...speak(closed),
      note(look => ({ kind: 'refused', data: { step: step.id, unmet: unmet(look) } })),
    ],
    on: {
      reply: {
        guard: look => isReply('ready')(look) && believed(look),
        target: again,
        actions: update(() => ({ misheard: 0 })),
      },
      unclear: notUnderstood(closed, step.by),
    },
  };
}
