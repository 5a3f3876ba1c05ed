/**
 * One place in a spoken form: the words that may stand there. The empty word means that the place
 * may be left out.
 */
export type Token = readonly string[];

/** One way to say a number: its places in order. */
export type Form = readonly Token[];

/** A token for a word that has no alternative. */
export const word = (text: string): Token => [text];

/**
 * Digit words. "niner" is the ICAO radiotelephony word for 9 (Annex 10 Vol. II, 5.2.1.4.3), which
 * people use to keep nine and five apart; "oh" is everyday English for a zero between other digits.
 */
const digitTokens: readonly Token[] = [
  ['zero', 'oh'],
  ['one'],
  ['two'],
  ['three'],
  ['four'],
  ['five'],
  ['six'],
  ['seven'],
  ['eight'],
  ['nine', 'niner'],
];

const teens = [
  'ten',
  'eleven',
  'twelve',
  'thirteen',
  'fourteen',
  'fifteen',
  'sixteen',
  'seventeen',
  'eighteen',
  'nineteen',
];

const tens = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];

export const and: Token = ['', 'and'];
export const hundred = word('hundred');
export const thousand = word('thousand');
/** ICAO says "decimal" where everyday English says "point". */
export const point: Token = ['point', 'decimal'];
export const minus: Token = ['minus', 'negative'];

/** The digit 0 to 9 as a place among other digits. */
export function digitToken(digit: number): Token {
  const token = digitTokens[digit];
  if (token === undefined) throw new RangeError(`${digit} is not a digit`);
  return token;
}

/** A digit string, place by place: "120" as one, two, zero or oh. */
export const digitTokensOf = (digits: string): Form => [...digits].map(d => digitToken(Number(d)));

/** 0 to 99 as a cardinal: "seven", "twelve", "forty two". A lone zero is never "oh". */
export function upToNinetyNine(n: number): Form {
  if (n === 0) return [word('zero')];
  if (n < 10) return [digitToken(n)];
  const teen = teens[n - 10];
  if (teen !== undefined) return [word(teen)];
  const ten = tens[Math.floor(n / 10) - 2];
  if (ten === undefined) throw new RangeError(`${n} has more than two digits`);
  return n % 10 === 0 ? [word(ten)] : [word(ten), digitToken(n % 10)];
}
