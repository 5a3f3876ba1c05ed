import { transition } from 'xstate';
import type { Context } from '../../../machines/context.ts';
import { kit, type Look, type Move } from '../../../machines/toolkit.ts';
import { toldBy } from './driver.ts';

/** What the actions of a move do by themselves: what is known after them, what they say and put on the record. */
export function carriedOut(actions: Exclude<Move['actions'], undefined>, { context, event }: Look) {
  const machine = kit.createMachine({ context: () => context, on: { [event.type]: { actions } } });
  const [after, done] = transition(machine, machine.resolveState({ value: {}, context }), event);
  const known: Context = after.context;
  return { context: known, ...toldBy(done) };
}
