import type { LanguageCode } from '../../../prompts/types.ts';
import { en, type ReportWords } from './en.ts';
import { es } from './es.ts';
import { fr } from './fr.ts';

export type { Counted, ReportWords } from './en.ts';

/** The frame of a report in every language that a session may be held in. */
export const reportWords: Readonly<Record<LanguageCode, ReportWords>> = { en, fr, es };
