import { fill } from '../../../session/wording.ts';
import { type Line, linesOf } from '../line.ts';
import { wrap } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

/** What does not work, the newest first. */
export const problems = (sentences: readonly string[], width: number, words: FaceWords): Line[] =>
  linesOf(
    [...sentences]
      .reverse()
      .flatMap(sentence => wrap(fill(words.labelled, { label: words.problem, text: sentence }), width)),
    'bad',
  );
