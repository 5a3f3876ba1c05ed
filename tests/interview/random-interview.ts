import {
  type Answers,
  answerTyped,
  nextQuestion,
  unitsOf,
  withAnswer,
} from '../../src/interview/interview.ts';
import type { NumberQuestion, Question } from '../../src/interview/question.ts';
import { showBare, showNumber, type UnitChoice } from '../../src/interview/units.ts';
import { type Random, seeded } from '../../src/rehearsal/random.ts';

const grades = [
  '15W-40',
  '10W-40',
  '5W-40',
  '10W-30',
  '5W-30',
  '20W-50',
  '0W-30',
  '5W-40, 15W-40',
  '10W-30 72/11.2',
  '15W-40, 10W-30 below -18 °C',
  '15W-40 above 5 °F; 5W-40',
];
const things = [
  'fuel pressure',
  'boost pressure',
  'oil level',
  'exhaust temperature',
  'water in fuel',
  'coolant level',
];

const pick = <T>(random: Random, items: readonly T[]): T => {
  const found = items[Math.min(items.length - 1, Math.floor(random.between(0, items.length)))];
  if (found === undefined) throw new Error('There is nothing to pick from.');
  return found;
};

/** Somewhere in the range, more often where people are: near its middle on a scale of ratios. */
function someNumber(random: Random, { min, max, whole }: NumberQuestion): number {
  const low = min <= 0 ? min : Math.log(min);
  const high = min <= 0 ? max : Math.log(max);
  const at = random.between(low, high);
  const value = min <= 0 ? at : Math.exp(at);
  return whole ? Math.round(value) : Number(value.toPrecision(3));
}

/** Something that a person could type here; not everything of it is allowed. */
function someAnswer(question: Question, random: Random, units: UnitChoice): string {
  switch (question.kind) {
    case 'number':
      return showNumber(someNumber(random, question), question.measure, units);
    case 'range': {
      const [one, other] = [someNumber(random, question), someNumber(random, question)];
      return `${showBare(Math.min(one, other), question.measure, units)}-${showNumber(Math.max(one, other), question.measure, units)}`;
    }
    case 'choice':
      return pick(random, Object.keys(question.choices));
    case 'yesNo':
      return pick(random, ['yes', 'no']);
    case 'words':
      return question.orNone && random.between(0, 1) < 0.5
        ? 'none'
        : `Thing ${Math.round(random.between(1, 99))}`;
    case 'names':
      return [
        ...new Set([
          ...(question.id === 'lamps' ? ['wait to start', 'oil pressure'] : []),
          pick(random, things),
          pick(random, things),
        ]),
      ].join(', ');
    case 'grades':
      return pick(random, grades);
  }
}

/** What one person answers: with a number of tries for each question, then what is proposed. */
const TRIES = 400;

/** A whole interview with random answers, as the keys would give them; the same for the same seed. */
export function randomInterview(seed: number, everything = false): Answers {
  const random = seeded(seed, 'interview');
  let answers: Answers = {};
  for (let next = nextQuestion(answers, everything); next; next = nextQuestion(answers, everything)) {
    const { question, proposal } = next;
    if (proposal && random.between(0, 1) < 0.35) {
      answers = withAnswer(answers, question.id, proposal);
      continue;
    }
    let taken = proposal;
    for (let tries = 0; tries < TRIES; tries += 1) {
      const read = answerTyped(someAnswer(question, random, unitsOf(answers)), question, answers);
      if (!read.ok) continue;
      taken = { value: read.value, origin: read.origin };
      break;
    }
    if (!taken) throw new Error(`Seed ${seed}: nothing that is allowed was found for ${question.id}.`);
    answers = withAnswer(answers, question.id, taken);
  }
  return answers;
}
