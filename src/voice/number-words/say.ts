import { digitTokensOf, minus, point, type Token, upToNinetyNine } from './vocabulary.ts';

/** `grouped`: "one hundred eighty"; `digitByDigit`: "one eight zero", for the read-back. */
export type NumberStyle = 'grouped' | 'digitByDigit';

const spoken = (tokens: readonly Token[]) => tokens.map(token => token[0] ?? '').join(' ');

function cardinal(n: number): string {
  if (n < 100) return spoken(upToNinetyNine(n));
  const unit = n < 1000 ? 100 : 1000;
  const head = `${cardinal(Math.floor(n / unit))} ${unit === 100 ? 'hundred' : 'thousand'}`;
  return n % unit === 0 ? head : `${head} ${cardinal(n % unit)}`;
}

/**
 * How the tool says a number, in English. Decimals are always said digit by digit.
 * @param value finite, magnitude below one million
 * @param decimals places to round to and say, 0 to 3
 * @throws RangeError on anything else: a value that is not a number must never be spoken.
 */
export function sayNumber(value: number, style: NumberStyle, decimals = 0): string {
  if (!Number.isFinite(value) || Math.abs(value) >= 1e6) throw new RangeError(`${value} cannot be said`);
  const [whole = '', fraction = ''] = Math.abs(value).toFixed(decimals).split('.');
  const said = style === 'grouped' ? cardinal(Number(whole)) : spoken(digitTokensOf(whole));
  const sign = value < 0 && Number(`${whole}${fraction}`) !== 0 ? `${spoken([minus])} ` : '';
  return `${sign}${said}${fraction === '' ? '' : ` ${spoken([point, ...digitTokensOf(fraction)])}`}`;
}
