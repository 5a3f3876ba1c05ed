import * as together from './groups.ts';
import { farthest } from './in-noise.ts';
import * as general from './lines.ts';
import * as said from './replies.ts';
import { steps } from './steps.ts';
import { typedWords } from './typed.ts';
import { valueGroups, values } from './values.ts';

/** English: the language that the others are held against. */
export const english = {
  code: 'en',
  usualUnits: 'us',
  ...general,
  ...said,
  ...together,
  farthest,
  steps,
  values,
  valueGroups,
  typedWords,
  bySentence: {},
} as const;
