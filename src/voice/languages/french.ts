import { frenchNumbers } from '../number-words/french.ts';
import { frenchPronunciations } from './french-pronunciations.ts';
import type { VoiceLanguage } from './language.ts';

export const french: VoiceLanguage = {
  code: 'fr',
  numbers: frenchNumbers,
  hearing: {
    model: 'fr-fr',
    // The dictionary begins with names in accents and ends with "ôtées"; it has no noises.
    wordsOfDictionary: ['abaisse', 'zéro'],
    pronunciations: frenchPronunciations,
    soundingLikeStop: [],
  },
  homophones: {},
};
