import stringWidth from 'string-width';

const graphemes = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

const NO_BREAK = '\u00a0';

/** Without control characters, line ends or runs of blanks: one line that cannot move the cursor. */
export const oneLine = (text: string): string =>
  text.replace(/[\p{Cc}\p{Cf}\p{Z}]+/gu, run => (run === NO_BREAK ? run : ' ')).trim();

/** What nearly every line is made of: one column each. Any other text costs several times as much. */
const NARROW = /^[ -~\u00a0«»À-ÿ█▀▄░·▌…°≥≤–]*$/;

/** Columns a text takes in a terminal. */
export const widthOf = (text: string): number => (NARROW.test(text) ? text.length : stringWidth(text));

/** The longest beginning that takes at most `width` columns, and what is left. */
function splitAt(text: string, width: number): readonly [head: string, rest: string] {
  if (NARROW.test(text)) return [text.slice(0, width), text.slice(width)];
  let head = '';
  let used = 0;
  for (const { segment } of graphemes.segment(text)) {
    used += widthOf(segment);
    if (used > width) break;
    head += segment;
  }
  return [head, text.slice(head.length)];
}

/** At most `width` columns; what is cut off is replaced by one "…". */
export function cut(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  return width < 1 ? '' : `${splitAt(text, width - 1)[0]}…`;
}

/** The end of a text, at most `width` columns, for a line that is being typed. */
export function cutStart(text: string, width: number): string {
  if (widthOf(text) <= width) return text;
  if (width < 1) return '';
  const letters = [...graphemes.segment(text)].map(({ segment }) => segment);
  while (widthOf(letters.join('')) > width - 1) letters.shift();
  return `…${letters.join('')}`;
}

/** Exactly `width` columns: cut, or filled with blanks. */
export function pad(text: string, width: number): string {
  const fitting = cut(text, width);
  return fitting + ' '.repeat(Math.max(0, width - widthOf(fitting)));
}

/** Exactly `width` columns with the text in the middle. */
export function centre(text: string, width: number): string {
  const fitting = cut(text, width);
  return pad(' '.repeat(Math.floor((width - widthOf(fitting)) / 2)) + fitting, width);
}

/** Left and right text in one line of `width` columns; where both do not fit, the left one is cut. */
export function ends(left: string, right: string, width: number): string {
  const end = cut(right, width);
  const start = cut(left, width - widthOf(end) - 1);
  return start + ' '.repeat(Math.max(0, width - widthOf(start) - widthOf(end))) + end;
}

/** Broken at blanks into lines of at most `width` columns; a longer word is broken where it has to be. Four columns hold any character. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of oneLine(text).split(' ')) {
    const joined = line === '' ? word : `${line} ${word}`;
    if (widthOf(joined) <= width) {
      line = joined;
      continue;
    }
    if (line !== '') lines.push(line);
    line = word;
    while (widthOf(line) > width) {
      const [head, rest] = splitAt(line, width);
      if (head === '') return lines;
      lines.push(head);
      line = rest;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}
