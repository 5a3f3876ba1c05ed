/** Longer than any name or sentence of a session; a hostile record may hold half a megabyte. */
const LONGEST = 600;

/** Control characters would break a page or hide text; direction marks could turn a verdict round. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const unprintable = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069]+/g;

const half = /\p{Surrogate}/gu;

/** Text as it may be shown: on one line, without marks that hide or turn it, and of bearable length. */
export function clip(text: string): string {
  // Cutting may split a character of two halves.
  const short = text.length > LONGEST ? `${text.slice(0, LONGEST).replace(half, '')}\u2026` : text;
  return short.replace(unprintable, ' ');
}
