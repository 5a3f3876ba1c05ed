import type { NumberSlot } from '../ports.ts';
import { normalizeWording } from '../wording.ts';
import { largestWholeNumber } from './forms.ts';
import { digitToken, type Form } from './vocabulary.ts';

/** Numbers too many to be listed, such as fault codes: whole, from nought, and only said digit by digit. */
export const isCode = ({ min, max, step, digitsOnly }: NumberSlot): boolean =>
  digitsOnly === true &&
  step === 1 &&
  Number.isInteger(min) &&
  min >= 0 &&
  Number.isInteger(max) &&
  max > largestWholeNumber;

const digits = Array.from({ length: 10 }, (_, digit) => digitToken(digit));

/** As many digits as the largest code has, all but the first of which may be missing. */
export function codeForm(max: number): Form {
  const any = digits.flat();
  return [any, ...Array.from({ length: String(max).length - 1 }, () => [...any, ''])];
}

/** Reads a code: nothing but digits, one after the other, and a number of the slot. */
export function codeReader({ min, max }: NumberSlot) {
  return {
    read(phrase: string): readonly number[] {
      const read = normalizeWording(phrase)
        .split(' ')
        .map(word => digits.findIndex(token => token.includes(word)));
      if (read.includes(-1) || read.length > String(max).length) return [];
      const value = Number(read.join(''));
      return value >= min && value <= max ? [value] : [];
    },
  };
}
