import { fieldAt } from '../profile/fields.ts';
import type { Origin } from '../profile/provenance.ts';
import type { Question } from './question.ts';

/** Where a value comes from, in words. */
export function originText({ from, page, rule, acceptedBy }: Origin): string {
  const of = page !== undefined ? ` page ${page}` : '';
  const by = rule === undefined ? '' : ` (${rule})`;
  const accepted = acceptedBy === undefined ? '' : `, accepted by ${acceptedBy}`;
  return `${from}${of}${by}${accepted}`;
}

export interface QuestionWords {
  readonly ask: string;
  /** In a few words each. */
  readonly why: string;
  readonly where: string;
}

/** How a question is put; the interview is held in English. @param nameOf what a value of the profile is called */
export function questionWords(question: Question, nameOf: (field: string) => string): QuestionWords {
  const [field] = question.fields;
  const known = field === undefined ? undefined : fieldAt(field);
  return {
    ask: question.ask === '' ? nameOf(field ?? question.id) : question.ask,
    why: question.why ?? known?.why ?? '',
    where: question.where ?? known?.where ?? '',
  };
}
