import type { HeardLanguage, SpokenLanguage } from '../ports.ts';
import { english } from './english.ts';
import { french } from './french.ts';
import type { LanguageHearing, VoiceLanguage } from './language.ts';
import { spanish } from './spanish.ts';

/** A language that an ear was taught. */
type Heard = VoiceLanguage & { readonly hearing: LanguageHearing };

const heard: Readonly<Record<HeardLanguage, Heard>> = {
  en: english as Heard,
  fr: french as Heard,
};
const languages: Readonly<Record<SpokenLanguage, VoiceLanguage>> = { ...heard, es: spanish };

/** All of them, for what is understood whatever the language. */
export const voiceLanguages: readonly VoiceLanguage[] = Object.values(languages);

/** What the voice chain needs to know of a language; English when none is named. */
export const voiceLanguage = (code: SpokenLanguage = 'en'): VoiceLanguage => languages[code];

/** Whether an ear was taught it. */
export const isHeard = (code: SpokenLanguage): code is HeardLanguage => languages[code].hearing !== undefined;

/** What an ear needs to know of a language that it was taught; of English when none is named. */
export const hearingOf = (code: HeardLanguage = 'en'): LanguageHearing => heard[code].hearing;
