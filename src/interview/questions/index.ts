import type { Question, QuestionId } from '../question.ts';
import { coolingQuestions } from './cooling.ts';
import { fuelQuestions } from './fuel.ts';
import { namedQuestions } from './named.ts';
import { oilQuestions } from './oil.ts';
import { plateQuestions } from './plate.ts';
import { restQuestions } from './rest.ts';
import { speedAndPressureQuestions } from './speed-and-pressure.ts';
import { startingQuestions } from './starting.ts';

/** In the order in which a person with the plate and the manual in hand is asked. */
export const questions: readonly Question[] = [
  ...plateQuestions,
  ...speedAndPressureQuestions,
  ...oilQuestions,
  ...coolingQuestions,
  ...fuelQuestions,
  ...startingQuestions,
  ...namedQuestions,
  ...restQuestions,
];

const byId = new Map(questions.map(question => [question.id, question]));

/** @throws Error for an id that no question has */
export function questionOf(id: QuestionId): Question {
  const found = byId.get(id);
  if (!found) throw new Error(`There is no question ${id}.`);
  return found;
}
