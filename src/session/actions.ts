import type { Said } from '../../machines/context.ts';
import type { Note } from '../record/vocabulary/index.ts';

/** An action that the machine asks for. */
export interface Action {
  readonly type: string;
  readonly params?: unknown;
}

const isSaid = (params: unknown): params is Said =>
  typeof params === 'object' && params !== null && 'line' in params;

/** The lines that have to be said, in their order. */
export const saidIn = (actions: readonly Action[]): Said[] =>
  actions.flatMap(action => (action.type === 'say' && isSaid(action.params) ? [action.params] : []));

const isNote = (params: unknown): params is Note =>
  typeof params === 'object' && params !== null && 'kind' in params && 'data' in params;

/** The facts that have to go on the record beside the event, in their order. */
export const notesIn = (actions: readonly Action[]): Note[] =>
  actions.flatMap(action => (action.type === 'note' && isNote(action.params) ? [action.params] : []));
