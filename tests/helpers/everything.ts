import type { Language } from '../../prompts/types.ts';
import type { Grammar } from '../../src/voice/ports.ts';

/**
 * All that can be said in any state of a language at once: harder than any state is.
 * @param min the least number that may be said
 * @param max the greatest
 */
export const everythingIn = (language: Language, min: number, max: number): Grammar => ({
  key: 'everything',
  language: language.code,
  stop: language.stopWordings,
  replies: [...Object.entries(language.replies), ...Object.entries(language.controls)].map(
    ([id, wordings]) => ({ id, wordings }),
  ),
  number: {
    id: 'n',
    language: language.code,
    leads: Object.values(language.quantities).flatMap(({ leads }) => leads),
    units: Object.values(language.units).flatMap(({ said }) => said),
    min,
    max,
    step: 1,
  },
});
