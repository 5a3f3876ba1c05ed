import type { ConfirmStep } from '../steps.ts';
import { update } from '../toolkit.ts';

/** Numbers that were only repeated until a step names them together. */
export type Figures = NonNullable<ConfirmStep['readsBack']>;

/** Numbers that were read back are not taken back any more. */
export const settled = (figures: Figures) =>
  update(({ context }) => ({ echoed: context.echoed.filter(each => !figures.includes(each.step)) }));

/** One of them is wrong: all are asked for once more. */
export const askedAgain = (figures: Figures) =>
  update(({ context }) => ({
    misheard: 0,
    done: context.done.filter(id => !figures.includes(id)),
    readings: context.readings.filter(reading => !figures.includes(reading.step)),
    echoed: context.echoed.filter(each => !figures.includes(each.step)),
  }));
