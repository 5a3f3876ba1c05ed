import { leftText } from '../../../session/clock-text.ts';
import type { View } from '../../../session/view.ts';
import { fill } from '../../../session/wording.ts';
import { largestLetters } from '../big-letters.ts';
import { type Line, line } from '../line.ts';
import { cut, oneLine, pad, widthOf } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

type Timer = NonNullable<View['timer']>;

/** Rows with the time in large letters. */
export const LARGE_ROWS = 3;

/** A bar of exactly `width` columns; full only when the time is up. */
export function bar({ totalMs, leftMs }: Pick<Timer, 'totalMs' | 'leftMs'>, width: number): string {
  const inner = Math.max(1, width - 2);
  const share = (totalMs - leftMs) / totalMs;
  const done = Number.isFinite(share) ? Math.floor(Math.min(1, Math.max(0, share)) * inner) : 0;
  return `[${'█'.repeat(done)}${'░'.repeat(inner - done)}]`;
}

/** The hold's progress: one line, or where it has the rows the time left in large letters beside it. */
export function holdBar(timer: Timer, width: number, rows: number, words: FaceWords): Line[] {
  const left = leftText(timer.leftMs);
  const held = timer.held ? `${words.held} ` : '';
  const large = rows >= LARGE_ROWS ? largestLetters(left, Math.floor(width / 2), rows) : [];
  const largeWidth = widthOf(large[0] ?? '') + 3;
  if (large.length === 0) {
    const time = `${held}${fill(words.left, { time: left })} `;
    return [line(cut(time + bar(timer, width - widthOf(time)), width), 'strong')];
  }
  const inner = width - largeWidth;
  const beside = [
    cut(oneLine(timer.title), inner),
    bar(timer, inner),
    cut(held + fill(words.leftOf, { time: left, total: leftText(timer.totalMs) }), inner),
  ];
  const above = Math.floor((large.length - beside.length) / 2);
  return large.map((row, index) =>
    line(` ${pad(row, largeWidth - 1)}${beside[index - above] ?? ''}`, 'strong'),
  );
}
