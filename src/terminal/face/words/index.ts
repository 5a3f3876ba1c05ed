import type { LanguageCode } from '../../../../prompts/types.ts';
import { en, type FaceWords } from './en.ts';
import { es } from './es.ts';
import { fr } from './fr.ts';

export type { FaceWords } from './en.ts';

/** The words of the face in every language that a session may be held in. */
export const faceWords: Readonly<Record<LanguageCode, FaceWords>> = { en, fr, es };
