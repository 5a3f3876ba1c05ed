import { glyph } from './glyphs.ts';
import { oneLine } from './text.ts';

/**
 * How large a pixel is drawn: `low` one column by half a row (letters of 3 rows), `tall` one column by a
 * row, `huge` two columns by a row (letters of 5 rows).
 */
type LetterSize = 'low' | 'tall' | 'huge';

const PIXEL_ROWS = 5;
const BETWEEN_LETTERS = '.';

/** Pixel rows of one line of text, a pixel column between letters; null when a character has no drawing. */
function pixels(text: string): string[] | null {
  const glyphs = [...text].map(glyph);
  const rows: string[] = [];
  for (let row = 0; row < PIXEL_ROWS; row += 1) {
    const parts: string[] = [];
    for (const each of glyphs) {
      if (!each) return null;
      parts.push(each[row] ?? '');
    }
    rows.push(parts.join(BETWEEN_LETTERS));
  }
  return rows;
}

const inked = (row: string | undefined, column: number) => row?.[column] === '#';

function drawHalf(rows: readonly string[]): string[] {
  const lines: string[] = [];
  for (let row = 0; row < rows.length; row += 2) {
    const columns = [...(rows[row] ?? '')].map((_, column) => {
      const upper = inked(rows[row], column);
      const lower = inked(rows[row + 1], column);
      return upper ? (lower ? '█' : '▀') : lower ? '▄' : ' ';
    });
    lines.push(columns.join(''));
  }
  return lines;
}

const drawWhole = (rows: readonly string[], across: number) =>
  rows.map(row => [...row].map(pixel => (pixel === '#' ? '█' : ' ').repeat(across)).join(''));

const draw = (rows: readonly string[], size: LetterSize) =>
  size === 'low' ? drawHalf(rows) : drawWhole(rows, size === 'huge' ? 2 : 1);

/**
 * A text in block letters, broken at blanks so that no line is wider than `width` columns.
 *
 * @returns the lines, or null when a character cannot be drawn or a word is too wide
 */
export function bigLetters(text: string, width: number, size: LetterSize): string[] | null {
  const pixelWidth = size === 'huge' ? Math.floor(width / 2) : width;
  const lines: string[][] = [];
  let line = '';
  let drawn: string[] | null = null;
  for (const word of oneLine(text).split(/[ \u00a0]/)) {
    const joined = line === '' ? word : `${line} ${word}`;
    const tried = pixels(joined);
    if (!tried) return null;
    if ((tried[0]?.length ?? 0) <= pixelWidth) {
      [line, drawn] = [joined, tried];
      continue;
    }
    if (drawn) lines.push(drawn);
    [line, drawn] = [word, pixels(word)];
    if ((drawn?.[0]?.length ?? 0) > pixelWidth) return null;
  }
  if (drawn) lines.push(drawn);
  // Half a row below low letters is free already; the others need a row between lines.
  const gap = size === 'low' ? [] : [''];
  return lines.flatMap((each, index) => [...(index > 0 ? gap : []), ...draw(each, size)]);
}

/** The largest letters in which the text takes at most `width` columns and `rows` rows; empty if none do. */
export function largestLetters(text: string, width: number, rows: number): string[] {
  for (const size of ['huge', 'tall', 'low'] as const) {
    const lines = bigLetters(text, width, size);
    if (lines && lines.length <= rows) return lines;
  }
  return [];
}
