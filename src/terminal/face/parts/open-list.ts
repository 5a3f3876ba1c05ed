import { type Line, line, linesOf } from '../line.ts';
import { cut, wrap } from '../text.ts';

/** A heading with the count, then each entry; nothing when there is nothing. */
export function openList(heading: string, entries: readonly string[], width: number): Line[] {
  if (entries.length === 0) return [];
  return [
    line(cut(`${heading}: ${entries.length}`, width), 'bad'),
    ...linesOf(entries.flatMap(entry => wrap(`- ${entry}`, width))),
  ];
}
