import type { View } from '../../../session/view.ts';
import { largestLetters } from '../big-letters.ts';
import { type Line, linesOf } from '../line.ts';
import type { FaceWords } from '../words/index.ts';

/** What has to be read from two metres: the step, or that everything is stopped. Empty where it has no room. */
export function headline(
  view: Pick<View, 'state' | 'title'>,
  width: number,
  rows: number,
  words: FaceWords,
): Line[] {
  const stopped = view.state === 'stopped';
  const letters = largestLetters(stopped ? words.stoppedLarge : view.title, width - 2, rows);
  return linesOf(
    letters.map(row => ` ${row}`),
    stopped ? 'bad' : 'strong',
  );
}
