import type { NumberWords } from '../languages/language.ts';
import { type Form, firstWords, type Token, word } from './vocabulary.ts';

/**
 * Digit words. "niner" is the ICAO radiotelephony word for 9 (Annex 10 Vol. II, 5.2.1.4.3), which
 * people use to keep nine and five apart; "oh" is everyday English for a zero between other digits.
 */
const digits: readonly Token[] = [
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

const and: Token = ['', 'and'];
const hundred = word('hundred');
const thousand = word('thousand');

function digit(n: number): Token {
  const token = digits[n];
  if (token === undefined) throw new RangeError(`${n} is not a digit`);
  return token;
}

/** 0 to 99: "seven", "twelve", "forty two". A lone zero is never "oh". */
function upToNinetyNine(n: number): Form {
  if (n === 0) return [word('zero')];
  if (n < 10) return [digit(n)];
  const teen = teens[n - 10];
  if (teen !== undefined) return [word(teen)];
  const ten = tens[Math.floor(n / 10) - 2];
  if (ten === undefined) throw new RangeError(`${n} has more than two digits`);
  return n % 10 === 0 ? [word(ten)] : [word(ten), digit(n % 10)];
}

const afterHundreds = (rest: number): Form => (rest === 0 ? [] : [and, ...upToNinetyNine(rest)]);

/** "one hundred (and) five", "one eighty"; 100 to 999. */
function inHundreds(n: number): readonly Form[] {
  const first = digit(Math.floor(n / 100));
  const rest = n % 100;
  const full: Form = [first, hundred, ...afterHundreds(rest)];
  return rest < 10 ? [full] : [full, [first, ...upToNinetyNine(rest)]];
}

/** "two thousand one hundred", "eighteen hundred (and) five", "eighteen oh five"; 1000 to 9999. */
function inThousands(n: number): readonly Form[] {
  const belowThousand = n % 1000;
  const pair = upToNinetyNine(Math.floor(n / 100));
  const rest = n % 100;
  const after: Form =
    belowThousand < 100
      ? afterHundreds(belowThousand)
      : [digit(Math.floor(belowThousand / 100)), hundred, ...afterHundreds(rest)];
  const forms: Form[] = [[digit(Math.floor(n / 1000)), thousand, ...after]];
  if (belowThousand >= 100) forms.push([...pair, hundred, ...afterHundreds(rest)]);
  if (rest >= 10) forms.push([...pair, ...upToNinetyNine(rest)]);
  else if (rest > 0) forms.push([...pair, word('oh'), digit(rest)]);
  return forms;
}

function cardinal(n: number): string {
  if (n < 100) return firstWords(upToNinetyNine(n));
  const unit = n < 1000 ? 100 : 1000;
  const head = `${cardinal(Math.floor(n / unit))} ${unit === 100 ? 'hundred' : 'thousand'}`;
  return n % unit === 0 ? head : `${head} ${cardinal(n % unit)}`;
}

/** "one hundred and eighty", "one eighty", "eighteen hundred"; ICAO says "decimal" for "point". */
export const englishNumbers: NumberWords = {
  digits,
  grouped(n) {
    if (n < 100) return [upToNinetyNine(n)];
    return n < 1000 ? inHundreds(n) : inThousands(n);
  },
  pair: n => [upToNinetyNine(n)],
  zeroBeforePoint: ['zero', 'oh', ''],
  point: ['point', 'decimal'],
  minus: ['minus', 'negative'],
  cardinal,
  decimalMarks: '.',
};
