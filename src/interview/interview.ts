import { z } from 'zod';
import { bySentence } from '../../prompts/by-sentence.ts';
import { languages, usualLanguage } from '../../prompts/index.ts';
import type { Language } from '../../prompts/types.ts';
import type { ValueField } from '../profile/fields.ts';
import { type Origin, originSchema, origins } from '../profile/provenance.ts';
import type { Draft, Proposal, Question, QuestionId, Value } from './question.ts';
import { textIn } from './question.ts';
import { questions } from './questions/index.ts';
import { readSource, readTyped, type Typed } from './typed.ts';
import { type UnitChoice, unitChoices } from './units.ts';

export interface Answer {
  readonly value: Value;
  readonly origin: Origin;
}

/** What was answered so far, in the order in which it was. */
export type Answers = Readonly<Partial<Record<QuestionId, Answer>>>;

export const draftOf = (answers: Answers): Draft =>
  Object.fromEntries(Object.entries(answers).map(([id, { value }]) => [id, value]));

export const unitsOf = (answers: Answers): UnitChoice =>
  unitChoices.find(choice => choice === textIn(draftOf(answers), 'units')) ?? 'metric';

const applies = (question: Question, draft: Draft) => question.when?.(draft) ?? true;

/** The weaker of two origins: what hangs on an assumption is assumed. */
const weaker = (one: Origin, other: Origin): Origin =>
  origins.indexOf(other.from) > origins.indexOf(one.from) ? other : one;

const usual: Language = languages[usualLanguage];

/** What is put forward; where it names things, by their names in this language. */
function named({ kind }: Question, value: Value, language: Language): Value {
  const tell = (name: string) => bySentence(name, language.bySentence);
  if (kind === 'words' && typeof value === 'string') return tell(value);
  if (kind !== 'names' || !Array.isArray(value)) return value;
  return value.map(each => tell(String(each)));
}

/** A proposal as an answer, as certain as what it was worked out from. */
function proposed(proposal: Proposal, known: Answers): Answer {
  const own: Origin = { from: proposal.from, rule: proposal.rule };
  const uses = (proposal.uses ?? []).flatMap(id => known[id]?.origin ?? []);
  return uses.some(({ from }) => from === 'assumed')
    ? { value: proposal.value, origin: { ...own, from: 'assumed' } }
    : { value: proposal.value, origin: own };
}

/** One question on the way through all of them, with what is known before it. */
interface Place {
  readonly question: Question;
  /** What was answered or is put forward before it; it grows as the walk goes on. */
  readonly draft: Draft;
  readonly given: Answer | undefined;
  /** What is wrong with the answer beside those before it. */
  readonly fault: string | null;
  /** Undefined too where it would contradict what is before it. */
  readonly proposal: Answer | undefined;
}

/** Goes through the questions that apply, in their order, each with what was answered or is put forward before it. */
function* walk(answers: Answers, language = usual): Generator<Place, Answers> {
  const known: Partial<Record<QuestionId, Answer>> = {};
  const draft: Partial<Record<QuestionId, Value>> = {};
  for (const question of questions) {
    if (!applies(question, draft)) continue;
    const given = answers[question.id];
    const put = question.propose?.(draft);
    const fits = put && (question.check?.(put.value, draft) ?? null) === null;
    const proposal = fits
      ? proposed({ ...put, value: named(question, put.value, language) }, known)
      : undefined;
    const fault = given ? (question.check?.(given.value, draft) ?? null) : null;
    yield { question, draft, given, fault, proposal };
    const answer = given ?? proposal;
    if (!answer) continue;
    known[question.id] = answer;
    draft[question.id] = answer.value;
  }
  return known;
}

/** What is known before a question; everything where it does not apply. */
function draftBefore(question: Question, answers: Answers): Draft {
  for (const place of walk(answers)) if (place.question === question) return { ...place.draft };
  return draftOf(fillIn(answers).answers);
}

/** Everything that applies: what was answered, and for the rest what is proposed. */
export interface Filled {
  readonly answers: Answers;
  /** Questions that apply and have neither a good answer nor a proposal, with what is wrong. */
  readonly open: readonly { readonly question: Question; readonly fault: string | null }[];
}

