import { judgeSweep } from '../../../engineering/oil-pressure-sweep.ts';
import { amount, answer, held, said, subject } from '../subject.ts';

const STATES = {
  rises: 'rises with the speed',
  held: 'held by the relief valve, as it should be',
  flat: 'DOES NOT FOLLOW THE SPEED',
  falls: 'FALLS AS THE SPEED RISES',
} as const;

export const sweep = subject({
  name: 'sweep',
  summary: 'whether the oil pressure follows the speed in a sweep',
  numbers: {
    reliefKpa: { flag: 'relief', quantity: 'pressure', help: 'pressure at which the relief valve opens' },
  },
  words: {},
  pairs: { quantities: ['speed', 'pressure'], help: 'lines of rpm,pressure' },
  answer: ({ number, pairs }) =>
    answer(
      judgeSweep(
        pairs.map(([speedRpm, pressureKpa]) => ({ speedRpm, pressureKpa })),
        number('reliefKpa'),
      ),
      ({ state, rank, slopeKpaPer1000Rpm, relieved }) => [
        said('oil pressure', STATES[state]),
        held('rank correlation', rank, 'number'),
        amount('rise per 1000 rpm', slopeKpaPer1000Rpm, 'pressure'),
        said('points left out at relief pressure', String(relieved)),
      ],
    ),
});
