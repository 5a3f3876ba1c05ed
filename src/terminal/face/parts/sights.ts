import { fill } from '../../../session/wording.ts';
import { type Line, linesOf } from '../line.ts';
import { wrap } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

/** In a rehearsal: what there is to see at the engine. */
export const sights = (rows: readonly string[], width: number, words: FaceWords): Line[] =>
  linesOf(
    rows.flatMap(text => wrap(fill(words.labelled, { label: words.sights, text }), width)),
    'normal',
  );
