import type { Look } from '../toolkit.ts';
import { atMs, update } from '../toolkit.ts';
import type { Cause } from '../vocabulary.ts';

/** From now so many seconds; after that a missing answer is a stop with this cause. */
export const startDeadline = (seconds: (look: Look) => number, cause: Cause) =>
  update(look => ({ deadline: { atMs: atMs(look.event) + seconds(look) * 1000, cause, extended: false } }));
