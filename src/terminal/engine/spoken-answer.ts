import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import type { NumberQuestion, Question } from '../../interview/question.ts';
import { showBare, type UnitChoice } from '../../interview/units.ts';
import { questionWords } from '../../interview/words.ts';
import type { Grammar, Heard, NumberSlot } from '../../voice/ports.ts';

/** How finely a number is listened for, in the unit of the manual: every value less is heard more surely. */
function stepOf({ measure }: NumberQuestion, units: UnitChoice): number {
  switch (measure) {
    case 'volume':
    case 'voltage':
      return 0.1;
    case 'displacement':
      return units === 'us' ? 1 : 0.1;
    case 'pressure':
      return units === 'metric' ? 0.1 : units === 'si' ? 10 : 1;
    case 'speed':
      return 10;
    default:
      return 1;
  }
}

const tenths = (value: number) => Number(value.toFixed(1));

/** Above it the ear knows no numbers. */
const MOST_SPOKEN = 9999;

/** Null where numbers are asked for that nobody says: by the keys. */
function slotOf(question: NumberQuestion, units: UnitChoice, { code }: Language): NumberSlot | null {
  const step = stepOf(question, units);
  const [min, max] = [question.min, question.max].map(si => Number(showBare(si, question.measure, units)));
  if (max === undefined || max > MOST_SPOKEN) return null;
  return {
    id: question.id,
    language: code,
    leads: [],
    units: [],
    min: tenths(Math.ceil((min ?? 0) / step - 1e-9) * step),
    max: tenths(Math.floor(max / step + 1e-9) * step),
    step,
  };
}

/** Said to everything: once more, and back to the question before. */
const always = ({ controls }: Language): Grammar['replies'] => [
  { id: 'again', wordings: controls.sayAgain },
  { id: 'back', wordings: controls.goBack },
];

/** What may be said to a question; null where only keys will do: names, grades, two numbers at once. */
export function grammarFor(
  question: Question,
  isPut: boolean,
  units: UnitChoice,
  language: Language,
): Grammar | null {
  const { replies, stopWordings } = language;
  const base = {
    key: `interview.${question.id}`,
    language: language.code,
    stop: stopWordings,
    ...(isPut ? { agreement: 'take' } : {}),
  };
  const taken = isPut ? [{ id: 'take', wordings: replies.yes.slice(0, 1) }] : [];
  switch (question.kind) {
    case 'number': {
      const number = slotOf(question, units, language);
      return number && { ...base, replies: [...taken, ...always(language)], number };
    }
    case 'choice': {
      const count = Object.keys(question.choices).length;
      const number = {
        id: question.id,
        language: language.code,
        leads: [],
        units: [],
        min: 1,
        max: count,
        step: 1,
      };
      return { ...base, replies: [...taken, ...always(language)], number };
    }
    case 'yesNo':
      return {
        ...base,
        replies: [
          // "Correct" takes what is put forward, here as everywhere.
          { id: 'yes', wordings: isPut ? replies.yes.slice(1) : replies.yes },
          { id: 'no', wordings: replies.no },
          ...taken,
          ...always(language),
        ],
      };
    case 'range':
    case 'words':
    case 'names':
    case 'grades':
      return null;
  }
}

/** What may be said to what was read back. */
export const readBackGrammar = (question: Question, { code, replies, stopWordings }: Language): Grammar => ({
  key: `interview.${question.id}.readBack`,
  language: code,
  stop: stopWordings,
  replies: [
    { id: 'yes', wordings: replies.yes },
    { id: 'no', wordings: replies.no },
  ],
  agreement: 'yes',
});

export type Spoken =
  /** As it would be typed, and how it is read back before it counts. */
  | { readonly kind: 'answer'; readonly typed: string; readonly shown: string }
  /** Counts at once: it can be gone back on, and takes nothing from anybody. */
  | { readonly kind: 'key'; readonly typed: string }
  | { readonly kind: 'again' }
  | { readonly kind: 'unclear' };

/** What was heard as an answer to this question. */
export function spokenAnswer(heard: Heard, question: Question, language: Language): Spoken {
  switch (heard.kind) {
    case 'stop':
      return { kind: 'key', typed: 'quit' };
    case 'unclear':
      return { kind: 'unclear' };
    case 'number': {
      const typed = String(heard.value);
      if (question.kind !== 'choice') return { kind: 'answer', typed, shown: typed };
      const entry = questionWords(question, language).choices[heard.value - 1];
      return entry ? { kind: 'answer', typed: entry[0], shown: entry[1] } : { kind: 'unclear' };
    }
    case 'reply':
      switch (heard.id) {
        case 'again':
          return { kind: 'again' };
        case 'back':
          return { kind: 'key', typed: '<' };
        case 'take':
          return { kind: 'key', typed: '' };
        case 'yes':
        case 'no':
          return { kind: 'answer', typed: heard.id, shown: bySentence(heard.id, language.bySentence) };
        default:
          return { kind: 'unclear' };
      }
  }
}
