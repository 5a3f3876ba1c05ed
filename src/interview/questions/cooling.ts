import { numberIn, type Question, rangeIn } from '../question.ts';
import { type Measure, showNumber } from '../units.ts';
import { always, assumed, number, over, perLitre, unitsIn } from './makers.ts';
import { capFault } from './soak.ts';

/**
 * Wax that melts over less sticks, and over more it was another temperature that was read off, K: 8 to 15 are usual;
 * common practice, no published source.
 */
const OPENS_OVER_K = [5, 25] as const;

/** Coolant, thermostat and cap. */
export const coolingQuestions: readonly Question[] = [
  number('coolant.systemVolumeL', 'Coolant in the whole system', 'volume', [1, 300], {
    check: perLitre(0.8, 12, 'The coolant'),
  }),
  {
    kind: 'choice',
    id: 'coolant.kind',
    ask: 'Glycol',
    fields: ['coolant.kind'],
    tier: 'manual',
    choices: { ethylene: 'ethylene', propylene: 'propylene' },
    propose: always('ethylene'),
  },
  {
    kind: 'range',
    id: 'coolantMix',
    ask: 'Glycol allowed, from and to',
    measure: 'share',
    min: 0,
    max: 0.7,
    example: [0.4, 0.6],
    fields: ['coolant.minShare', 'coolant.maxShare'],
    tier: 'manual',
    propose: always([0.4, 0.6]),
    check: value => {
      const [least = 0, most = 1] = rangeIn({ coolantMix: value }, 'coolantMix') ?? [];
      if (least > 0.55) return 'The least may be 55 % at most: tables of freezing end there.';
      return most < 0.25 ? 'The most has to be 25 % or more: less stands no winter.' : null;
    },
  },
  number('thermostat.opensC', 'Thermostat begins to open', 'temperature', [60, 100], {
    propose: always(82),
  }),
  number('thermostat.fullyOpenC', 'Thermostat fully open', 'temperature', [65, 115], {
    propose: draft => {
      const opens = numberIn(draft, 'thermostat.opensC');
      return opens === undefined
        ? undefined
        : { ...assumed(opens + 12, '12 K (22 °F) above its opening'), uses: ['thermostat.opensC'] };
    },
    check: (value, draft) => {
      const opens = numberIn(draft, 'thermostat.opensC');
      if (opens === undefined || typeof value !== 'number') return null;
      const [least, most] = OPENS_OVER_K;
      if (value >= opens + least && value <= opens + most) return null;
      const show = (si: number, measure: Measure) => showNumber(si, measure, unitsIn(draft));
      return `It has to be from ${show(opens + least, 'temperature')} to ${show(opens + most, 'temperature')}: a thermostat opens over ${show(least, 'kelvin')} to ${show(most, 'kelvin')}.`;
    },
  }),
  number('thermostat.coolantMaxC', 'Hottest coolant allowed', 'temperature', [80, 130], {
    propose: draft => {
      const full = numberIn(draft, 'thermostat.fullyOpenC');
      return full === undefined
        ? undefined
        : { ...assumed(Math.max(105, full + 5)), uses: ['thermostat.fullyOpenC'] };
    },
    check: over('thermostat.fullyOpenC', 'the thermostat fully open', 'temperature', 2),
  }),
  number('coolant.capPressureKpa', 'Pressure of the radiator cap', 'pressure', [0, 200], {
    propose: always(90),
    check: capFault,
  }),
];
