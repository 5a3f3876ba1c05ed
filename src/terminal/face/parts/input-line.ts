import type { View } from '../../../session/view.ts';
import { type Line, line } from '../line.ts';
import { cut, cutStart, oneLine, widthOf } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

const CURSOR = '█';

/** The line being typed, with its cursor; empty, it says what it is for. */
export function inputLine(typed: string, width: number, words: FaceWords): Line {
  if (typed === '') return line(cut(`> ${CURSOR} ${words.mayType}`, width));
  return line(
    `> ${cutStart(oneLine(typed) + (typed.endsWith(' ') ? ' ' : ''), width - 3)}${CURSOR}`,
    'strong',
  );
}

/** As many of the hints as fit, the first one always. */
function fitting(hints: readonly string[], width: number): string {
  const [first = '', ...others] = hints;
  return others.reduce(
    (text, hint) => {
      const joined = `${text}   ${hint}`;
      return widthOf(joined) <= width ? joined : text;
    },
    cut(first, width),
  );
}

/** What the keys do, stop first; after one Ctrl-C, what a second one does. */
export function hintLine(leaving: boolean, engine: View['engine'], width: number, words: FaceWords): Line {
  if (!leaving) return line(fitting([words.escapeStops, ...words.keys], width), 'strong');
  const warning = engine === 'off' ? [] : [words.leavingRunning];
  return line(fitting([words.escapeStops, words.leaving, ...warning], width), 'alarm');
}
