import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import {
  type Answer,
  type Answers,
  answerTyped,
  nextQuestion,
  progressOf,
  unitsOf,
  withAnswer,
  withoutAnswer,
} from '../../interview/interview.ts';
import type { Question, QuestionId } from '../../interview/question.ts';
import { questions } from '../../interview/questions/index.ts';
import { askedUnit, isWordFor, showValue } from '../../interview/typed.ts';
import type { UnitChoice } from '../../interview/units.ts';
import { originText, questionWords, valueName } from '../../interview/words.ts';
import { fieldAt } from '../../profile/fields.ts';
import type { TalkIo } from './io.ts';

export const HELP = [
  'Enter takes what is put forward. Behind a value you may say where it comes from: "15 qt p 12", "150 measured".',
  'The source alone confirms what is put forward: "p 12", "plate", "manual", "measured".',
  '?  more about this one      -  nobody knows: taken as put forward, and marked assumed',
  '<  back to the one before   list  all answers so far     quit  leave; nothing is lost',
];

/** How a question is put: what, why in one line, what may be chosen, and what is put forward. */
export function questionLines(
  question: Question,
  proposal: Answer | undefined,
  units: UnitChoice,
  { done, all }: { readonly done: number; readonly all: number },
  language: Language,
): string[] {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const { ask, why, where, choices } = questionWords(question, language);
  const unit = askedUnit(question, units);
  const put = proposal
    ? `${showValue(proposal.value, question, units, language)}, ${originText(proposal.origin, language)}`
    : null;
  return [
    '',
    `${done + 1}/${all}  ${ask}${unit === '' ? '' : `, ${tell(`in ${unit}`)}`}`,
    // What is said in the language already is put in as it is.
    `    ${tell(`Why: ${why}. Where: ${where}.`)}`,
    ...choices.map(([, label], index) => `    ${index + 1}  ${label}`),
    ...(put === null ? [] : [`    ${tell(`Enter: ${put}`)}`]),
  ];
}

/** The question for the ear: what, what may be chosen, and what "correct" takes. */
function spokenText(
  question: Question,
  proposal: Answer | undefined,
  units: UnitChoice,
  language: Language,
): string {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  const { ask, choices } = questionWords(question, language);
  const unit = askedUnit(question, units);
  const put = proposal ? tell(`As put forward: ${showValue(proposal.value, question, units, language)}`) : '';
  return [
    `${ask}${unit === '' ? '' : `, ${tell(`in ${unit}`)}`}`,
    ...choices.map(([, label], index) => `${index + 1}: ${label}`),
    put,
  ]
    .filter(part => part !== '')
    .join('. ');
}

/** All answers so far, a line each. */
export function answerLines(answers: Answers, language: Language): string[] {
  const units = unitsOf(answers);
  return questions.flatMap(question => {
    const answer = answers[question.id];
    return answer
      ? [
          `  ${questionWords(question, language).ask}: ${showValue(answer.value, question, units, language)}  [${originText(answer.origin, language)}]`,
        ]
      : [];
  });
}

export interface Asked {
  readonly answers: Answers;
  readonly finished: boolean;
}

interface AskOptions {
  /** Also the figures that hardly anybody looks up. */
  readonly everything: boolean;
  readonly language: Language;
  /** Called after each answer. */
  readonly keep: (answers: Answers) => Promise<void>;
}

/** Asks until all is answered, or it is left; what is wrong is said in a sentence, and asked again. */
export async function askAll(
  io: TalkIo,
  begun: Answers,
  { everything, language, keep }: AskOptions,
): Promise<Asked> {
  const next = () => nextQuestion(answers, everything, language);
  let answers = begun;
  const asked: QuestionId[] = [];
  for (let at = next(); at; at = next()) {
    const { question, fault, proposal } = at;
    const units = unitsOf(answers);
    for (const line of questionLines(question, proposal, units, progressOf(answers, everything), language))
      io.print(line);
    if (fault !== null) io.print(`    ${fault}`);
    io.about?.(question, proposal, units, spokenText(question, proposal, units, language));
    const answer = await askOne(io, question, proposal, answers, language);
    if (answer === 'quit') return { answers, finished: false };
    if (answer === 'back') {
      const last = asked.pop();
      if (last === undefined)
        io.print(`    ${bySentence('There is none before this one.', language.bySentence)}`);
      else answers = withoutAnswer(answers, last);
    } else {
      answers = withAnswer(answers, question.id, answer);
      asked.push(question.id);
    }
    await keep(answers);
  }
  io.over?.();
  return { answers, finished: true };
}

async function askOne(
  io: TalkIo,
  question: Question,
  proposal: Answer | undefined,
  answers: Answers,
  language: Language,
): Promise<Answer | 'back' | 'quit'> {
  for (;;) {
    const line = await io.ask('  > ');
    const typed = line?.trim();
    if (typed === undefined || isWordFor('quit', typed)) return 'quit';
    if (typed === '<') return 'back';
    if (isWordFor('list', typed)) {
      for (const each of answerLines(answers, language)) io.print(each);
      continue;
    }
    if (typed === '?') {
      for (const each of helpLines(question, language)) io.print(each);
      continue;
    }
    if (typed === '' || typed === '-') {
      const nobodyKnows = typed === '-' && proposal ? asAssumed(proposal) : proposal;
      if (nobodyKnows) return nobodyKnows;
      io.print(
        `    ${bySentence('Nothing can be put forward here; it has to be answered.', language.bySentence)}`,
      );
      continue;
    }
    const read = answerTyped(typed, question, answers, proposal, language);
    if (read.ok) return { value: read.value, origin: read.origin };
    io.print(`    ${read.sentence}`);
    io.refused?.(read.sentence);
  }
}

const asAssumed = ({ value, origin }: Answer): Answer => ({
  value,
  origin: { from: 'assumed', ...(origin.rule === undefined ? {} : { rule: origin.rule }) },
});

function helpLines(question: Question, language: Language): string[] {
  const tell = (sentence: string) => bySentence(sentence, language.bySentence);
  return [
    ...question.fields.flatMap(field => {
      const known = fieldAt(field);
      return known
        ? [
            `    ${field}: ${valueName(field, language)}. ${tell(known.why)}.`,
            `    ${tell(`Found: ${known.where}.`)}`,
          ]
        : [];
    }),
    ...HELP.map(line => `    ${tell(line)}`),
  ];
}
