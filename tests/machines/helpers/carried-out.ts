import { transition } from 'xstate';
import type { Context, Said } from '../../../machines/context.ts';
import { kit, type Look, type Move, type Note } from '../../../machines/toolkit.ts';

type Action = { readonly type: string; readonly params?: unknown };

const paramsOf = (actions: readonly Action[], type: string) =>
  actions.flatMap(action => (action.type === type && action.params !== null ? [action.params] : []));

/** What the actions of a move do by themselves: what is known after them, what they say and put on the record. */
export function carriedOut(
  actions: Exclude<Move['actions'], undefined>,
  { context, event }: Look,
): { readonly context: Context; readonly said: readonly Said[]; readonly notes: readonly Note[] } {
  const machine = kit.createMachine({ context: () => context, on: { [event.type]: { actions } } });
  const [after, done] = transition(machine, machine.resolveState({ value: {}, context }), event);
  return {
    context: after.context,
    said: paramsOf(done, 'say') as Said[],
    notes: paramsOf(done, 'note') as Note[],
  };
}
