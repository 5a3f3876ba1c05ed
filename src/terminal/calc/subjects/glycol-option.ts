import type { Glycol } from '../../../engineering/glycol.ts';
import type { WordsOption } from '../subject.ts';

export const GLYCOL_OPTION: WordsOption = {
  flag: 'glycol',
  help: 'kind of glycol',
  choices: ['ethylene', 'propylene'],
  otherwise: 'ethylene',
};

export const glycolOf = (words: string | undefined): Glycol =>
  words === 'propylene' ? 'propylene' : 'ethylene';
