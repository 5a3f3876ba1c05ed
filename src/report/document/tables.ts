import { fill } from '../../session/wording.ts';
import type { Manner } from '../manner.ts';
import type { Block, Cell, Column, Row } from './blocks.ts';

/** More rows than anybody reads on paper; the exports hold them all. */
export const MOST_ROWS = 40;

export const cells = (...own: readonly (string | Cell)[]): Row => ({
  kind: 'cells',
  cells: own.map(cell => (typeof cell === 'string' ? { text: cell } : cell)),
});

/** A table, and how many rows more there are than it shows. */
export function longTable(columns: readonly Column[], rows: readonly Row[], { words }: Manner): Block[] {
  const more = rows.length - MOST_ROWS;
  return [
    { type: 'table', columns, rows: rows.slice(0, MOST_ROWS) },
    ...(more > 0
      ? [{ type: 'text', text: fill(words.tables.more, { n: String(more) }), tone: 'warn' } as const]
      : []),
  ];
}
