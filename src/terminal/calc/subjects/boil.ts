import { boilPoint } from '../../../engineering/coolant.ts';
import { amount, answer, subject } from '../subject.ts';
import { GLYCOL_OPTION, glycolOf } from './glycol-option.ts';

export const boil = subject({
  name: 'boil',
  summary: 'boiling point of a coolant under its cap at a height above the sea',
  numbers: {
    glycolShare: {
      flag: 'share',
      quantity: 'number',
      help: 'share of glycol by volume, 0 for water',
      otherwise: 0,
    },
    capPressureKpa: {
      flag: 'cap',
      quantity: 'pressure',
      help: 'gauge pressure of the cap, 0 with the cap off',
    },
    altitudeM: { flag: 'altitude', quantity: 'height', help: 'height above the sea', otherwise: 0 },
  },
  words: { glycol: GLYCOL_OPTION },
  answer: ({ number, words }) =>
    answer(
      boilPoint(glycolOf(words('glycol')), {
        glycolShare: number('glycolShare'),
        capPressureKpa: number('capPressureKpa'),
        altitudeM: number('altitudeM'),
      }),
      value => [amount('boils at', value, 'temperature')],
    ),
});
