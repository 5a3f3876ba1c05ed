import type { NumberWords } from '../languages/language.ts';
import { type Form, type Token, word } from './vocabulary.ts';

const units = [
  'zéro',
  'un',
  'deux',
  'trois',
  'quatre',
  'cinq',
  'six',
  'sept',
  'huit',
  'neuf',
  'dix',
  'onze',
  'douze',
  'treize',
  'quatorze',
  'quinze',
  'seize',
];

/** What stands for the tens, in France and, from seventy on, in Belgium and Switzerland. */
const tens: readonly (readonly string[])[] = [
  [],
  ['dix'],
  ['vingt'],
  ['trente'],
  ['quarante'],
  ['cinquante'],
  ['soixante'],
  ['septante'],
  ['huitante'],
  ['nonante'],
];

const cent = word('cent');
const mille = word('mille');
/** "vingt et un": the little word is often swallowed. */
const et: Token = ['et', ''];

const unit = (n: number): Form => {
  const name = units[n];
  if (name !== undefined) return [word(name)];
  return [word('dix'), ...unit(n - 10)];
};

/** A tens word with what is counted on to it, up to nineteen: "vingt et un", "soixante et onze". */
function onTop(head: Form, n: number, withEt: boolean): Form {
  if (n === 0) return head;
  return [...head, ...(withEt && (n === 1 || n === 11) ? [et] : []), ...unit(n)];
}

/** Every way to say 0 to 99: "soixante dix", "septante", "quatre vingt deux", "huitante deux". */
function upToNinetyNine(n: number): readonly Form[] {
  if (n < 20) return [unit(n)];
  const decimal = (tens[Math.floor(n / 10)] ?? []).map(name => onTop([word(name)], n % 10, true));
  if (n < 70) return decimal;
  const inScores =
    n < 80 ? onTop([word('soixante')], n - 60, true) : onTop([word('quatre'), word('vingt')], n - 80, false);
  return [inScores, ...decimal];
}

const oneUnlessLone = (count: number, then: Token): Form => (count === 1 ? [then] : [...unit(count), then]);

function belowThousand(n: number): readonly Form[] {
  if (n < 100) return upToNinetyNine(n);
  const head = oneUnlessLone(Math.floor(n / 100), cent);
  return n % 100 === 0 ? [head] : upToNinetyNine(n % 100).map(rest => [...head, ...rest]);
}

/** "mille huit cent cinquante", and up to nineteen hundred also "dix huit cent cinquante". */
function inThousands(n: number): readonly Form[] {
  const head = oneUnlessLone(Math.floor(n / 1000), mille);
  const inMille = n % 1000 === 0 ? [head] : belowThousand(n % 1000).map(rest => [...head, ...rest]);
  if (n < 1100 || n >= 2000) return inMille;
  const hundreds: Form = [...unit(Math.floor(n / 100)), cent];
  const inCent = n % 100 === 0 ? [hundreds] : upToNinetyNine(n % 100).map(rest => [...hundreds, ...rest]);
  return [...inMille, ...inCent];
}

/** 0 to 99 as it is written in full, with "vingts" where nothing follows. */
function writtenPair(n: number, last: boolean): string {
  if (n === 80) return last ? 'quatre vingts' : 'quatre vingt';
  const [form = []] = upToNinetyNine(n);
  return form.map(token => token[0] ?? '').join(' ');
}

/** @param last nothing follows the number: "quatre vingts" and "deux cents" take their s only there */
function written(n: number, last: boolean): string {
  if (n < 100) return writtenPair(n, last);
  const size = n < 1000 ? 100 : 1000;
  const count = Math.floor(n / size);
  const rest = n % size;
  const name = size === 1000 ? 'mille' : count > 1 && rest === 0 && last ? 'cents' : 'cent';
  const head = count === 1 ? name : `${written(count, false)} ${name}`;
  return rest === 0 ? head : `${head} ${written(rest, last)}`;
}

/** "soixante et onze" and "septante et un", "quatre vingt dix" and "nonante", "douze virgule six". */
export const frenchNumbers: NumberWords = {
  digits: units.slice(0, 10).map(word),
  grouped: n => (n < 1000 ? belowThousand(n) : inThousands(n)),
  pair: upToNinetyNine,
  zeroBeforePoint: word('zéro'),
  point: ['virgule', 'point'],
  minus: word('moins'),
  cardinal: n => written(n, true),
  // People type the point of the keypad as well as the comma.
  decimalMarks: ',.',
};
