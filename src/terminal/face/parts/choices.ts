import type { View } from '../../../session/view.ts';
import { fill } from '../../../session/wording.ts';
import { type Line, linesOf } from '../line.ts';
import { oneLine, widthOf, wrap } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

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

/** A wording as it may be said. */
export const quoted = (wording: string, words: FaceWords): string =>
  fill(words.quoted, { text: oneLine(wording) });

/** The numbers that may be said, with their unit. */
export function rangeText({ min, max, unit }: NonNullable<View['number']>, words: FaceWords): string {
  const figure = (value: number) => String(value).replace('.', words.decimalMark);
  return fill(words.range, { min: figure(min), max: figure(max), unit }).trim();
}

/** The word that is to be tried out goes first: whoever reads the list takes one of it. */
export const mayBeTyped = ({
  choices,
  emergencyWord,
}: Pick<View, 'choices' | 'emergencyWord'>): readonly string[] =>
  emergencyWord === undefined ? choices : [emergencyWord, ...choices];

/** What may be said now: wordings, a number with its range, or neither. */
export function choices(
  view: Pick<View, 'choices' | 'number' | 'emergencyWord'>,
  width: number,
  words: FaceWords,
): Line[] {
  const { number } = view;
  const wordings = mayBeTyped(view);
  const awaited = number && fill(words.sayNumber, { name: number.name, range: rangeText(number, words) });
  return [
    ...(awaited ? linesOf(wrap(awaited, width), 'good') : []),
    ...(wordings.length > 0
      ? linesOf(listing(words.say, barred(wordings.map(each => quoted(each, words))), width), 'good')
      : []),
    ...(!number && wordings.length === 0 ? linesOf(wrap(words.nothingAwaited, width), 'faint') : []),
  ];
}

/** The words that are always understood. */
export const controls = (
  { controls: wordings }: Pick<View, 'controls'>,
  width: number,
  words: FaceWords,
): Line[] =>
  wordings.length === 0 ? [] : linesOf(listing(words.also, barred(wordings.map(oneLine)), width));
