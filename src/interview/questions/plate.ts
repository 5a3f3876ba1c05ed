import { type Draft, numberIn, type Proposal, type Question, textIn } from '../question.ts';
import { MOST_RPM } from '../speeds.ts';
import { showRounded } from '../units.ts';
import { always, assumed, isSwept, number, over, unitsIn } from './makers.ts';

/** What is secured before it turns, as it is called there. */
const called = (
  id: 'autoStart' | 'breaker' | 'gearLever' | 'coupling',
  ask: string,
  use: string,
  usual: string,
): Question => ({
  kind: 'words',
  id,
  usual: 'seen',
  ask,
  fields: ['use'],
  tier: 'plate',
  longest: 60,
  when: draft => textIn(draft, 'use') === use,
  propose: always(usual),
  why: 'it is called so when it is secured',
  where: 'beside the engine: on the panel, at the helm, at the driven machine',
});

/** With a governor's droop it stays below what is listened for as a speed, 4000 rpm (`src/engineering/quantities`). */
const MOST_FIXED_RPM = 3800;
/** So much above another speed, in tens. */
const above =
  (of: 'ratedRpm' | 'highIdleRpm', share: number, rule: string) =>
  (draft: Draft): Proposal | undefined => {
    const rpm = numberIn(draft, of);
    return rpm === undefined
      ? undefined
      : {
          value: Math.min(MOST_RPM, Math.round((rpm * (1 + share)) / 10) * 10),
          from: 'assumed',
          rule,
          uses: [of],
        };
  };

const aboveHighIdle = above(
  'highIdleRpm',
  0.1,
  'a tenth above the highest speed without load; common practice, no published source',
);
const aboveRated = above(
  'ratedRpm',
  0.12,
  '12 % above the rated speed; common practice, no published source',
);

const disabledAt: Readonly<Record<string, string>> = {
  electric: 'injector harness plug',
  lever: 'shut-off lever of the injection pump',
  solenoid: 'shut-off solenoid plug',
  stopSolenoid: 'shut-off lever of the injection pump',
};

