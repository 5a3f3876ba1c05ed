import { judgeHeatSoak } from '../engineering/heat-soak.ts';
import type { ValueField } from '../profile/fields.ts';
import { busQuantities } from '../profile/schema.ts';
import { idOf, WAIT_LAMP } from './names.ts';
import { gradeFault, leastPromised, runningViscosities, usualSheet } from './oil-table.ts';
import {
  leastBursts,
  leastFillL,
  leastFullFlow,
  leastGiveUp,
  mostFillL,
  reserveWith,
  usualGalleryL,
  usualPumpL,
} from './oil-time.ts';
import {
  type Draft,
  type NumberQuestion,
  numberIn,
  type OilAnswer,
  type Proposal,
  type Question,
  type QuestionId,
  rangeIn,
  textIn,
  type Value,
} from './question.ts';
import { leastRatedRpm, leastReliefKpa, sweepSpeeds } from './speeds.ts';
import { type Measure, showNumber, type UnitChoice, unitChoices } from './units.ts';

const PRACTICE = 'common practice, no published source';

const assumed = (value: Value, rule = PRACTICE) => ({ value, from: 'assumed', rule }) as const;
const always = (value: Value, rule?: string) => () => assumed(value, rule);
const computed = (value: Value, rule: string, uses: readonly QuestionId[]) =>
  ({ value, from: 'computed', rule, uses }) as const;

const clamp = (value: number, min: number, max: number) => Math.min(max, Math.max(min, value));
const downToTenths = (value: number) => Math.floor(value * 10) / 10;
/** To two figures, as nobody guesses finer. */
const rough = (value: number) => Number(value.toPrecision(2));

type Without<Q, Keys extends keyof Q> = Omit<Q, Keys>;
type NumberRest = Without<
  NumberQuestion,
  'kind' | 'id' | 'ask' | 'measure' | 'min' | 'max' | 'fields' | 'tier'
> & {
  readonly fields?: readonly ValueField[];
  readonly tier?: NumberQuestion['tier'];
};

/** A number that is a value of the profile itself. */
const number = (
  id: ValueField,
  ask: string,
  measure: Measure,
  [min, max]: readonly [number, number],
  { fields = [id], tier = 'manual', ...rest }: NumberRest = {},
): NumberQuestion => ({ kind: 'number', id, ask, measure, min, max, fields, tier, ...rest });

/** A figure of a calculation, or a margin of the trade, that hardly anybody looks up. */
const rest = (
  id: ValueField,
  measure: Measure,
  bounds: readonly [number, number],
  propose: NonNullable<Question['propose']>,
  more: NumberRest = {},
): NumberQuestion => number(id, '', measure, bounds, { tier: 'rest', propose, ...more });

const unitsIn = (draft: Draft): UnitChoice =>
  unitChoices.find(choice => choice === textIn(draft, 'units')) ?? 'metric';

/** A fault unless the value is on the right side of another. */
const over =
  (other: QuestionId, named: string, measure: Measure, by = 0) =>
  (value: Value, draft: Draft): string | null => {
    const least = numberIn(draft, other);
    if (least === undefined || typeof value !== 'number' || value > least + by) return null;
    return `It has to be above ${showNumber(least + by, measure, unitsIn(draft))}, as ${named} is ${showNumber(least, measure, unitsIn(draft))}.`;
  };

/** What an engine of this size holds: outside it, two figures were mixed up, or their units. */
const perLitre =
  (least: number, most: number, what: string) =>
  (value: Value, draft: Draft): string | null => {
    const size = numberIn(draft, 'engine.displacementL');
    if (size === undefined || typeof value !== 'number') return null;
    if (value >= least * size && value <= most * size) return null;
    const show = (si: number) => showNumber(si, 'volume', unitsIn(draft));
    return `${what} of an engine of ${size} L has to be from ${show(least * size)} to ${show(most * size)}.`;
  };

const gradesIn = (draft: Draft): readonly OilAnswer[] => {
  const value = draft['oil.grades'];
  return Array.isArray(value) ? value.filter((each): each is OilAnswer => typeof each === 'object') : [];
};

const bars = (kpa: number, draft: Draft) => showNumber(kpa, 'pressure', unitsIn(draft));

