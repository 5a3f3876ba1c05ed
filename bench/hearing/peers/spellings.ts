import { sayNumber } from '../../../src/voice/number-words/say.ts';

/** Words and figures, in the order in which they stand; "7D" is both. */
const tokensIn = (text: string): readonly string[] => text.toLowerCase().match(/[a-z']+|\d+/g) ?? [];

const isFigures = (token: string) => /^\d/.test(token);
const digits = (figures: string) => [...figures].map(digit => sayNumber(Number(digit), 'grouped')).join(' ');
/** Larger ones are read figure by figure. */
const grouped = (figures: string) =>
  figures.length > 6 ? digits(figures) : sayNumber(Number(figures), 'grouped');
/** "1952" as "nineteen fifty two", "5605" as "fifty six oh five". */
const inPairs = (figures: string) =>
  (figures.length % 2 === 0 ? figures : ` ${figures}`)
    .match(/../g)
    ?.map(pair => (/^0./.test(pair) ? `oh ${digits(pair.slice(1))}` : grouped(pair.trim())))
    .join(' ') ?? '';

const readings: readonly ((figures: string) => string)[] = [
  digits,
  figures => digits(figures).replaceAll('zero', 'oh'),
  grouped,
  inPairs,
];

/**
 * What a recognizer of free text may have meant, as words: the figures in it read one by one, as numbers, and in pairs.
 * @param text as it was written, with figures and signs
 */
export function spellingsOf(text: string): readonly string[] {
  const tokens = tokensIn(text);
  const all = readings.map(read => tokens.map(token => (isFigures(token) ? read(token) : token)).join(' '));
  return [...new Set(all)];
}
