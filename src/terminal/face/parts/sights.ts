import { type Line, linesOf } from '../line.ts';
import { wrap } from '../text.ts';
import { words } from '../words.ts';

/** In a rehearsal: what there is to see at the engine. */
export const sights = (rows: readonly string[], width: number): Line[] =>
  linesOf(
    rows.flatMap(text => wrap(`${words.sights}: ${text}`, width)),
    'normal',
  );