/** Two names that come to the same short one. */
function twice(value: Value): string | null {
  const names = Array.isArray(value) ? value.filter(each => typeof each === 'string') : [];
  const same = names.find((name, index) => names.findIndex(other => idOf(other) === idOf(name)) !== index);
  return same === undefined ? null : `"${same}" stands there twice; name each thing once.`;
}

function notOnBus(value: Value): string | null {
  const names = Array.isArray(value) ? value.filter(each => typeof each === 'string') : [];
  const unknown = names.find(name => !busQuantities.some(quantity => quantity === name));
  return unknown === undefined
    ? null
    : `"${unknown}" is nothing that a bus is read for; allowed: ${busQuantities.join(', ')}.`;
}

/** Of the air at this height, for whether a coolant can boil: most shops stand lower. */
const HEIGHT_M = 500;
const SOAK_RISE_K = 12;
const BOIL_MARGIN_K = 3;
/** At idle the coolant stands about this far above the thermostat's opening. */
const ABOVE_OPENING_K = 5;

/** Whether the coolant stays below boiling after key off, with this cap and what else was answered. */
function staysLiquid(draft: Draft, opensC: number, capKpa: number): boolean {
  const soak = judgeHeatSoak({
    coolantC: opensC + ABOVE_OPENING_K,
    soakRiseK: numberIn(draft, 'shutdown.soakRiseK') ?? SOAK_RISE_K,
    capKpa,
    altitudeM: HEIGHT_M,
    marginK: numberIn(draft, 'shutdown.boilMarginK') ?? BOIL_MARGIN_K,
  });
  return soak.ok && soak.value.underCap.met;
}

/** A rise or a margin with which the coolant could never be said to stay liquid. */
const soakFault =
  (id: 'shutdown.soakRiseK' | 'shutdown.boilMarginK') =>
  (value: Value, draft: Draft): string | null => {
    const [opensC, capKpa] = [
      numberIn(draft, 'thermostat.opensC'),
      numberIn(draft, 'coolant.capPressureKpa'),
    ];
    if (opensC === undefined || capKpa === undefined || typeof value !== 'number') return null;
    const holds = (kelvin: number) => staysLiquid({ ...draft, [id]: kelvin }, opensC, capKpa);
    if (holds(value)) return null;
    let most = Math.floor(value);
    while (most > 0 && !holds(most)) most -= 1;
    return `With this thermostat and cap it would always be said to boil; allowed: ${most} K or less.`;
  };

function capFault(value: Value, draft: Draft): string | null {
  const opensC = numberIn(draft, 'thermostat.opensC');
  if (opensC === undefined || typeof value !== 'number') return null;
  const holds = (capKpa: number) => staysLiquid(draft, opensC, capKpa);
  if (holds(value)) return null;
  let least = value;
  while (least < 200 && !holds(least)) least += 1;
  return `The coolant would boil after key off with this thermostat; allowed: a cap of ${bars(least, draft)} or more.`;
}

const isFixed = (draft: Draft) => draft.fixedSpeedRpm === true;
const isSwept = (draft: Draft) => !isFixed(draft);

/** What is secured before it turns, as it is called there. */
const called = (
  id: 'autoStart' | 'breaker' | 'gearLever' | 'coupling',
  ask: string,
  use: string,
  usual: string,
): Question => ({
  kind: 'words',
  id,
  ask,
  fields: ['use'],
  tier: 'plate',
  longest: 60,
  when: draft => textIn(draft, 'use') === use,
  propose: always(usual),
});

const electric = (draft: Draft) => textIn(draft, 'fuelling.disabledBy') === 'electric';
const withHeater = (draft: Draft) => textIn(draft, 'heaterKind') !== 'none';

/** No relief valve of a diesel opens later. */
const MOST_RELIEF_KPA = 1500;
/** With a governor's droop it stays below what is listened for as a speed, 4000 rpm (`src/engineering/quantities`). */
const MOST_FIXED_RPM = 3800;
/** No profile knows a faster speed. */
const MOST_RPM = 5000;

