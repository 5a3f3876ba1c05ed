import { english } from './en/index.ts';
import { french } from './fr/index.ts';
import type { Language, LanguageCode } from './types.ts';

/** Every language that a session may be held in. */
export const languages: Readonly<Record<LanguageCode, Language>> = { en: english, fr: french };

export const languageCodes: readonly LanguageCode[] = ['en', 'fr'];
