import { englishNumbers } from '../number-words/english.ts';
import type { VoiceLanguage } from './language.ts';
import { pronounceEnglish } from './pronunciations/english.ts';
import { englishPronunciations } from './pronunciations/english-additions.ts';

export const english: VoiceLanguage = {
  code: 'en',
  numbers: englishNumbers,
  hearing: {
    model: 'en-us',
    wordsOfDictionary: ['and', 'zero', '[SPEECH]'],
    pronunciations: englishPronunciations,
    pronounce: pronounceEnglish,
    soundingLikeStop: [
      'stuck',
      'step',
      'start',
      'stock',
      'shop',
      'spot',
      'stand',
      'status',
      'little',
      'bit',
      'kit',
      'hear',
      'noise',
    ],
  },
  homophones: {},
};
