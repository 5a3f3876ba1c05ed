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
 * Spanish, for reading, touch and keys: there is no ear for it yet, so nothing here asks to be answered by voice, and
 * the emergency is drilled with the red button or Escape. Hazards carry the signal words of the Spanish editions of
 * ANSI Z535.4: peligro, advertencia, precaución, aviso (from memory). No mechanic whose language it is has read it.
 */
export const spanish: Language = {
  code: 'es',
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
