import type { Language } from '../../../prompts/types.ts';
import { emergencies } from '../../record/vocabulary/names.ts';
import type { CallForHelp } from './face.ts';

/** What calls for help, in the wordings of a language. */
export const emergenciesIn = ({ causes }: Pick<Language, 'causes'>): readonly CallForHelp[] =>
  emergencies.map(emergency => ({ emergency, wording: causes[emergency] }));
