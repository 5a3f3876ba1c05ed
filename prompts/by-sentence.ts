import type { BySentence } from './types.ts';

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** What a row stands for: `{}` for anything, `{words}` for a part that is worded in the language itself. */
export const patternOf = (sentence: string): RegExp =>
  new RegExp(
    `^${sentence
      .split(/\{(?:words)?\}/)
      .map(escaped)
      .join('(.+)')}$`,
    's',
  );

type Row = readonly [pattern: RegExp, blanks: readonly string[], told: string];

const rowsOf = new Map<BySentence, readonly Row[]>();

/** The rows with something to put in, each table's made once. */
function rowsWithBlanks(table: BySentence): readonly Row[] {
  const known = rowsOf.get(table);
  if (known) return known;
  const rows = Object.entries(table).flatMap(([sentence, told]): Row[] => {
    const blanks = sentence.match(/\{(?:words)?\}/g) ?? [];
    return blanks.length === 0 ? [] : [[patternOf(sentence), blanks, told]];
  });
  rowsOf.set(table, rows);
  return rows;
}

/** A sentence of the program as this table words it; as it came, where the table lacks it. */
export function bySentence(sentence: string, table: BySentence): string {
  const whole = Object.hasOwn(table, sentence) ? table[sentence] : undefined;
  if (whole !== undefined) return whole;
  for (const [pattern, blanks, told] of rowsWithBlanks(table)) {
    const found = pattern.exec(sentence);
    if (!found) continue;
    let at = 0;
    return told.replace(/\{(?:words)?\}/g, () => {
      const filled = found[at + 1] ?? '';
      const worded = blanks[at] === '{words}';
      at += 1;
      return worded ? bySentence(filled, table) : filled;
    });
  }
  return sentence;
}

/** The same of a text with a sentence on each line. */
export const linesBySentence = (text: string, table: BySentence): string[] =>
  text.split('\n').map(line => bySentence(line, table));
