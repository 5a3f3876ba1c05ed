import { voiceLanguage } from '../languages/index.ts';
import type { SpokenLanguage } from '../ports.ts';
import { digitTokensOf } from './forms.ts';
import { firstWords } from './vocabulary.ts';

/** `grouped`: "one hundred eighty"; `digitByDigit`: "one eight zero", for the read-back. */
export type NumberStyle = 'grouped' | 'digitByDigit';

/**
 * How the tool says a number. Decimals are always said digit by digit.
 * @param value finite, magnitude below one million
 * @param decimals places to round to and say, 0 to 3
 * @throws RangeError on anything else: a value that is not a number must never be spoken.
 */
export function sayNumber(
  value: number,
  style: NumberStyle,
  decimals = 0,
  language: SpokenLanguage = 'en',
): string {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e6) throw new RangeError(`${value} cannot be said`);
  const words = voiceLanguage(language).numbers;
  const [whole = '', fraction = ''] = Math.abs(value).toFixed(decimals).split('.');
  const said = style === 'grouped' ? words.cardinal(Number(whole)) : firstWords(digitTokensOf(whole, words));
  const sign = value < 0 && Number(`${whole}${fraction}`) !== 0 ? `${firstWords([words.minus])} ` : '';
  const after = fraction === '' ? '' : ` ${firstWords([words.point, ...digitTokensOf(fraction, words)])}`;
  return `${sign}${said}${after}`;
}
