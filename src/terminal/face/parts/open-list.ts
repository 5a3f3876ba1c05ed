import { fill } from '../../../session/wording.ts';
import { type Line, line, linesOf } from '../line.ts';
import { cut, wrap } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

/** A heading with the count, then each entry; nothing when there is nothing. */
export function openList(
  heading: string,
  entries: readonly string[],
  width: number,
  words: FaceWords,
): Line[] {
  if (entries.length === 0) return [];
  return [
    line(cut(fill(words.labelled, { label: heading, text: String(entries.length) }), width), 'bad'),
    ...linesOf(entries.flatMap(entry => wrap(`- ${entry}`, width))),
  ];
}
