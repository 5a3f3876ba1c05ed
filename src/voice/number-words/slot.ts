import { VoiceError } from '../errors.ts';
import { voiceLanguage } from '../languages/index.ts';
import { comparable } from '../languages/spelling.ts';
import type { NumberSlot } from '../ports.ts';
import { codeForms, codeReader, isCode } from './code.ts';
import { type Decimal, largestWholeNumber, phrasesOf, spokenForms } from './forms.ts';
import type { Form } from './vocabulary.ts';

const mostValues = 20_000;
const mostDecimals = 3;

/** Decimal places that a slot's values need: 0 for 0..3000 by 10, 1 for 8..16 by 0.1. */
export function decimalsOf({ min, step }: Pick<NumberSlot, 'min' | 'step'>): number {
  const fits = (n: number, d: number) => Math.abs(n * 10 ** d - Math.round(n * 10 ** d)) < 1e-6;
  for (let d = 0; d < mostDecimals; d++) if (fits(min, d) && fits(step, d)) return d;
  return mostDecimals;
}

/**
 * The values that may be said, smallest first, as exact decimals.
 * @throws VoiceError `grammarUnusable` on limits that are no numbers, are reversed, need more than
 * three decimals, or give more than 20 000 values or a whole part above 9999.
 */
export function valuesOf(slot: NumberSlot): readonly Decimal[] {
  const { id, min, max, step } = slot;
  const problem = (what: string) =>
    new VoiceError('grammarUnusable', `Number slot "${id}" (${min} to ${max} by ${step}) ${what}.`);
  if (![min, max, step].every(Number.isFinite) || step <= 0 || max < min) {
    throw problem('needs finite limits, min not above max, and a step above zero');
  }
  if (Math.max(Math.abs(min), Math.abs(max)) > largestWholeNumber) {
    throw problem(`goes beyond ${largestWholeNumber}, the largest number listened for`);
  }
  const decimals = decimalsOf(slot);
  const scale = 10 ** decimals;
  const first = Math.round(min * scale);
  const stride = Math.round(step * scale);
  if (stride === 0) throw problem(`has a step finer than ${mostDecimals} decimals`);
  const count = Math.floor((max * scale - first) / stride + 1e-6) + 1;
  if (count > mostValues) throw problem(`has ${count} values; widen the step to get ${mostValues} or fewer`);
  return Array.from({ length: count }, (_, i) => ({ scaled: first + i * stride, decimals }));
}

export const numberOf = ({ scaled, decimals }: Decimal): number => scaled / 10 ** decimals;

/** Every form of every value of the slot, for the recognizer's grammar. */
export function formsOf(slot: NumberSlot): readonly Form[] {
  if (isCode(slot)) return codeForms(slot);
  const { numbers } = voiceLanguage(slot.language);
  return valuesOf(slot).flatMap(value => spokenForms(value, slot.digitsOnly ?? false, numbers));
}

/** Reads spoken numbers of one slot. */
export interface NumberReader {
  /** The values that this phrase can mean: none, one, or (never to be acted on) several. */
  read(phrase: string): readonly number[];
}

/** Makes the reader of a slot; throws as `valuesOf` does. */
export function numberReader(slot: NumberSlot): NumberReader {
  if (isCode(slot)) return codeReader(slot);
  const meanings = new Map<string, readonly number[]>();
  const language = voiceLanguage(slot.language);
  for (const decimal of valuesOf(slot)) {
    const value = numberOf(decimal);
    for (const form of spokenForms(decimal, slot.digitsOnly ?? false, language.numbers)) {
      for (const said of phrasesOf(form)) {
        const phrase = comparable(said, language);
        const known = meanings.get(phrase) ?? [];
        if (!known.includes(value)) meanings.set(phrase, [...known, value]);
      }
    }
  }
  return { read: phrase => meanings.get(comparable(phrase, language)) ?? [] };
}
