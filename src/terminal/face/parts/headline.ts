import type { View } from '../../../session/view.ts';
import { largestLetters } from '../big-letters.ts';
import { type Line, linesOf } from '../line.ts';
import type { FaceWords } from '../words/index.ts';

/** What has to be read from two metres: the step, a call-out, or that everything is stopped. Empty where it has no room. */
export function headline(
  view: Pick<View, 'state' | 'title' | 'callOuts'>,
  width: number,
  rows: number,
  words: FaceWords,
): Line[] {
  const stopped = view.state === 'stopped';
  const [newest] = view.callOuts ?? [];
  const calls = !stopped && newest !== undefined;
  const text = stopped ? words.stoppedLarge : (newest ?? view.title);
  const letters = largestLetters(text, width - 2, rows);
  return linesOf(
    letters.map(row => ` ${row}`),
    stopped || calls ? 'bad' : 'strong',
  );
}
