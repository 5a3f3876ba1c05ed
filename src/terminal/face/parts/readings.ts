import type { ReadingView } from '../../../session/view.ts';
import { fill } from '../../../session/wording.ts';
import { type Line, line } from '../line.ts';
import { cut, oneLine, pad, widthOf } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

const ROOMY = 50;

/** The last readings against their limits, the newest first; the judgement is a word. */
export function readings(all: readonly ReadingView[], width: number, words: FaceWords): Line[] {
  if (all.length === 0)
    return [line(cut(fill(words.labelled, { label: words.readings, text: words.noReadings }), width))];
  const rows = all.map(({ name, value, limits, met }) => ({
    cells: [oneLine(name), oneLine(value), oneLine(limits)],
    met,
  }));
  const gap = width < ROOMY ? 1 : 2;
  const judgementWidth = Math.max(widthOf(words.readingMet), widthOf(words.readingNotMet));
  const widths = [0, 1, 2].map(column => Math.max(...rows.map(({ cells }) => widthOf(cells[column] ?? ''))));
  // What was read and how it was judged stay whole; a name gives way.
  const others = judgementWidth + (widths[1] ?? 0) + (widths[2] ?? 0) + 3 * gap;
  widths[0] = Math.max(6, Math.min(widths[0] ?? 0, width - others));
  const table = rows.reverse().map(({ cells, met }) => {
    const judged = pad(met ? words.readingMet : words.readingNotMet, judgementWidth);
    const text = [judged, ...cells.map((cell, column) => pad(cell, widths[column] ?? 0))].join(
      ' '.repeat(gap),
    );
    return line(cut(text.trimEnd(), width), met ? 'good' : 'bad');
  });
  return [line(cut(words.readings, width), 'strong'), ...table];
}
