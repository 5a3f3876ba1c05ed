import { type Line, linesOf } from '../line.ts';
import { pad, wrap } from '../text.ts';

/** What was called out and has to be done, whole, over the full width. */
export const callOutLines = (callOuts: readonly string[], width: number): Line[] =>
  linesOf(
    callOuts.flatMap(text => wrap(text, width - 4)).map(text => pad(`!! ${text}`, width)),
    'alarm',
  );
