import { englishNumbers } from '../number-words/english.ts';
import type { VoiceLanguage } from './language.ts';
import { pronounceEnglish } from './pronunciations/english.ts';

export const english: VoiceLanguage = {
  code: 'en',
  tag: 'en-US',
  englishName: 'English',
  voice: 'embedded',
  numbers: englishNumbers,
  hearing: {
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
    // One word in two spellings, written short, British and American, or in singular and plural: at the keys either will do.
    fueling: 'fuelling',
    ok: 'okay',
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
