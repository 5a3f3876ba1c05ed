type Words = { readonly [key: string]: Words | string | readonly string[] | ((...any: never[]) => string) };

/** Every text of a table of words, by where it stands in it. */
export function textsOf(table: object, place = ''): [place: string, text: string][] {
  return Object.entries(table as Words).flatMap(([key, value]): [string, string][] => {
    const here = place === '' ? key : `${place}.${key}`;
    if (typeof value === 'string') return [[here, value]];
    return typeof value === 'object' && value !== null ? textsOf(value, here) : [];
  });
}

/** The names of the blanks in each text of a table, by where it stands in it. */
export const blanksOf = (table: object): Record<string, string[]> =>
  Object.fromEntries(
    textsOf(table).map(([place, text]) => [
      place,
      [...text.matchAll(/\{(\w+)\}/g)].map(([, name = '']) => name).toSorted(),
    ]),
  );

const LEAST_LETTERS = 4;

/** The pieces of a text between its blanks that are words, and not just a mark or a unit. */
const piecesOf = (text: string): string[] =>
  text
    .split(/\{\w+\}/)
    .map(piece => piece.trim())
    .filter(piece => (piece.match(/\p{L}/gu) ?? []).length >= LEAST_LETTERS);

/** What stands in these texts and not in those of another language: what both have in common tells nothing. */
export function wordsOnlyIn(texts: readonly string[], others: readonly string[]): string[] {
  const there = others.map(text => text.toLowerCase()).join('\n');
  return [...new Set(texts.flatMap(piecesOf))].filter(piece => !there.includes(piece.toLowerCase()));
}

/** Which of these words stand in a text, each as a word of its own. */
export function foundIn(text: string, words: readonly string[]): string[] {
  const flat = text.replace(/[\s\u00a0]+/g, ' ').toLowerCase();
  return words.filter(word => {
    const at = word
      .replace(/[\s\u00a0]+/g, ' ')
      .toLowerCase()
      .replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
    return new RegExp(`(?<![\\p{L}-])${at}(?![\\p{L}-])`, 'u').test(flat);
  });
}

/** The words that stand in the same place of both tables, and so were perhaps never translated. */
export function alikeIn(table: object, other: object): string[] {
  const there = new Map(textsOf(other));
  const alike = textsOf(table).filter(([place, text]) => there.get(place) === text);
  return [...new Set(alike.flatMap(([, text]) => piecesOf(text)))];
}
