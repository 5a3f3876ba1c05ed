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

/**
 * One digit, two, and so on to as many as the largest code has. Each is a form of its own: in one form of which digits
 * may be left out, a row could leave out any of them, and nobody could tell how many may still follow.
 */
export function codeForms({ max, language }: NumberSlot): readonly Form[] {
  const any = voiceLanguage(language).numbers.digits.flat();
  return Array.from({ length: String(max).length }, (_, more) => Array.from({ length: more + 1 }, () => any));
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
