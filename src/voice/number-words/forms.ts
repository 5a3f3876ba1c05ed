import {
  and,
  digitToken,
  digitTokensOf,
  type Form,
  hundred,
  minus,
  point,
  type Token,
  thousand,
  upToNinetyNine,
  word,
} from './vocabulary.ts';

/** Whole numbers up to here have spoken forms. */
export const largestWholeNumber = 9999;

/** A decimal number without rounding trouble: `scaled` / 10^`decimals`. */
export interface Decimal {
  readonly scaled: number;
  readonly decimals: number;
}

const afterHundreds = (rest: number): Form => (rest === 0 ? [] : [and, ...upToNinetyNine(rest)]);

/** "one hundred (and) five", "one eighty"; 100 to 999. */
function inHundreds(n: number): readonly Form[] {
  const first = digitToken(Math.floor(n / 100));
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
      : [digitToken(Math.floor(belowThousand / 100)), hundred, ...afterHundreds(rest)];
  const forms: Form[] = [[digitToken(Math.floor(n / 1000)), thousand, ...after]];
  if (belowThousand >= 100) forms.push([...pair, hundred, ...afterHundreds(rest)]);
  if (rest >= 10) forms.push([...pair, ...upToNinetyNine(rest)]);
  else if (rest > 0) forms.push([...pair, word('oh'), digitToken(rest)]);
  return forms;
}

function grouped(n: number): readonly Form[] {
  if (n < 100) return [upToNinetyNine(n)];
  return n < 1000 ? inHundreds(n) : inThousands(n);
}

const digitByDigit = (n: number): Form => (n < 10 ? upToNinetyNine(n) : digitTokensOf(String(n)));

/** A zero before the point may be "zero", "oh" or nothing: "point six". */
const zeroBeforePoint: Token = ['zero', 'oh', ''];

function fractionForms(fraction: string, digitsOnly: boolean): readonly Form[] {
  const short = fraction.replace(/0+$/, '');
  const forms: Form[] = [digitTokensOf(fraction)];
  if (short !== '' && short !== fraction) forms.push(digitTokensOf(short));
  const asPair = !digitsOnly && fraction.length === 2 && !fraction.startsWith('0');
  if (asPair) forms.push(upToNinetyNine(Number(fraction)));
  return forms.map(form => [point, ...form]);
}

/**
 * Every way to say a number in English that is listened for: grouped ("one hundred and eighty",
 * "one eighty", "eighteen hundred") unless `digitsOnly`, and digit by digit ("one eight zero").
 * The whole part may be 0 to 9999, the sign either way.
 */
export function spokenForms({ scaled, decimals }: Decimal, digitsOnly: boolean): readonly Form[] {
  const scale = 10 ** decimals;
  const magnitude = Math.abs(scaled);
  const whole = Math.floor(magnitude / scale);
  const wholeForms = digitsOnly ? [digitByDigit(whole)] : [...grouped(whole), digitByDigit(whole)];
  const fraction = decimals === 0 ? '' : String(magnitude % scale).padStart(decimals, '0');
  const beforePoint = whole === 0 ? [[zeroBeforePoint]] : wholeForms;
  const withFraction =
    fraction === ''
      ? []
      : beforePoint.flatMap(w => fractionForms(fraction, digitsOnly).map(f => [...w, ...f]));
  const withoutFraction = Number(fraction) === 0 ? wholeForms : [];
  const all = [...withoutFraction, ...withFraction];
  return scaled < 0 ? all.map(form => [minus, ...form]) : all;
}

/** The phrases that a form stands for, its alternatives written out. */
export function phrasesOf(form: Form): readonly string[] {
  return form.reduce<readonly string[]>(
    (starts, token) =>
      starts.flatMap(start => token.map(w => (w === '' ? start : start === '' ? w : `${start} ${w}`))),
    [''],
  );
}
