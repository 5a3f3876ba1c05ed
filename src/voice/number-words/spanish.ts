import type { NumberWords } from '../languages/language.ts';
import { type Form, firstWords, word } from './vocabulary.ts';

const small = [
  'cero',
  'uno',
  'dos',
  'tres',
  'cuatro',
  'cinco',
  'seis',
  'siete',
  'ocho',
  'nueve',
  'diez',
  'once',
  'doce',
  'trece',
  'catorce',
  'quince',
  'dieciséis',
  'diecisiete',
  'dieciocho',
  'diecinueve',
  'veinte',
  'veintiuno',
  'veintidós',
  'veintitrés',
  'veinticuatro',
  'veinticinco',
  'veintiséis',
  'veintisiete',
  'veintiocho',
  'veintinueve',
];
const tens = ['treinta', 'cuarenta', 'cincuenta', 'sesenta', 'setenta', 'ochenta', 'noventa'];
const hundreds = [
  'ciento',
  'doscientos',
  'trescientos',
  'cuatrocientos',
  'quinientos',
  'seiscientos',
  'setecientos',
  'ochocientos',
  'novecientos',
];

/** 0 to 99: "siete", "dieciséis", "veintidós", "treinta y cinco". */
function upToNinetyNine(n: number): Form {
  const name = small[n];
  if (name !== undefined) return [word(name)];
  const ten = tens[Math.floor(n / 10) - 3];
  if (ten === undefined) throw new RangeError(`${n} has more than two digits`);
  return n % 10 === 0 ? [word(ten)] : [word(ten), word('y'), ...upToNinetyNine(n % 10)];
}

/** 0 to 999: "cien", "ciento uno", "quinientos veinte". */
function belowThousand(n: number): Form {
  if (n < 100) return upToNinetyNine(n);
  if (n === 100) return [word('cien')];
  const head = word(hundreds[Math.floor(n / 100) - 1] ?? '');
  return n % 100 === 0 ? [head] : [head, ...upToNinetyNine(n % 100)];
}

/** "uno" loses its last letter before what it counts: "veintiún mil", "treinta y un mil". */
const counting = (text: string): string => text.replace(/veintiuno$/, 'veintiún').replace(/uno$/, 'un');

function grouped(n: number): Form {
  if (n < 1000) return belowThousand(n);
  const count = Math.floor(n / 1000);
  const head =
    count === 1
      ? []
      : counting(firstWords(belowThousand(count)))
          .split(' ')
          .map(word);
  const rest = n % 1000;
  return [...head, word('mil'), ...(rest === 0 ? [] : belowThousand(rest))];
}

/** "ochocientos cincuenta", "mil ochocientos", "doce coma seis". */
export const spanishNumbers: NumberWords = {
  digits: small.slice(0, 10).map(word),
  grouped: n => [grouped(n)],
  pair: n => [upToNinetyNine(n)],
  zeroBeforePoint: word('cero'),
  point: ['coma', 'punto'],
  minus: word('menos'),
  cardinal: n => firstWords(grouped(n)),
  // People type the point of the keypad as well as the comma.
  decimalMarks: ',.',
};
