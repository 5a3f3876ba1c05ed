import type { Context } from '../context.ts';
import type { Look } from '../toolkit.ts';
import { atMs, update } from '../toolkit.ts';
import type { Cause } from '../vocabulary.ts';

/** From now so many seconds; after that a missing answer is a stop with this cause. */
export const startDeadline = (seconds: (look: Look) => number, cause: Cause) =>
  update(look => deadlineIn(look, seconds(look), cause, false));

/** The deadline so many seconds after this moment. */
export const deadlineIn = (
  look: Look,
  seconds: number,
  cause: Cause,
  extended: boolean,
): Partial<Context> => ({
  deadline: { sinceMs: atMs(look.event), atMs: atMs(look.event) + seconds * 1000, cause, extended },
});
