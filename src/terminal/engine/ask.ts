import { bySentence } from '../../../prompts/by-sentence.ts';
import type { Language } from '../../../prompts/types.ts';
import {
  type Answer,
  type Answers,
  answerTyped,
  askedQuestions,
  nextQuestion,
  unitsOf,
  withAnswer,
  withoutAnswer,
} from '../../interview/interview.ts';
import type { Question, QuestionId } from '../../interview/question.ts';
import { askedUnit, isWordFor, showValue } from '../../interview/typed.ts';
import type { UnitChoice } from '../../interview/units.ts';
import { originText, questionWords, understood, valueName } from '../../interview/words.ts';
import { fieldAt } from '../../profile/fields.ts';
import type { TalkIo } from './io.ts';

export const HELP = [
  'Enter takes what is put forward. Behind a value you may say where it comes from: "15 qt p 12", "150 measured".',
  'The source alone confirms what is put forward: "p 12", "plate", "manual", "measured", "seen", "assumed".',
  '?  more about this one      -  nobody knows: taken as put forward, and marked assumed',
  '<  back to the one before   < 12  back to number 12     list  all answers so far     quit  leave; nothing is lost',
];

/** The number of a question in the list of answers, and how many there are. */
interface Place {
  readonly number: number;
  readonly all: number;
}

function placeOf({ id }: Question, answers: Answers, everything: boolean): Place {
  const asked = askedQuestions(answers, everything);
  return { number: asked.findIndex(each => each.id === id) + 1, all: asked.length };
}

/** How a question is put: what, why in one line, what may be chosen, and what is put forward. */
function questionLines(
  question: Question,
  proposal: Answer | undefined,
  units: UnitChoice,
  { number, all }: Place,
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
    `${number}/${all}  ${ask}${unit === '' ? '' : `, ${tell(`in ${unit}`)}`}`,
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

/** All answers so far, a line each, with the number that each is asked under. */
export function answerLines(answers: Answers, everything: boolean, language: Language): string[] {
  const units = unitsOf(answers);
  return askedQuestions(answers, everything).flatMap((question, index) => {
    const answer = answers[question.id];
    return answer
      ? [
          `  ${String(index + 1).padStart(2)}  ${questionWords(question, language).ask}: ${understood(answer, question, units, language)}`,
        ]
      : [];
  });
}

interface Asked {
  readonly answers: Answers;
  readonly finished: boolean;
}

interface AskOptions {
  /** Also the figures that hardly anybody looks up. */
  readonly everything: boolean;
  readonly language: Language;
  /** What was answered before and is put forward where it is asked again. */
  readonly takenBack?: Answers;
  /** Called after each answer. */
  readonly keep: (answers: Answers) => Promise<void>;
}

/** Asks until all is answered, or it is left; what is wrong is said in a sentence, and asked again. */
export async function askAll(
  io: TalkIo,
  begun: Answers,
  { everything, language, keep, takenBack = {} }: AskOptions,
): Promise<Asked> {
  const next = () => nextQuestion(answers, everything, language);
  const tell = (sentence: string) => io.print(`    ${bySentence(sentence, language.bySentence)}`);
  let answers = begun;
  const asked: QuestionId[] = [];
  /** What was taken back: it is put forward where it is asked again. */
  let before: Answers = takenBack;
  for (let at = next(); at; at = next()) {
    const { question, fault } = at;
    const proposal = before[question.id] ?? at.proposal;
    const units = unitsOf(answers);
    for (const line of questionLines(
      question,
      proposal,
      units,
      placeOf(question, answers, everything),
      language,
    ))
      io.print(line);
    if (fault !== null) io.print(`    ${fault}`);
    io.about?.(question, proposal, units, spokenText(question, proposal, units, language));
    const answer = await askOne(io, question, proposal, answers, { everything, language });
    if (answer === 'quit') return { answers, finished: false };
    if ('backTo' in answer) {
      const named =
        answer.backTo === null ? asked.pop() : askedQuestions(answers, everything)[answer.backTo - 1]?.id;
      const taken = named && answers[named];
      if (taken) {
        before = { ...before, [named]: taken };
        answers = withoutAnswer(answers, named);
      } else
        tell(
          answer.backTo === null
            ? 'There is none before this one.'
            : `There is no answer ${answer.backTo}; list shows them.`,
        );
    } else {
      answers = withAnswer(answers, question.id, answer);
      before = withoutAnswer(before, question.id);
      asked.push(question.id);
      io.print(`    = ${understood(answer, question, units, language)}`);
    }
    await keep(answers);
  }
  io.over?.();
  return { answers, finished: true };
}

/** Back to the answer of this number; null for the one before. */
interface Back {
  readonly backTo: number | null;
}

const BACK = /^<\s*(\d+)?$/;

async function askOne(
  io: TalkIo,
  question: Question,
  proposal: Answer | undefined,
  answers: Answers,
  { everything, language }: Pick<AskOptions, 'everything' | 'language'>,
): Promise<Answer | Back | 'quit'> {
  for (;;) {
    const line = await io.ask('  > ');
    const typed = line?.trim();
    if (typed === undefined || isWordFor('quit', typed)) return 'quit';
    const back = BACK.exec(typed);
    if (back) return { backTo: back[1] === undefined ? null : Number(back[1]) };
    if (isWordFor('list', typed)) {
      for (const each of answerLines(answers, everything, language)) io.print(each);
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
        `    ${bySentence('Nothing can be put forward here: look, or ask the maker; quit leaves, and nothing is lost.', language.bySentence)}`,
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
