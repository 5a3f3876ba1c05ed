import { type Line, linesOf } from '../line.ts';
import { wrap } from '../text.ts';
import { words } from '../words.ts';

/** What does not work, the newest first. */
export const problems = (sentences: readonly string[], width: number): Line[] =>
  linesOf(
    [...sentences].reverse().flatMap(sentence => wrap(`${words.problem}: ${sentence}`, width)),
    'bad',
  );
