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
import { questions } from '../../interview/questions.ts';
import { askedUnit, showValue } from '../../interview/typed.ts';
import type { UnitChoice } from '../../interview/units.ts';
import { originText, questionWords } from '../../interview/words.ts';
import { fieldAt } from '../../profile/fields.ts';
import { fieldName } from './field-name.ts';
import type { TalkIo } from './io.ts';

export const HELP = [
  'Enter takes what is put forward. Behind a value you may say where it comes from: "15 qt p 12", "150 measured".',
  'The source alone confirms what is put forward: "p 12", "plate", "manual", "measured".',
  '?  more about this one      -  nobody knows: taken as put forward, and marked assumed',
  '<  back to the one before   list  all answers so far     quit  leave; nothing is lost',
];

const wordsOf = (question: Question) => questionWords(question, fieldName);

/** How a question is put: what, why in one line, what may be chosen, and what is put forward. */
export function questionLines(
  question: Question,
  proposal: Answer | undefined,
  units: UnitChoice,
  { done, all }: { readonly done: number; readonly all: number },
): string[] {
  const { ask, why, where } = wordsOf(question);
  const unit = askedUnit(question, units);
  const options =
    question.kind === 'choice'
      ? Object.values(question.choices).map((label, index) => `    ${index + 1}  ${label}`)
      : [];
  return [
    '',
    `${done + 1}/${all}  ${ask}${unit === '' ? '' : `, in ${unit}`}`,
    `    Why: ${why}. Where: ${where}.`,
    ...options,
    ...(proposal
      ? [`    Enter: ${showValue(proposal.value, question, units)}, ${originText(proposal.origin)}`]
      : []),
  ];
}

/** The question for the ear: what, what may be chosen, and what "correct" takes. */
function spokenText(question: Question, proposal: Answer | undefined, units: UnitChoice): string {
  const unit = askedUnit(question, units);
  const choices =
    question.kind === 'choice'
      ? Object.values(question.choices).map((label, index) => `${index + 1}: ${label}`)
      : [];
  const put = proposal ? `As put forward: ${showValue(proposal.value, question, units)}` : '';
  return [`${wordsOf(question).ask}${unit === '' ? '' : `, in ${unit}`}`, ...choices, put]
    .filter(part => part !== '')
    .join('. ');
}

/** All answers so far, a line each. */
export function answerLines(answers: Answers): string[] {
  const units = unitsOf(answers);
  return questions.flatMap(question => {
    const answer = answers[question.id];
    return answer
      ? [
          `  ${wordsOf(question).ask}: ${showValue(answer.value, question, units)}  [${originText(answer.origin)}]`,
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
  /** Called after each answer. */
  readonly keep: (answers: Answers) => Promise<void>;
}

/** Asks until all is answered, or it is left; what is wrong is said in a sentence, and asked again. */
export async function askAll(io: TalkIo, begun: Answers, { everything, keep }: AskOptions): Promise<Asked> {
  let answers = begun;
  const asked: QuestionId[] = [];
  for (let next = nextQuestion(answers, everything); next; next = nextQuestion(answers, everything)) {
    const { question, fault } = next;
    const units = unitsOf(answers);
    for (const line of questionLines(question, next.proposal, units, progressOf(answers, everything)))
      io.print(line);
    if (fault !== null) io.print(`    ${fault}`);
    io.about?.(question, next.proposal, units, spokenText(question, next.proposal, units));
    const answer = await askOne(io, question, next.proposal, answers);
    if (answer === 'quit') return { answers, finished: false };
    if (answer === 'back') {
      const last = asked.pop();
      if (last === undefined) io.print('    There is none before this one.');
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
): Promise<Answer | 'back' | 'quit'> {
  for (;;) {
    const line = await io.ask('  > ');
    const typed = line?.trim();
    if (typed === undefined || /^(quit|exit)$/i.test(typed)) return 'quit';
    if (typed === '<') return 'back';
    if (typed === 'list') {
      for (const each of answerLines(answers)) io.print(each);
      continue;
    }
    if (typed === '?') {
      for (const each of helpLines(question)) io.print(each);
      continue;
    }
    if (typed === '' || typed === '-') {
      const nobodyKnows = typed === '-' && proposal ? asAssumed(proposal) : proposal;
      if (nobodyKnows) return nobodyKnows;
      io.print('    Nothing can be put forward here; it has to be answered.');
      continue;
    }
    const read = answerTyped(typed, question, answers, proposal);
    if (read.ok) return { value: read.value, origin: read.origin };
    io.print(`    ${read.sentence}`);
    io.refused?.(read.sentence);
  }
}

const asAssumed = ({ value, origin }: Answer): Answer => ({
  value,
  origin: { from: 'assumed', ...(origin.rule === undefined ? {} : { rule: origin.rule }) },
});

const helpLines = (question: Question) => [
  ...question.fields.flatMap(field => {
    const known = fieldAt(field);
    return known ? [`    ${field}: ${fieldName(field)}. ${known.why}.`, `    Found: ${known.where}.`] : [];
  }),
  ...HELP.map(line => `    ${line}`),
];
