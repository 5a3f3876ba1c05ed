import { english } from '../../../prompts/en/index.ts';
import type { NumberQuestion, Question } from '../../interview/question.ts';
import { showBare, type UnitChoice } from '../../interview/units.ts';
import type { Grammar, Heard, NumberSlot } from '../../voice/ports.ts';

/** How finely a number is listened for, in the unit of the manual: every value less is heard more surely. */
function stepOf({ measure }: NumberQuestion, units: UnitChoice): number {
  switch (measure) {
    case 'volume':
    case 'displacement':
    case 'voltage':
      return 0.1;
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
function slotOf(question: NumberQuestion, units: UnitChoice): NumberSlot | null {
  const step = stepOf(question, units);
  const [min, max] = [question.min, question.max].map(si => Number(showBare(si, question.measure, units)));
  if (max === undefined || max > MOST_SPOKEN) return null;
  return {
    id: question.id,
    leads: [],
    units: [],
    min: tenths(Math.ceil((min ?? 0) / step - 1e-9) * step),
    max: tenths(Math.floor(max / step + 1e-9) * step),
    step,
  };
}

const { replies, controls } = english;

/** Said to everything: once more, and back to the question before. */
const always: Grammar['replies'] = [
  { id: 'again', wordings: controls.sayAgain },
  { id: 'back', wordings: controls.goBack },
];

/** What may be said to a question; null where only keys will do: names, grades, two numbers at once. */
export function grammarFor(question: Question, isPut: boolean, units: UnitChoice): Grammar | null {
  const base = { key: `interview.${question.id}`, stop: english.stopWordings };
  const taken = isPut ? [{ id: 'take', wordings: replies.yes.slice(0, 1) }] : [];
  switch (question.kind) {
    case 'number': {
      const number = slotOf(question, units);
      return number && { ...base, replies: [...taken, ...always], number };
    }
    case 'choice': {
      const count = Object.keys(question.choices).length;
      const number = { id: question.id, leads: [], units: [], min: 1, max: count, step: 1 };
      return { ...base, replies: [...taken, ...always], number };
    }
    case 'yesNo':
      return {
        ...base,
        replies: [
          // "Correct" takes what is put forward, here as everywhere.
          { id: 'yes', wordings: isPut ? replies.yes.slice(1) : replies.yes },
          { id: 'no', wordings: replies.no },
          ...taken,
          ...always,
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
export const readBackGrammar = (question: Question): Grammar => ({
  key: `interview.${question.id}.readBack`,
  stop: english.stopWordings,
  replies: [
    { id: 'yes', wordings: replies.yes },
    { id: 'no', wordings: replies.no },
  ],
});

export type Spoken =
  /** As it would be typed, and how it is read back before it counts. */
  | { readonly kind: 'answer'; readonly typed: string; readonly shown: string }
  /** Counts at once: it can be gone back on, and takes nothing from anybody. */
  | { readonly kind: 'key'; readonly typed: string }
  | { readonly kind: 'again' }
  | { readonly kind: 'unclear' };

/** What was heard as an answer to this question. */
export function spokenAnswer(heard: Heard, question: Question): Spoken {
  switch (heard.kind) {
    case 'stop':
      return { kind: 'key', typed: 'quit' };
    case 'unclear':
      return { kind: 'unclear' };
    case 'number': {
      const typed = String(heard.value);
      if (question.kind !== 'choice') return { kind: 'answer', typed, shown: typed };
      const entry = Object.entries(question.choices)[heard.value - 1];
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
          return { kind: 'answer', typed: heard.id, shown: heard.id };
        default:
          return { kind: 'unclear' };
      }
  }
}
