import type { HeardLanguage } from '../ports.ts';

/**
 * The phones that the network of a language tells apart, in the order of its outputs: those of the CMU dictionary; those
 * that espeak-ng writes French with, less what few people tell apart. No two languages write one alike.
 */
export const phonesOf: Readonly<Record<HeardLanguage, readonly string[]>> = {
  en: 'AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH'.split(
    ' ',
  ),
  fr: 'i e ɛ a ɔ o u y ø œ ə ɛ̃ ɑ̃ ɔ̃ p b t d k ɡ f v s z ʃ ʒ m n ŋ l ʁ j w ɥ'.split(' '),
};

/** Output that stands for no phone: silence, noise, or more of the one before. */
export const blank = 0;

const outputs = new Map(
  Object.values(phonesOf).flatMap(phones => phones.map((phone, i): [string, number] => [phone, i + 1])),
);

/** Output of a phone in the network of its language; undefined when none knows it. */
export const outputOf = (phone: string): number | undefined => outputs.get(phone);