const atRated =
  (share: number, rule: string) =>
  (draft: Draft): Proposal | undefined => {
    const rated = numberIn(draft, 'ratedRpm');
    return rated === undefined
      ? undefined
      : {
          value: Math.min(MOST_RPM, Math.round((rated * share) / 10) * 10),
          from: 'assumed',
          rule,
          uses: ['ratedRpm'],
        };
  };

const bySize =
  (share: number, of: QuestionId, [least, most]: readonly [number, number]) =>
  (draft: Draft): Proposal | undefined => {
    const size = numberIn(draft, of);
    return size === undefined ? undefined : assumed(clamp(rough(size * share), least, most));
  };

/** The usual figure, or so much above another where that is higher. */
const atLeast = (usual: number, other: QuestionId, above: number) => (draft: Draft) =>
  assumed(Math.max(usual, (numberIn(draft, other) ?? Number.NEGATIVE_INFINITY) + above));

/** A quarter of an hour, inside the least and the longest warm-up. */
const idleMost = (draft: Draft) =>
  assumed(clamp(900, numberIn(draft, 'warmUp.minS') ?? 0, numberIn(draft, 'warmUp.maxS') ?? 3600));

const put = (find: (draft: Draft) => number | undefined) => (draft: Draft) => {
  const value = find(draft);
  return value === undefined ? undefined : assumed(value);
};

/** A fault where the cranks that are allowed would end before the oil is at the gauge. */
const inTime =
  (
    figure:
      | 'pumpLitrePerTurn'
      | 'pumpTurnsPerCrankTurn'
      | 'fillLitres'
      | 'fillSpreadShare'
      | 'leastEfficiency',
  ) =>
  (value: Value, draft: Draft): string | null => {
    const times = reserveWith({ ...draft, [`priming.${figure}`]: value });
    return times === undefined || times >= 1 - 1e-9
      ? null
      : 'The cranks that are allowed would be over before the oil is at the gauge; allowed: a faster pump, less to fill, or more cranks.';
  };

const disabledAt: Readonly<Record<string, string>> = {
  electric: 'injector harness plug',
  lever: 'shut-off lever of the injection pump',
  solenoid: 'shut-off solenoid plug',
};

const fits = { dry: 'dry', preFilled: 'filled with clean fuel first' } as const;

