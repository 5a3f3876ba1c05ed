import { bySentence } from '../../../prompts/by-sentence.ts';
import { languages, usualLanguage } from '../../../prompts/index.ts';
import type { Language, LanguageCode } from '../../../prompts/types.ts';
import { english, type Words } from './en.ts';
import { spanish } from './es.ts';
import { french } from './fr.ts';
import { inOtherWords } from './refusals.ts';

export type { Words } from './en.ts';

/** The page's words in every language that a session may be held in. */
export const pageWords: Readonly<Record<LanguageCode, Words>> = { en: english, fr: french, es: spanish };

/** Each language by its own name, for whoever does not read another. */
export const languageNames: Readonly<Record<LanguageCode, string>> = {
  en: 'English',
  fr: 'Français',
  es: 'Español',
};

/** The words of the language that this page is set to. Read where they are shown, never kept: the setting may change. */
export let words: Words = english;

let spoken: LanguageCode = usualLanguage;

/** From now on the page speaks this language. */
export function speakIn(code: LanguageCode): void {
  words = pageWords[code];
  spoken = code;
}

/** In the quotation marks of the language of this page. */
export const quoted = (text: string): string => languages[spoken].words.quoted.replace('{text}', () => text);

/**
 * What the laptop or a part of this page refused or reported, or what is wrong with a file, in the language of this
 * page: a sentence a line.
 */
export const inOwnWords = (sentence: string): string =>
  sentence
    .split('\n')
    .map(line => {
      const told = inOtherWords(line, spoken);
      return told === line ? bySentence(line, languages[spoken].bySentence) : told;
    })
    .join(' ');

/** The language of this page: what is asked of a new engine, and what its values are called. */
export const ownLanguage = (): Language => languages[spoken];
