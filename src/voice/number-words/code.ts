import { voiceLanguage } from '../languages/index.ts';
import { comparable } from '../languages/spelling.ts';
import type { NumberSlot } from '../ports.ts';
import { largestWholeNumber } from './forms.ts';
import type { Form } from './vocabulary.ts';

/** Numbers too many to be listed, such as fault codes: whole, from nought, and only said digit by digit. */
export const isCode = ({ min, max, step, digitsOnly }: NumberSlot): boolean =>
  digitsOnly === true &&
  step === 1 &&
  Number.isInteger(min) &&
  min >= 0 &&
  Number.isInteger(max) &&
  max > largestWholeNumber;

/** As many digits as the largest code has, all but the first of which may be missing. */
export function codeForm({ max, language }: NumberSlot): Form {
  const any = voiceLanguage(language).numbers.digits.flat();
  return [any, ...Array.from({ length: String(max).length - 1 }, () => [...any, ''])];
}

/** Reads a code: nothing but digits, one after the other, and a number of the slot. */
export function codeReader({ min, max, language }: NumberSlot) {
  const words = voiceLanguage(language);
  const digits = words.numbers.digits.map(token => token.map(text => comparable(text, words)));
  return {
    read(phrase: string): readonly number[] {
      const read = comparable(phrase, words)
        .split(' ')
        .map(word => digits.findIndex(token => token.includes(word)));
      if (read.includes(-1) || read.length > String(max).length) return [];
      const value = Number(read.join(''));
      return value >= min && value <= max ? [value] : [];
    },
  };
}