/** In the order in which a person with the plate and the manual in hand is asked. */
export const questions: readonly Question[] = [
  {
    kind: 'choice',
    id: 'units',
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
    ask: 'A real engine, not one for practice?',
    fields: [],
    tier: 'plate',
    why: 'a real one is not started on what is only assumed',
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
      return `${cylinders} cylinders make from ${rough(0.15 * cylinders)} to ${8 * cylinders} L.`;
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
    fields: ['sweeps'],
    tier: 'plate',
    why: 'the sweeps stay well below it, and oil pressure is given at it',
    where: 'data plate: power at so many rpm',
  },
  {
    kind: 'choice',
    id: 'use',
    ask: 'What it drives',
    fields: ['use'],
    tier: 'plate',
    choices: {
      vehicle: 'a vehicle',
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
    ask: 'Exhaust',
    fields: ['exhaust'],
    tier: 'plate',
    choices: { dry: 'dry', wet: 'wet: raw water is let into it' },
    propose: draft => assumed(textIn(draft, 'use') === 'marine' ? 'wet' : 'dry'),
  },
  {
    kind: 'words',
    id: 'rawWaterCock',
    ask: 'The cock of the raw water',
    fields: ['exhaust'],
    tier: 'plate',
    longest: 60,
    when: draft => textIn(draft, 'exhaust') === 'wet',
    propose: always('raw water cock'),
  },
  {
    kind: 'choice',
    id: 'afterTreatment',
    ask: 'After-treatment',
    fields: ['afterTreatment'],
    tier: 'plate',
    choices: { none: 'none', particulateFilter: 'a particulate filter that regenerates' },
    propose: always('none'),
  },
  {
    kind: 'yesNo',
    id: 'steering',
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
  { kind: 'yesNo', id: 'turbo', ask: 'A turbocharger?', fields: ['turbo'], tier: 'plate' },
  {
    kind: 'choice',
    id: 'fuelling.disabledBy',
    ask: 'Fuelling, and so how it is kept from firing',
    fields: ['fuelling.disabledBy'],
    tier: 'plate',
    choices: {
      electric: 'electronic (common rail, unit injectors): a plug is pulled',
      lever: 'mechanical: a lever is put to no delivery',
      solenoid: 'mechanical with a shut-off solenoid: its plug is pulled',
    },
  },
  {
    kind: 'words',
    id: 'fuelling.at',
    ask: 'What is unplugged or moved for that',
    fields: ['fuelling.at'],
    tier: 'plate',
    longest: 60,
    propose: draft => assumed(disabledAt[textIn(draft, 'fuelling.disabledBy') ?? ''] ?? 'fuel shut-off'),
  },
  {
    kind: 'words',
    id: 'cutOff',
    ask: 'What shuts it off when the key does not',
    fields: ['cutOff'],
    tier: 'plate',
    longest: 60,
    propose: always('shut-off lever, or the fuel cock'),
  },
  number('overspeedRpm', 'Speed at which it has to be shut off', 'speed', [600, 5000], {
    whole: true,
    propose: atRated(1.12, '12 % above the rated speed; common practice, no published source'),
    check: over('ratedRpm', 'the rated speed', 'speed'),
  }),

  {
    kind: 'range',
    id: 'fixedRange',
    ask: 'Speed without load, from and to',
    measure: 'speed',
    min: 1100,
    max: 5000,
    whole: true,
    fields: ['idle.warm', 'idle.cold'],
    tier: 'manual',
    when: isFixed,
    propose: draft => {
      const rated = numberIn(draft, 'ratedRpm') ?? 0;
      const most = (numberIn(draft, 'overspeedRpm') ?? MOST_RPM) - 1;
      const bounds = [Math.round(rated * 0.98), Math.min(most, Math.round(rated * 1.05))] as const;
      return { ...assumed(bounds, '2 % below to 5 % above: the droop of a governor'), uses: ['ratedRpm'] };
    },
    check: (value, draft) => {
      const rated = numberIn(draft, 'ratedRpm');
      const overspeed = numberIn(draft, 'overspeedRpm');
      const range = rangeIn({ fixedRange: value }, 'fixedRange');
      if (!range || rated === undefined) return null;
      if (range[0] > rated || range[1] < rated) return `It has to hold the rated speed, ${rated} rpm.`;
      if (range[0] < 0.9 * rated || range[1] > 1.1 * rated)
        return `It has to be within 10 % of the rated speed, ${rated} rpm.`;
      return overspeed !== undefined && range[1] >= overspeed
        ? `It has to end below the speed at which it is stopped, ${overspeed} rpm.`
        : null;
    },
  },
  {
    kind: 'range',
    id: 'idle.warm',
    ask: 'Idle, warm, from and to',
    measure: 'speed',
    min: 450,
    max: 1400,
    whole: true,
    fields: ['idle.warm'],
    tier: 'manual',
    when: isSwept,
    propose: draft => {
      // Below half of the rated speed there is room for sweeps.
      const most = Math.min(850, Math.floor((numberIn(draft, 'ratedRpm') ?? 2000) / 21) * 10);
      return { ...assumed([Math.min(650, most - 100), most]), uses: ['ratedRpm'] };
    },
    check: (value, draft) => {
      const rated = numberIn(draft, 'ratedRpm');
      const range = rangeIn({ 'idle.warm': value }, 'idle.warm');
      if (!range || rated === undefined || rated >= leastRatedRpm(range[1])) return null;
      return `Below a rated speed of ${rated} rpm that idle leaves no room for sweeps; allowed: a slower one.`;
    },
  },
  {
    kind: 'range',
    id: 'idle.cold',
    ask: 'Idle, cold, from and to',
    measure: 'speed',
    min: 450,
    max: 1600,
    whole: true,
    fields: ['idle.cold'],
    tier: 'manual',
    when: isSwept,
    propose: draft => {
      const warm = rangeIn(draft, 'idle.warm');
      return warm
        ? {
            ...assumed([warm[0], Math.min(1600, warm[1] + 150)], 'up to 150 rpm above the warm idle'),
            uses: ['idle.warm'],
          }
        : undefined;
    },
    check: (value, draft) => {
      const warm = rangeIn(draft, 'idle.warm');
      const cold = rangeIn({ 'idle.cold': value }, 'idle.cold');
      if (!warm || !cold) return null;
      if (cold[0] < warm[0])
        return `A cold engine idles no slower than a warm one; allowed: from ${warm[0]} rpm.`;
      if (cold[1] < warm[1] || cold[1] > 1.5 * warm[1])
        return `Its fastest has to be from ${warm[1]} to ${Math.floor(1.5 * warm[1])} rpm.`;
      return null;
    },
  },
  {
    kind: 'number',
    id: 'floorIdleKpa',
    ask: 'Least oil pressure at idle, hot',
    when: isSwept,
    measure: 'pressure',
    min: 40,
    max: 400,
    fields: ['oilPressure.floor'],
    tier: 'manual',
    propose: always(100, '1 bar at idle; common practice, no published source'),
    check: (value, draft) => {
      // With no more than this at rated speed: what is asked there comes to it.
      const least = leastReliefKpa({ ...draft, floorIdleKpa: value, floorRatedKpa: 0 });
      return least === undefined || typeof value !== 'number' || least <= MOST_RELIEF_KPA
        ? null
        : `Above this idle no relief valve leaves room for so much; allowed: ${bars(Math.floor((value * MOST_RELIEF_KPA) / least), draft)} or less.`;
    },
  },
  {
    kind: 'number',
    id: 'floorRatedKpa',
    ask: 'Least oil pressure at rated speed, hot',
    measure: 'pressure',
    min: 60,
    max: 900,
    fields: ['oilPressure.floor'],
    tier: 'manual',
    propose: draft => {
      const idle = numberIn(draft, 'floorIdleKpa') ?? 0;
      return {
        ...assumed(Math.max(250, idle + 50), '2.5 bar at rated speed; common practice, no published source'),
        uses: [],
      };
    },
    check: over('floorIdleKpa', 'that at idle', 'pressure'),
  },
  number('oilPressure.reliefKpa', 'Oil relief valve opens at', 'pressure', [100, MOST_RELIEF_KPA], {
    propose: draft => {
      const least = leastReliefKpa(draft) ?? 0;
      const usual = Math.ceil(Math.max(450, 1.1 * least, (numberIn(draft, 'floorRatedKpa') ?? 0) * 1.3) / 10);
      return assumed(Math.min(MOST_RELIEF_KPA, 10 * usual));
    },
    check: (value, draft) => {
      const floor = numberIn(draft, 'floorRatedKpa') ?? 0;
      const least = Math.max(leastReliefKpa(draft) ?? 0, Math.ceil(floor * 1.15));
      return typeof value !== 'number' || value >= least
        ? null
        : `Below these floors it would be open at every speed; allowed: ${bars(least, draft)} or more.`;
    },
  }),
  number('oilPressure.firstFireWithinS', 'Key off if no oil pressure within', 'time', [4, 30], {
    propose: always(8, 'less than the 10 to 15 s that are usual; common practice, no published source'),
  }),

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
    choices: { preFilled: 'filled first', dry: 'fitted dry' },
  },

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
        : { ...assumed(opens + 12, '12 K above its opening'), uses: ['thermostat.opensC'] };
    },
    check: over('thermostat.opensC', 'its opening', 'temperature'),
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

  number('fuel.tankL', 'Fuel tank', 'tank', [1, 3000]),
  {
    kind: 'choice',
    id: 'filterCount',
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
    ask: 'Primer',
    fields: ['fuel.primer.kind'],
    tier: 'manual',
    choices: { hand: 'pumped by hand', electric: 'an electric pump' },
    propose: always('hand'),
  },
  number('fuel.biodieselMaxPercent', 'Most biodiesel allowed', 'percent', [0, 100], { propose: always(7) }),

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
    ask: 'Its wait at -20 °C (-4 °F)',
    measure: 'time',
    min: 1,
    max: 150,
    fields: ['heater'],
    tier: 'manual',
    when: withHeater,
    propose: draft => assumed(textIn(draft, 'heaterKind') === 'glow' ? 15 : 35),
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
  number('charging.setpointV', 'Charging voltage, of 12 V at 25 °C', 'voltage', [13.8, 15], {
    propose: always(14.2),
  }),
  {
    kind: 'names',
    id: 'sensors',
    ask: 'Sensors, with commas between',
    fields: ['sensors'],
    tier: 'manual',
    propose: draft =>
      assumed([
        'oil pressure',
        'coolant temperature',
        ...(electric(draft) ? ['intake temperature', 'rail pressure', 'crank speed', 'cam position'] : []),
        ...(draft.turbo === true && electric(draft) ? ['boost pressure'] : []),
      ]),
    check: twice,
  },
  {
    kind: 'names',
    id: 'lamps',
    ask: 'Lamps of the panel, with commas between',
    fields: ['lamps'],
    tier: 'manual',
    propose: draft =>
      assumed([
        ...(electric(draft) ? ['red warning', 'amber warning'] : []),
        'oil pressure',
        'charging',
        ...(withHeater(draft) ? [WAIT_LAMP] : []),
      ]),
    check: (value, draft) => {
      const same = twice(value);
      if (same !== null) return same;
      const ids = Array.isArray(value) ? value.map(each => idOf(String(each))) : [];
      return withHeater(draft) && !ids.includes(idOf(WAIT_LAMP))
        ? `The heater is waited for by a lamp; name it "${WAIT_LAMP}" among them.`
        : null;
    },
  },
  {
    kind: 'names',
    id: 'retorque',
    ask: 'What is torqued again when cold, with commas between',
    fields: ['retorque'],
    tier: 'manual',
    propose: draft =>
      assumed([
        'exhaust manifold',
        ...(draft.turbo === true ? ['turbo clamps'] : []),
        'coolant hose clamps',
        'oil drain plug',
      ]),
    check: twice,
  },
  {
    kind: 'yesNo',
    id: 'bus',
    ask: 'A J1939 bus that may be read?',
    fields: ['bus'],
    tier: 'manual',
    propose: always(false),
  },
  {
    kind: 'names',
    id: 'busReadings',
    ask: 'What it gives, with commas between',
    fields: ['bus'],
    tier: 'rest',
    when: draft => draft.bus === true,
    propose: always([...busQuantities]),
    check: value => twice(value) ?? notOnBus(value),
    why: 'it need not be spoken',
    where: 'a log of the bus: "engine from-bus" reads it out',
  },
  {
    kind: 'number',
    id: 'busAddress',
    ask: "Address of the engine's controller",
    measure: 'count',
    min: 0,
    max: 253,
    whole: true,
    fields: ['bus'],
    tier: 'rest',
    when: draft => draft.bus === true,
    propose: always(0),
    why: 'only what the engine itself sends is acted on',
    where: 'a log of the bus: "engine from-bus" reads it out',
  },

  rest('coolant.concentrateShare', 'share', [0.3, 1], always(0.95), {
    check: (value, draft) => {
      const [, most = 0] = rangeIn(draft, 'coolantMix') ?? [];
      return typeof value === 'number' && value < most
        ? `The can has to hold at least as much glycol as the strongest mix, ${Math.round(most * 100)} %.`
        : null;
    },
  }),
  rest('coolant.freezeMarginK', 'kelvin', [0, 20], always(5)),
  rest('coolant.bleedHoldS', 'time', [1, 7200], always(120)),
  rest('oil.toleranceL', 'volume', [0.1, 10], bySize(0.07, 'oil.capacityL', [0.3, 10])),
  rest('oil.runningC', 'temperature', [60, 150], always(100)),
  rest(
    'oil.minRunningViscosityMm2S',
    'viscosity',
    [2, 50],
    draft => {
      const grades = gradesIn(draft);
      const promised = leastPromised(grades);
      const [thinnest] = runningViscosities(grades, numberIn(draft, 'oil.runningC') ?? 100);
      if (promised === undefined || thinnest === undefined) return undefined;
      // Where it runs hotter than 100 degC, all of the maker's grades are thinner than they promise there.
      const least = Math.max(2, Math.min(promised, downToTenths(thinnest)));
      return computed(least, 'sae-j300', ['oil.grades', 'oil.runningC']);
    },
    {
      check: (value, draft) => {
        const runningC = numberIn(draft, 'oil.runningC') ?? 100;
        const thickest = runningViscosities(gradesIn(draft), runningC).at(-1);
        return thickest === undefined || typeof value !== 'number' || value <= thickest
          ? null
          : `No grade that is allowed is so thick at ${showNumber(runningC, 'temperature', unitsIn(draft))}; allowed: ${downToTenths(thickest)} mm2/s or less.`;
      },
    },
  ),
  rest(
    'oil.fullFlowViscosityMm2S',
    'viscosity',
    [2, 2e7],
    draft => assumed(Math.max(1500, leastFullFlow(draft) ?? 0)),
    {
      check: (value, draft) => {
        const least = leastFullFlow(draft);
        return least === undefined || typeof value !== 'number' || value >= least
          ? null
          : `In a cold shop the oil would hardly move; allowed: ${least} mm2/s or more.`;
      },
    },
  ),
  rest('fuel.no1CloudC', 'temperature', [-60, 0], always(-40)),
  rest('fuel.no2CloudC', 'temperature', [-40, 20], atLeast(-4, 'fuel.no1CloudC', 10), {
    check: over('fuel.no1CloudC', 'that of the winter fuel', 'temperature'),
  }),
  rest('fuel.cloudMarginK', 'kelvin', [0, 20], always(3)),
  rest('fuel.straightNo1BelowC', 'temperature', [-60, 0], always(-30)),
  rest('fuel.sulphurMaxPpm', 'ppm', [1, 5000], always(15)),
  rest('fuel.primer.runS', 'time', [5, 600], always(60), {
    when: draft => textIn(draft, 'fuel.primer.kind') === 'electric',
  }),
  rest('fuel.primer.maxStrokes', 'count', [10, 500], always(150), { whole: true }),
  rest('starter.limitC', 'temperature', [60, 250], always(140)),
  rest('starter.ratedAmbientC', 'temperature', [-20, 50], always(25)),
  rest('starter.timeConstantS', 'time', [10, 3600], always(400)),
  rest('starter.maxBursts', 'count', [1, 20], draft => assumed(Math.max(8, leastBursts(draft))), {
    whole: true,
    check: (value, draft) => {
      const least = leastBursts(draft);
      return typeof value !== 'number' || value >= least
        ? null
        : `In so few cranks no oil comes to the gauge; allowed: ${least} or more.`;
    },
  }),
  rest('priming.pumpLitrePerTurn', 'volume', [0.001, 1], put(usualPumpL), {
    check: inTime('pumpLitrePerTurn'),
  }),
  rest('priming.pumpTurnsPerCrankTurn', 'count', [0.2, 5], always(1.2), {
    check: inTime('pumpTurnsPerCrankTurn'),
  }),
  rest('priming.fillLitres', 'volume', [0.01, 100], put(usualGalleryL), {
    check: (value, draft) => {
      const [least, most] = [leastFillL(draft), mostFillL(draft)];
      return typeof value === 'number' && (value < least || value > most)
        ? `It has to be from ${showNumber(least, 'volume', unitsIn(draft))} to ${showNumber(most, 'volume', unitsIn(draft))} of the oil that it holds.`
        : inTime('fillLitres')(value, draft);
    },
  }),
  rest('priming.fillSpreadShare', 'share', [0, 0.9], always(0.3), { check: inTime('fillSpreadShare') }),
  rest('priming.leastEfficiency', 'share', [0.1, 1], always(0.55), { check: inTime('leastEfficiency') }),
  rest('priming.greatestEfficiency', 'share', [0.1, 1], atLeast(0.9, 'priming.leastEfficiency', 0), {
    check: (value, draft) => {
      const least = numberIn(draft, 'priming.leastEfficiency') ?? 0;
      return typeof value === 'number' && value < least
        ? `It has to be ${Math.round(least * 100)} % or more, the least it moves.`
        : null;
    },
  }),
  rest('priming.giveUpMultiple', 'count', [1.5, 10], draft => assumed(clamp(leastGiveUp(draft), 3, 10)), {
    check: (value, draft) => {
      const least = leastGiveUp(draft);
      return typeof value !== 'number' || value >= least
        ? null
        : `An engine that is well would be given up; allowed: ${least} or more.`;
    },
  }),
  rest('priming.holdS', 'time', [2, 30], always(5)),
  rest(
    'oilPressure.gaugeMaxKpa',
    'pressure',
    [0, 2000],
    draft => {
      const relief = numberIn(draft, 'oilPressure.reliefKpa');
      return relief === undefined
        ? undefined
        : computed(Math.min(2000, Math.ceil((1.4 * relief) / 100) * 100), '1.4 times the relief pressure', [
            'oilPressure.reliefKpa',
          ]);
    },
    {
      check: (value, draft) => {
        const relief = numberIn(draft, 'oilPressure.reliefKpa');
        return relief === undefined || typeof value !== 'number' || value >= relief
          ? null
          : `The gauge has to reach where the relief valve opens; allowed: ${bars(relief, draft)} or more.`;
      },
    },
  ),
  rest('oilPressure.showsKpa', 'pressure', [1, 300], draft => {
    const floor = numberIn(draft, 'floorIdleKpa') ?? (numberIn(draft, 'floorRatedKpa') ?? 0) / 2;
    return floor === 0 ? undefined : assumed(Math.min(70, Math.round(0.7 * floor)));
  }),
  rest('idle.spreadMaxRpm', 'speed', [10, 300], always(40)),
  rest('charging.toleranceV', 'voltage', [0.05, 0.6], always(0.5)),
  rest('charging.minStateOfCharge', 'share', [0.3, 0.9], always(0.7)),
  rest('thermostat.toleranceK', 'kelvin', [0.5, 20], always(4)),
  rest('warmUp.minS', 'time', [180, 3600], always(240)),
  rest('warmUp.maxS', 'time', [600, 7200], atLeast(2700, 'warmUp.minS', 600), {
    check: over('warmUp.minS', 'the least', 'time'),
  }),
  rest('warmUp.readEveryS', 'time', [5, 600], always(60)),
  rest('warmUp.idleMaxS', 'time', [180, 3600], idleMost, {
    check: (value, draft) => {
      const [least, most] = [numberIn(draft, 'warmUp.minS') ?? 0, numberIn(draft, 'warmUp.maxS') ?? 1e9];
      return typeof value !== 'number' || (value >= least && value <= most)
        ? null
        : `It has to be from ${least} to ${most} s, the least and the longest warm-up.`;
    },
  }),
  rest(
    'warmUp.fastIdleRpm',
    'speed',
    [450, 4000],
    draft => {
      const speed = sweepSpeeds(draft)?.[1];
      return speed === undefined
        ? undefined
        : computed(speed, 'the second sweep', ['ratedRpm', 'idle.warm', 'oilPressure.reliefKpa']);
    },
    {
      when: isSwept,
      whole: true,
      check: (value, draft) => {
        const idle = rangeIn(draft, 'idle.warm')?.[1];
        const fastest = sweepSpeeds(draft)?.at(-1);
        if (idle === undefined || fastest === undefined || typeof value !== 'number') return null;
        return value > idle && value <= fastest
          ? null
          : `It has to be above the warm idle, ${idle} rpm, and no faster than the last sweep, ${fastest} rpm.`;
      },
    },
  ),
  rest('shutdown.settleS', 'time', [1, 7200], draft => assumed(draft.turbo === true ? 180 : 60)),
  // Below that nothing cools in a hot shop.
  rest('shutdown.safeToOpenC', 'temperature', [40, 60], always(45)),
  rest('shutdown.soakRiseK', 'kelvin', [0, 40], always(SOAK_RISE_K), {
    check: soakFault('shutdown.soakRiseK'),
  }),
  rest('shutdown.boilMarginK', 'kelvin', [0, 40], always(BOIL_MARGIN_K), {
    check: soakFault('shutdown.boilMarginK'),
  }),
  // Sooner nobody has heard "ready?" and answered it.
  rest('walkRound.clearValidS', 'time', [8, 60], always(15)),
];

const byId = new Map(questions.map(question => [question.id, question]));

/** @throws Error for an id that no question has */
export function questionOf(id: QuestionId): Question {
  const found = byId.get(id);
  if (!found) throw new Error(`There is no question ${id}.`);
  return found;
}