export function fillIn(answers: Answers): Filled {
  const open: { readonly question: Question; readonly fault: string | null }[] = [];
  const places = walk(answers);
  for (let step = places.next(); ; step = places.next()) {
    if (step.done) return { answers: step.value, open };
    const { question, given, fault, proposal } = step.value;
    if (fault !== null || (!given && !proposal)) open.push({ question, fault });
  }
}

export interface Next {
  readonly question: Question;
  /** What is put forward: the Enter key takes it. */
  readonly proposal: Answer | undefined;
  /** Why it is asked again. */
  readonly fault: string | null;
}

/**
 * What to ask next: what contradicts what is known before it, or was not asked yet; null when all is answered. The
 * figures that hardly anybody looks up are asked only with `everything`. @param language of names that are put
 * forward, and of what is wrong
 */
export function nextQuestion(answers: Answers, everything = false, language = usual): Next | null {
  for (const { question, given, fault, proposal } of walk(answers, language)) {
    const asked = everything || question.tier !== 'rest';
    if (fault !== null || (!given && (asked || !proposal)))
      return { question, proposal, fault: fault && bySentence(fault, language.bySentence) };
  }
  return null;
}

/** The questions that are asked with these answers, in their order: the first is number one. */
export const askedQuestions = (answers: Answers, everything = false): readonly Question[] =>
  [...walk(answers)].flatMap(({ question }) => (everything || question.tier !== 'rest' ? [question] : []));

/** How many questions are asked in all, and how many of them are answered. */
export function progressOf(
  answers: Answers,
  everything = false,
): { readonly done: number; readonly all: number } {
  const asked = askedQuestions(answers, everything);
  return { done: asked.filter(({ id }) => answers[id] !== undefined).length, all: asked.length };
}

/**
 * An answer as it was typed, held against its range and against the answers before it. Where something is put forward,
 * a source alone confirms it: "p 12" says that page 12 has the same. @param language of what is wrong
 */
export function answerTyped(
  typed: string,
  question: Question,
  answers: Answers,
  proposal?: Answer,
  language = usual,
): Typed {
  const no = (sentence: string) =>
    ({ ok: false, sentence: bySentence(sentence, language.bySentence) }) as const;
  const origin = proposal && readSource(typed);
  if (proposal && origin) return { ok: true, value: proposal.value, origin };
  const read = readTyped(typed, question, unitsOf(answers));
  if (!read.ok) return no(read.sentence);
  const fault = question.check?.(read.value, draftBefore(question, answers)) ?? null;
  return fault === null ? read : no(fault);
}

/** With one more answer; what it makes needless is left out. */
export function withAnswer(answers: Answers, id: QuestionId, answer: Answer): Answers {
  const next: Answers = { ...answers, [id]: answer };
  const needed = new Set<string>([...walk(next)].map(({ question }) => question.id));
  return Object.fromEntries(Object.entries(next).filter(([key]) => needed.has(key)));
}

export function withoutAnswer(answers: Answers, id: QuestionId): Answers {
  return Object.fromEntries(Object.entries(answers).filter(([key]) => key !== id));
}

/** The weakest origin of what settles a value of the profile. */
export function originOfField(field: ValueField, answers: Answers): Origin | undefined {
  const found = questions.flatMap(({ id, fields }) => {
    const answer = answers[id];
    return answer && fields.includes(field) ? [answer.origin] : [];
  });
  const [first, ...rest] = found;
  return first && rest.reduce(weaker, first);
}

const valueSchema = z.union([
  z.number(),
  z.string(),
  z.boolean(),
  z.null(),
  z.tuple([z.number(), z.number()]),
  z.array(z.string()),
  z.array(
    z.strictObject({
      grade: z.string(),
      viscosity40Mm2S: z.number(),
      viscosity100Mm2S: z.number(),
      nightsFromC: z.number().optional(),
      nightsToC: z.number().optional(),
    }),
  ),
]);

const ids = questions.map(({ id }) => id);

/** An interview that was left, as it is kept: what was answered, and nothing else. */
export const keptSchema = z.strictObject({
  schema: z.literal('first-fire-interview/1'),
  answers: z.partialRecord(z.enum(ids), z.strictObject({ value: valueSchema, origin: originSchema })),
});
