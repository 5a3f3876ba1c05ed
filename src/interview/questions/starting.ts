import { LONGEST_WAIT_S, longestWait, STATED_AT_C } from '../heater-waits.ts';
import { numberIn, type Question, textIn } from '../question.ts';
import { always, assumed, number, withHeater } from './makers.ts';

/** Heater, starter, oil before it turns, the first run and charging. */
export const startingQuestions: readonly Question[] = [
  {
    kind: 'choice',
    id: 'heaterKind',
    ask: 'Heater for cold starts',
    fields: ['heater'],
    tier: 'manual',
    choices: { none: 'none', grid: 'intake heater', glow: 'glow plugs' },
  },
  {
    kind: 'number',
    id: 'heaterWaitS',
    ask: 'Its wait in the cold',
    measure: 'time',
    min: 1,
    max: 150,
    fields: ['heater'],
    tier: 'manual',
    when: withHeater,
    propose: draft => assumed(textIn(draft, 'heaterKind') === 'glow' ? 15 : 35),
  },
  {
    kind: 'number',
    id: 'heaterWaitAtC',
    ask: 'In which cold it waits so long',
    measure: 'temperature',
    min: -40,
    max: 0,
    fields: ['heater'],
    tier: 'manual',
    when: withHeater,
    propose: always(STATED_AT_C),
    check: (value, draft) => {
      const waitS = numberIn(draft, 'heaterWaitS');
      if (waitS === undefined || typeof value !== 'number' || longestWait(waitS, value) <= LONGEST_WAIT_S)
        return null;
      return `In deeper cold it would wait for more than ${LONGEST_WAIT_S} s; allowed: a colder one, or a shorter wait.`;
    },
  },
  number('starter.crankingRpm', 'Cranking speed', 'speed', [100, 400], {
    whole: true,
    propose: always(150),
  }),
  number('starter.longestBurstS', 'Longest crank', 'time', [5, 60], { propose: always(15) }),
  number('starter.minRestS', 'Rest between cranks', 'time', [15, 600], { propose: always(120) }),
  number('starter.burstsInARow', 'Longest cranks in a row, then it has to cool', 'count', [1, 10], {
    whole: true,
    propose: always(2),
  }),
  {
    kind: 'words',
    id: 'prelube',
    ask: 'Port where oil is pumped in before it turns',
    fields: ['prelube'],
    tier: 'manual',
    longest: 60,
    orNone: true,
    propose: always(null),
  },
  {
    kind: 'yesNo',
    id: 'firstRun',
    ask: 'A short first run, then off for a look?',
    fields: ['firstRun'],
    tier: 'manual',
    propose: always(true, 'two minutes show most leaks; common practice, no published source'),
  },
  number('charging.setpointV', 'Charging voltage, of 12 V at 25 °C (77 °F)', 'voltage', [13.8, 15], {
    propose: always(14.2),
  }),
];
