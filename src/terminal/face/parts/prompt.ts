import type { View } from '../../../session/view.ts';
import { type Line, line, linesOf } from '../line.ts';
import { cut, oneLine, wrap } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

const EDGE = '▌ ';

/** The step in normal letters, who is addressed, what was answered meanwhile, and the sentence that waits for a reply. */
export function promptBox(
  view: Pick<View, 'title' | 'prompt' | 'remark' | 'addressed' | 'addressedName'>,
  width: number,
  { people }: FaceWords,
): Line[] {
  const inner = width - EDGE.length;
  const role = people[view.addressed];
  const name = oneLine(view.addressedName);
  const to = name === '' ? role : `${name}, ${role}`;
  return [
    line(cut(`${EDGE}${oneLine(view.title)} (${to})`, width)),
    ...linesOf(wrap(view.remark ?? '', inner).flatMap(text => (text === '' ? [] : [EDGE + text]))),
    ...linesOf(
      wrap(view.prompt, inner).map(text => EDGE + text),
      'strong',
    ),
  ];
}
