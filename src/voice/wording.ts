/**
 * A wording as the recognizer and the matcher compare it: lower case, single spaces, hyphens and
 * punctuation gone, apostrophes inside words kept ("that's").
 */
export function normalizeWording(text: string): string {
  return text
    .toLowerCase()
    .normalize('NFC')
    .replace(/[’ʼ]/g, "'")
    .replace(/[^\p{L}\p{N}' ]+/gu, ' ')
    .replace(/(?<!\p{L})'|'(?!\p{L})/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** The wordings normalized, without those that have no words. */
export const spokenWordings = (wordings: readonly string[]): readonly string[] =>
  wordings.map(normalizeWording).filter(wording => wording !== '');

/** The different words of some wordings, normalized, in order of first appearance. */
export function wordsOf(wordings: readonly string[]): readonly string[] {
  return [...new Set(wordings.flatMap(w => normalizeWording(w).split(' ')).filter(w => w !== ''))];
}

/** Whether the words of `wording` stand in `text` one after the other; both already normalized. */
export function containsWording(text: string, wording: string): boolean {
  return wording !== '' && ` ${text} `.includes(` ${wording} `);
}