/** What stands on the plate, and what anybody sees who stands before it. */
export const plateQuestions: readonly Question[] = [
  {
    kind: 'choice',
    id: 'units',
    usual: 'seen',
    ask: 'Units of the manual',
    fields: [],
    tier: 'plate',
    choices: { metric: 'metric: L, bar, °C', si: 'metric with kPa: L, kPa, °C', us: 'US: qt, psi, °F' },
    propose: always('metric'),
    why: 'a number without a unit is taken in these',
    where: 'look at any table of the manual',
  },
  {
    kind: 'yesNo',
    id: 'real',
    usual: 'seen',
    ask: 'Is it a real engine?',
    fields: [],
    tier: 'plate',
    why: 'a real one is not started on what is only assumed; one for practice is: answer no',
    where: 'you know',
  },
  {
    kind: 'words',
    id: 'name',
    ask: 'Name of the profile',
    fields: [],
    tier: 'plate',
    longest: 60,
    why: 'people choose by it',
    where: 'what the shop calls this engine',
  },
  {
    kind: 'words',
    id: 'engine.name',
    ask: 'Engine',
    fields: ['engine.name'],
    tier: 'plate',
    longest: 60,
    propose: draft => {
      const name = textIn(draft, 'name');
      return name === undefined ? undefined : assumed(name, 'as the profile is called');
    },
  },
  number('engine.cylinders', 'Cylinders', 'count', [1, 24], { tier: 'plate', whole: true }),
  number('engine.displacementL', 'Displacement', 'displacement', [0.2, 120], {
    tier: 'plate',
    check: (value, draft) => {
      const cylinders = numberIn(draft, 'engine.cylinders');
      if (cylinders === undefined || typeof value !== 'number') return null;
      if (value >= 0.15 * cylinders && value <= 8 * cylinders) return null;
      const show = (si: number) => showRounded(si, 'displacement', unitsIn(draft));
      return `${cylinders} cylinders make from ${show(0.15 * cylinders)} to ${show(8 * cylinders)}.`;
    },
  }),
  {
    kind: 'number',
    id: 'ratedRpm',
    ask: 'Rated speed',
    measure: 'speed',
    min: 1200,
    max: 4500,
    whole: true,
    because: 'slower and faster engines are started by procedures of their own',
    fields: ['sweeps'],
    tier: 'plate',
    why: 'the sweeps stay well below it, and oil pressure is given at it',
    where: 'data plate: power at so many rpm',
  },
  {
    kind: 'choice',
    id: 'use',
    usual: 'seen',
    ask: 'What it drives',
    fields: ['use'],
    tier: 'plate',
    choices: {
      vehicle: 'a vehicle: truck, bus, tractor',
      generator: 'a generating set',
      marine: 'a boat',
      stationary: 'a pump or another machine',
    },
  },
  called('autoStart', 'Where its automatic start is locked out', 'generator', 'mode switch of the panel'),
  called('breaker', 'Its breaker', 'generator', 'output breaker of the set'),
  called('gearLever', 'Its gear lever', 'marine', 'gear lever at the helm'),
  called('coupling', 'Where the driven machine is uncoupled', 'stationary', 'clutch lever'),
  {
    kind: 'yesNo',
    id: 'fixedSpeedRpm',
    ask: 'It runs at its rated speed only?',
    fields: ['fixedSpeedRpm'],
    tier: 'plate',
    when: draft => textIn(draft, 'use') === 'generator',
    propose: draft => assumed((numberIn(draft, 'ratedRpm') ?? 0) <= MOST_FIXED_RPM),
    check: (value, draft) =>
      value === true && (numberIn(draft, 'ratedRpm') ?? 0) > MOST_FIXED_RPM
        ? `No set runs so fast at one speed, and its speed could not be read; allowed: a rated speed of ${MOST_FIXED_RPM} rpm or less.`
        : null,
  },
  {
    kind: 'choice',
    id: 'exhaust',
    usual: 'seen',
    ask: 'Exhaust',
    fields: ['exhaust'],
    tier: 'plate',
    choices: { dry: 'dry', wet: 'wet: raw water is let into it' },
    propose: draft => assumed(textIn(draft, 'use') === 'marine' ? 'wet' : 'dry'),
  },
  {
    kind: 'words',
    id: 'rawWaterCock',
    usual: 'seen',
    ask: 'The cock of the raw water',
    fields: ['exhaust'],
    tier: 'plate',
    longest: 60,
    when: draft => textIn(draft, 'exhaust') === 'wet',
    propose: always('raw water cock'),
    why: 'it is called so when it is shut and opened',
    where: 'between the inlet of the raw water and its pump',
  },
  {
    kind: 'choice',
    id: 'afterTreatment',
    usual: 'seen',
    ask: 'After-treatment',
    fields: ['afterTreatment'],
    tier: 'plate',
    choices: { none: 'none', particulateFilter: 'a particulate filter that regenerates' },
    propose: always('none'),
  },
  {
    kind: 'yesNo',
    id: 'steering',
    usual: 'seen',
    ask: 'Steering with fluid of its own?',
    fields: ['steering'],
    tier: 'plate',
    when: draft => textIn(draft, 'use') === 'vehicle',
    propose: always(true),
  },
  {
    kind: 'choice',
    id: 'systemVoltage',
    ask: 'Volts',
    fields: ['systemVoltage'],
    tier: 'plate',
    choices: { '12': '12 V', '24': '24 V' },
    propose: always('12'),
  },
  { kind: 'yesNo', id: 'turbo', usual: 'seen', ask: 'A turbocharger?', fields: ['turbo'], tier: 'plate' },
  {
    kind: 'choice',
    id: 'fuelling.disabledBy',
    usual: 'seen',
    ask: 'Fuelling, and so how it is kept from firing',
    fields: ['fuelling.disabledBy'],
    tier: 'plate',
    choices: {
      electric: 'electronic (common rail, unit injectors): a plug is pulled',
      lever: 'mechanical: a lever is put to no delivery',
      solenoid: 'mechanical with a shut-off solenoid: its plug is pulled',
      stopSolenoid: 'mechanical with a solenoid that shuts off by current: its lever is tied at stop',
    },
  },
  {
    kind: 'words',
    id: 'fuelling.at',
    usual: 'seen',
    ask: 'What is unplugged or moved for that',
    fields: ['fuelling.at'],
    tier: 'plate',
    longest: 60,
    propose: draft => assumed(disabledAt[textIn(draft, 'fuelling.disabledBy') ?? ''] ?? 'fuel shut-off'),
  },
  {
    kind: 'words',
    id: 'cutOff',
    usual: 'seen',
    ask: 'What shuts it off when the key does not',
    fields: ['cutOff'],
    tier: 'plate',
    longest: 60,
    propose: always('shut-off lever, or the fuel cock'),
  },
  {
    kind: 'number',
    id: 'highIdleRpm',
    ask: 'Highest speed without load',
    measure: 'speed',
    min: 1200,
    max: 4900,
    whole: true,
    fields: [],
    tier: 'plate',
    when: isSwept,
    propose: above(
      'ratedRpm',
      0.08,
      '8 % above the rated speed: the droop of a governor; common practice, no published source',
    ),
    check: (value, draft) => {
      const rated = numberIn(draft, 'ratedRpm');
      if (rated === undefined || typeof value !== 'number') return null;
      return value >= rated && value <= 1.25 * rated
        ? null
        : `It has to be from the rated speed, ${rated} rpm, to ${Math.floor(1.25 * rated)} rpm.`;
    },
    why: 'what stops a runaway stays above what the governor allows',
    where: 'data plate, or manual, specifications: high idle',
  },
  number('overspeedRpm', 'Speed at which it has to be shut off', 'speed', [600, 5000], {
    whole: true,
    propose: draft => aboveHighIdle(draft) ?? aboveRated(draft),
    check: (value, draft) =>
      over('ratedRpm', 'the rated speed', 'speed')(value, draft) ??
      over('highIdleRpm', 'the highest without load', 'speed')(value, draft),
  }),
];
