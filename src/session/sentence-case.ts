/** Marks that end a sentence, and characters that no text has, which stand for them where they end none of the tool's. */
const marks = ['.', '?', '!'];
const standIns = ['\uFDD0', '\uFDD1', '\uFDD2'];

const exchanged = (text: string, from: readonly string[], to: readonly string[]): string =>
  text.replace(/[.?!\uFDD0-\uFDD2]/g, mark => to[from.indexOf(mark)] ?? mark);

/** Somebody's own words within a sentence of the tool: "approx. 40" stays as it was written. */
export const ownWords = (text: string): string => exchanged(text, marks, standIns);

/** Each sentence of the tool with a capital, as it is written; what is put into a prompt begins small. */
export const sentenceCase = (text: string): string =>
  exchanged(
    text.replace(/(^|[.?!] +)([¿¡]?)(\p{Ll})/gu, (_, before: string, mark: string, letter: string) =>
      [before, mark, letter.toUpperCase()].join(''),
    ),
    standIns,
    marks,
  );
