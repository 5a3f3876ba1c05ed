import { english } from './en/index.ts';
import { spanish } from './es/index.ts';
import { french } from './fr/index.ts';
import type { Language, LanguageCode } from './types.ts';

/** Every language that a session may be held in; nothing else lists them. */
export const languages: Readonly<Record<LanguageCode, Language>> = { en: english, fr: french, es: spanish };

/** English first: what is not said otherwise is in it. */
export const languageCodes = ['en', 'fr', 'es'] as const satisfies readonly LanguageCode[];

/** The language of whoever has named none that is known. */
export const [usualLanguage] = languageCodes;
