import { bySentence } from '../../prompts/by-sentence.ts';
import type { Language } from '../../prompts/types.ts';
import { fieldAt, isValueField } from '../profile/fields.ts';
import type { Origin } from '../profile/provenance.ts';
import type { Answer } from './interview.ts';
import type { Question } from './question.ts';
import { showValue } from './typed.ts';
import type { UnitChoice } from './units.ts';

/** Where a value comes from, in words. */
export function originText({ from, page, rule, acceptedBy }: Origin, language: Language): string {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const of = page !== undefined ? ` ${tell(`page ${page}`)}` : '';
  const by = rule === undefined ? '' : ` (${tell(rule)})`;
  const accepted = acceptedBy === undefined ? '' : `, ${tell(`accepted by ${acceptedBy}`)}`;
  return `${tell(from)}${of}${by}${accepted}`;
}

/** An answer as it was understood, with where it comes from. */
export const understood = (
  { value, origin }: Answer,
  question: Question,
  units: UnitChoice,
  language: Language,
): string => `${showValue(value, question, units, language)}  [${originText(origin, language)}]`;

export interface QuestionWords {
  readonly ask: string;
  /** In a few words each. */
  readonly why: string;
  readonly where: string;
  /** What may be chosen, in its order; none where nothing is. */
  readonly choices: readonly (readonly [id: string, shown: string])[];
}

/** What a value of the profile is called; its path where nothing is known of it. */
export const valueName = (path: string, { values }: Language): string =>
  isValueField(path) ? values[path] : path;

const asHeading = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

/** How a question is put, in this language. */
export function questionWords(question: Question, language: Language): QuestionWords {
  const [field] = question.fields;
  const known = field === undefined ? undefined : fieldAt(field);
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  return {
    ask: question.ask === '' ? asHeading(valueName(field ?? question.id, language)) : tell(question.ask),
    why: tell(question.why ?? known?.why ?? ''),
    where: tell(question.where ?? known?.where ?? ''),
    choices:
      question.kind === 'choice'
        ? Object.entries(question.choices).map(([id, shown]) => [id, tell(shown)] as const)
        : [],
  };
}
