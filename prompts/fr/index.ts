import type { Language } from '../types.ts';
import { files } from './files.ts';
import * as together from './groups.ts';
import { farthest } from './in-noise.ts';
import { interview } from './interview.ts';
import * as general from './lines.ts';
import * as said from './replies.ts';
import { steps } from './steps.ts';
import { typedWords } from './typed.ts';
import { valueGroups, values } from './values.ts';

/**
 * French. Hazards carry the signal words of the French editions of ANSI Z535.4 and ISO 3864-2: danger,
 * avertissement, attention, avis (from memory).
 */
export const french: Language = {
  code: 'fr',
  usualUnits: 'metric',
  ...general,
  ...said,
  ...together,
  farthest,
  steps,
  values,
  valueGroups,
  typedWords,
  bySentence: { ...interview, ...files },
};
