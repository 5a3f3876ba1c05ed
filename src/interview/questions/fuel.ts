import { type Question, textIn } from '../question.ts';
import { always, assumed, number } from './makers.ts';

const fits = { dry: 'dry', preFilled: 'filled with clean fuel first' } as const;

/** Tank, filters, primer and biodiesel. */
export const fuelQuestions: readonly Question[] = [
  number('fuel.tankL', 'Fuel tank', 'tank', [1, 3000]),
  {
    kind: 'choice',
    id: 'filterCount',
    usual: 'seen',
    ask: 'Fuel filters one behind the other',
    fields: ['fuel.filters'],
    tier: 'manual',
    choices: { '1': 'one', '2': 'two' },
  },
  {
    kind: 'choice',
    id: 'firstFilter',
    ask: 'First fuel filter, fitted',
    fields: ['fuel.filters'],
    tier: 'manual',
    choices: fits,
    propose: draft => assumed(textIn(draft, 'filterCount') === '2' ? 'preFilled' : 'dry'),
    check: (value, draft) =>
      value === 'preFilled' && textIn(draft, 'filterCount') === '1'
        ? 'Nothing stands behind the only filter, so what is poured in goes to the injection unfiltered; allowed: dry.'
        : null,
  },
  {
    kind: 'choice',
    id: 'secondFilter',
    ask: 'Second fuel filter, fitted',
    fields: ['fuel.filters'],
    tier: 'manual',
    when: draft => textIn(draft, 'filterCount') === '2',
    choices: fits,
    propose: always('dry'),
    check: value =>
      value === 'preFilled'
        ? 'Nothing stands behind the last filter, so what is poured in goes to the injection unfiltered; allowed: dry.'
        : null,
  },
  {
    kind: 'choice',
    id: 'fuel.primer.kind',
    usual: 'seen',
    ask: 'Primer',
    fields: ['fuel.primer.kind'],
    tier: 'manual',
    choices: { hand: 'pumped by hand', electric: 'an electric pump' },
    propose: always('hand'),
  },
  // Whole, as it is read off and told.
  number('fuel.biodieselMaxPercent', 'Most biodiesel allowed', 'percent', [0, 100], {
    whole: true,
    propose: always(7),
  }),
];
