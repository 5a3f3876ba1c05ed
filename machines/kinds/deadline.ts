import type { Context } from '../context.ts';
import type { Look } from '../toolkit.ts';
import { atMs, update } from '../toolkit.ts';
import type { Cause } from '../vocabulary.ts';

/** A value that would stop the engine has to be denied within this time. */
const DENY_BAD_VALUE_S = 8;

/** From now so many seconds; after that a missing answer is a stop with this cause. */
export const startDeadline = (seconds: (look: Look) => number, cause: Cause) =>
  update(look => deadlineIn(look, seconds(look), cause, false));

/** A value that is outside limits which stop the engine: it counts unless it is denied in time. */
export const denyInTime = (look: Look, cause: Cause): Partial<Context> => {
  const { pending } = look.context;
  return {
    ...deadlineIn(look, DENY_BAD_VALUE_S, cause, true),
    ...(pending?.kind === 'value' ? { pending: { ...pending, stops: cause } } : {}),
  };
};

/** The deadline so many seconds after this moment. */
const deadlineIn = (look: Look, seconds: number, cause: Cause, extended: boolean): Partial<Context> => ({
  deadline: { sinceMs: atMs(look.event), atMs: atMs(look.event) + seconds * 1000, cause, extended },
});
