import type { NumberWords } from '../languages/language.ts';
import { englishNumbers } from './english.ts';
import type { Form, Token } from './vocabulary.ts';

/** Whole numbers up to here have spoken forms. */
export const largestWholeNumber = 9999;

/** A decimal number without rounding trouble: `scaled` / 10^`decimals`. */
export interface Decimal {
  readonly scaled: number;
  readonly decimals: number;
}

/** A digit string, place by place: "120" as one, two, zero or oh. */
export const digitTokensOf = (text: string, { digits }: NumberWords): Form =>
  [...text].map((digit): Token => {
    const token = digits[Number(digit)];
    if (token === undefined) throw new RangeError(`${digit} is not a digit`);
    return token;
  });

/** A lone digit is the cardinal: only among others is it said in the ways of digits. */
const digitByDigit = (n: number, words: NumberWords): readonly Form[] =>
  n < 10 ? words.grouped(n) : [digitTokensOf(String(n), words)];

function fractionForms(fraction: string, digitsOnly: boolean, words: NumberWords): readonly Form[] {
  const short = fraction.replace(/0+$/, '');
  const forms: Form[] = [digitTokensOf(fraction, words)];
  if (short !== '' && short !== fraction) forms.push(digitTokensOf(short, words));
  const asPair = !digitsOnly && fraction.length === 2 && !fraction.startsWith('0');
  if (asPair) forms.push(...words.pair(Number(fraction)));
  return forms.map(form => [words.point, ...form]);
}

/**
 * Every way to say a number that is listened for: grouped ("one hundred and eighty", "one eighty",
 * "eighteen hundred") unless `digitsOnly`, and digit by digit ("one eight zero").
 * The whole part may be 0 to 9999, the sign either way.
 */
export function spokenForms(
  { scaled, decimals }: Decimal,
  digitsOnly: boolean,
  words: NumberWords = englishNumbers,
): readonly Form[] {
  const scale = 10 ** decimals;
  const magnitude = Math.abs(scaled);
  const whole = Math.floor(magnitude / scale);
  const inDigits = digitByDigit(whole, words);
  const wholeForms = digitsOnly ? inDigits : [...words.grouped(whole), ...inDigits];
  const fraction = decimals === 0 ? '' : String(magnitude % scale).padStart(decimals, '0');
  const beforePoint = whole === 0 ? [[words.zeroBeforePoint]] : wholeForms;
  const withFraction =
    fraction === ''
      ? []
      : beforePoint.flatMap(w => fractionForms(fraction, digitsOnly, words).map(f => [...w, ...f]));
  const withoutFraction = Number(fraction) === 0 ? wholeForms : [];
  const all = [...withoutFraction, ...withFraction];
  return scaled < 0 ? all.map(form => [words.minus, ...form]) : all;
}

/** The phrases that a form stands for, its alternatives written out. */
export function phrasesOf(form: Form): readonly string[] {
  return form.reduce<readonly string[]>(
    (starts, token) =>
      starts.flatMap(start => token.map(w => (w === '' ? start : start === '' ? w : `${start} ${w}`))),
    [''],
  );
}
