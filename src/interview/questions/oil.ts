import { gradeFault, usualSheet } from '../oil-table.ts';
import type { Question } from '../question.ts';
import { gradesIn } from '../question.ts';
import { assumed, number, perLitre } from './makers.ts';

/** What oil it takes, and how its filter is fitted. */
export const oilQuestions: readonly Question[] = [
  number('oil.capacityL', 'Oil with a new filter', 'volume', [1, 300], {
    check: perLitre(0.7, 6, 'The oil'),
  }),
  {
    kind: 'grades',
    id: 'oil.grades',
    ask: 'Oil grades allowed',
    fields: ['oil.grades'],
    tier: 'manual',
    propose: () => {
      const sheet = usualSheet('15W-40');
      return sheet ? assumed([sheet], '15W-40, with the usual data sheet') : undefined;
    },
    check: value => {
      const grades = gradesIn({ 'oil.grades': value });
      const same = grades.find(
        ({ grade }, index) => grades.findIndex(other => other.grade === grade) !== index,
      );
      if (same) return `${same.grade} stands there twice; name each grade once.`;
      return grades.map(gradeFault).find(fault => fault !== null) ?? null;
    },
  },
  {
    kind: 'choice',
    id: 'oil.filter',
    ask: 'Oil filter',
    fields: ['oil.filter'],
    tier: 'manual',
    choices: { preFilled: 'filled with oil first', dry: 'fitted dry' },
  },
];
