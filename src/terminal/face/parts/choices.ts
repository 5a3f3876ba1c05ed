import type { View } from '../../../session/view.ts';
import { type Line, linesOf } from '../line.ts';
import { oneLine, widthOf, wrap } from '../text.ts';
import { words } from '../words.ts';

/** Broken between wordings, and the lines after the first indented below the first wording. */
function listing(head: string, items: readonly string[], width: number): string[] {
  const indent = ' '.repeat(widthOf(head) + 1);
  const lines: string[] = [];
  let current = head;
  for (const item of items) {
    const joined = `${current} ${item}`;
    if (widthOf(joined) <= width || current === head) {
      current = joined;
    } else {
      lines.push(current);
      current = `${indent}${item}`;
    }
  }
  return [...lines, current].flatMap(text => (widthOf(text) <= width ? [text] : wrap(text, width)));
}

const barred = (wordings: readonly string[]) =>
  wordings.map((wording, index) => (index < wordings.length - 1 ? `${wording} |` : wording));

const quoted = (wordings: readonly string[]) => barred(wordings.map(wording => `"${oneLine(wording)}"`));

/** What may be said now: wordings, a number with its range, or neither. */
export function choices(
  { choices: wordings, number }: Pick<View, 'choices' | 'number'>,
  width: number,
): Line[] {
  const range = number && `${number.min} to ${number.max} ${number.unit}`.trim();
  return [
    ...(number ? linesOf(wrap(`${words.sayNumber} ${number.name}, ${range}`, width), 'good') : []),
    ...(wordings.length > 0 ? linesOf(listing(words.say, quoted(wordings), width), 'good') : []),
    ...(!number && wordings.length === 0 ? linesOf(wrap(words.nothingAwaited, width), 'faint') : []),
  ];
}

/** The words that are always understood. */
export const controls = ({ controls: wordings }: Pick<View, 'controls'>, width: number): Line[] =>
  wordings.length === 0 ? [] : linesOf(listing(words.also, barred(wordings.map(oneLine)), width));
