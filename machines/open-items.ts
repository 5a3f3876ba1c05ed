import type { StepId } from '../prompts/types.ts';
import type { Context, OpenItem } from './context.ts';
import type { Look } from './toolkit.ts';
import { note, update } from './toolkit.ts';
import { quantityUnits } from './vocabulary.ts';

/** Whether a step has left something to be put right later. */
export const isOpenItem = ({ openItems }: Context, step: StepId): boolean =>
  openItems.some(item => item.step === step);

/** What is put on the list of open items, and on the record. */
export const leaveOpen = (item: (look: Look) => Omit<OpenItem, 'by'>) => [
  note(look => {
    const { step, quantity, si, finding } = item(look);
    return {
      kind: 'leftOpen' as const,
      data: {
        step,
        ...(quantity === undefined ? {} : { quantity, value: si ?? null, unit: quantityUnits[quantity] }),
        ...(finding === undefined ? {} : { finding }),
        by: look.event.by,
      },
    };
  }),
  update(look => ({ openItems: [...look.context.openItems, { ...item(look), by: look.event.by }] })),
];

/** What was open has come right after all. */
export const settle = (step: StepId) => [
  note(() => ({ kind: 'settled' as const, data: { step } })),
  update(({ context }) => ({ openItems: context.openItems.filter(item => item.step !== step) })),
];
