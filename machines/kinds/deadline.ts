import type { Context } from '../context.ts';
import { breaks } from '../judging.ts';
import type { Judge } from '../steps.ts';
import type { Look } from '../toolkit.ts';
import { atMs, update } from '../toolkit.ts';
import type { Cause } from '../vocabulary.ts';

/** Nobody said what came of a burst: after this long the engine may be running unwatched. */
export const OUTCOME_WITHIN_S = 10;

/** A value that would stop the engine has to be denied within this time. */
const DENY_BAD_VALUE_S = 8;

/** From now, or from another moment of the session, so many seconds; after that a missing answer is a stop with this cause. */
export const startDeadline = (
  seconds: (look: Look) => number,
  cause: Cause,
  sinceMs: (look: Look) => number = ({ event }) => atMs(event),
) => update(look => deadlineIn(look, seconds(look), cause, false, sinceMs(look)));

/** A value that is outside limits which stop the engine: it counts unless it is denied in time. */
export const denyInTime = (look: Look, cause: Cause): Partial<Context> => {
  const { pending } = look.context;
  return {
    ...deadlineIn(look, DENY_BAD_VALUE_S, cause, true),
    ...(pending?.kind === 'value' ? { pending: { ...pending, stops: cause } } : {}),
  };
};

/** The value that was put aside, where it breaks what stops the engine: then it counts unless it is denied in time. */
export const denyOutside = ({ judge, cause }: { readonly judge: Judge; readonly cause: Cause }) =>
  update(look => (breaks(judge)(look) ? denyInTime(look, cause) : {}));

/** The deadline so many seconds after a moment. */
const deadlineIn = (
  look: Look,
  seconds: number,
  cause: Cause,
  extended: boolean,
  sinceMs = atMs(look.event),
): Partial<Context> => ({ deadline: { sinceMs, atMs: sinceMs + seconds * 1000, cause, extended } });
