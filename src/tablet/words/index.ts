import type { LanguageCode } from '../../../prompts/types.ts';
import { english, type Words } from './en.ts';
import { french } from './fr.ts';

export type { Words } from './en.ts';

const all: Readonly<Record<LanguageCode, Words>> = { en: english, fr: french };

/** Each language by its own name, for whoever does not read another. */
export const languageNames: Readonly<Record<LanguageCode, string>> = { en: 'English', fr: 'Français' };

/** The words of the language that this page is set to. Read where they are shown, never kept: the setting may change. */
export let words: Words = english;

/** From now on the page speaks this language. */
export function speakIn(code: LanguageCode): void {
  words = all[code];
}
