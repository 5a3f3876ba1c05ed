import { emergencyReplies } from '../../machines/emergency.ts';
import type { Emergency } from '../../machines/vocabulary.ts';
import type { Language } from '../../prompts/types.ts';
import { emergencies } from '../record/vocabulary/names.ts';
import type { Grammar } from '../voice/ports.ts';
import { containsWording, normalizeWording } from '../voice/wording.ts';

/** Words of so many letters ("is", "or", "ou") tell nothing of what is meant, but all of them together. */
const SHORT = 3;

const wordsIn = (text: string): readonly string[] => normalizeWording(text).split(/[ ']/);

/**
 * Whether a text holds the words of a wording, or others that begin with them: "fired" sounds as "fire" does. A wording of
 * short words alone has to stand in it as it is.
 */
function soundsIn(wording: string, text: string): boolean {
  const telling = wordsIn(wording).filter(({ length }) => length > SHORT);
  if (telling.length === 0) return containsWording(normalizeWording(text), normalizeWording(wording));
  const words = wordsIn(text);
  return telling.every(word => words.some(other => other.startsWith(word)));
}

const wordingsOf = (cause: Emergency, { replies }: Language): readonly string[] =>
  replies[emergencyReplies[cause]];

/** Whether somebody who hears this sentence hears a call for help in it: the tool must not take its own for one. */
export const callsIn = (cause: Emergency, sentence: string, language: Language): boolean =>
  wordingsOf(cause, language).some(wording => soundsIn(wording, sentence));

/**
 * What is taken as a stop and a call for help while this may be said. A wording that sounds in another reply ("fire" in
 * "fired", "smoke" in "sound and smoke good") is none as long as that may be said: "stop" is, and then its cause is asked for.
 */
export const callsFor = (replies: Grammar['replies'], language: Language): NonNullable<Grammar['calls']> =>
  emergencies.map(cause => ({
    id: cause,
    wordings: wordingsOf(cause, language).filter(
      wording =>
        !replies.some(
          ({ id, wordings }) =>
            id !== emergencyReplies[cause] && wordings.some(other => soundsIn(wording, other)),
        ),
    ),
  }));
