import type { Effect, Move, Node } from '../toolkit.ts';

/** The ways out of a state at one kind of event, in their order. */
export const movesOf = (node: Node, type: 'reply' | 'value' | 'unclear' | 'clock'): Move[] =>
  [node.on?.[type] ?? []].flat() as Move[];

/** What a move does besides moving. */
export const actionsOf = ({ actions }: Pick<Move, 'actions'>): Effect[] => [actions ?? []].flat();

/** What a state does as it is entered. */
export const entryOf = ({ entry }: Node) => [entry ?? []].flat();

/** What a state does as it is left. */
export const exitOf = ({ exit }: Node) => [exit ?? []].flat();

/** What may be answered in a state. */
export const repliesOf = ({ meta }: Node) => meta?.replies ?? [];
