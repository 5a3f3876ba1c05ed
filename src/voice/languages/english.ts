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
  homophones: {
    // One word in two spellings, British and American, or in singular and plural: at the keys either will do.
    fueling: 'fuelling',
    litres: 'liters',
    litre: 'liter',
    metre: 'meters',
    metres: 'meters',
    meter: 'meters',
    volt: 'volts',
    foot: 'feet',
    degree: 'degrees',
    pound: 'pounds',
  },
};
