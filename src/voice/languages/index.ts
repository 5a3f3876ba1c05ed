import type { SpokenLanguage } from '../ports.ts';
import { english } from './english.ts';
import { french } from './french.ts';
import type { VoiceLanguage } from './language.ts';

const languages: Readonly<Record<SpokenLanguage, VoiceLanguage>> = { en: english, fr: french };

/** What the voice chain needs to know of a language; English when none is named. */
export const voiceLanguage = (code: SpokenLanguage = 'en'): VoiceLanguage => languages[code];
