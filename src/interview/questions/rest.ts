import { leastPromised, runningViscosities } from '../oil-table.ts';
import {
  leastBursts,
  leastFillL,
  leastFullFlow,
  leastGiveUp,
  mostFillL,
  reserveWith,
  usualGalleryL,
  usualPumpL,
} from '../oil-time.ts';
import {
  type Draft,
  gradesIn,
  numberIn,
  type Proposal,
  type Question,
  type QuestionId,
  rangeIn,
  textIn,
  type Value,
} from '../question.ts';
import { sweepSpeeds } from '../speeds.ts';
import { showNumber } from '../units.ts';
import {
  always,
  assumed,
  atLeast,
  bars,
  clamp,
  computed,
  downToTenths,
  isSwept,
  over,
  rest,
  rough,
  unitsIn,
} from './makers.ts';
import { BOIL_MARGIN_K, SOAK_RISE_K, soakFault } from './soak.ts';

const bySize =
  (share: number, of: QuestionId, [least, most]: readonly [number, number]) =>
  (draft: Draft): Proposal | undefined => {
    const size = numberIn(draft, of);
    return size === undefined ? undefined : assumed(clamp(rough(size * share), least, most));
  };

/** A quarter of an hour, inside the least and the longest warm-up. */
const idleMost = (draft: Draft) =>
  assumed(clamp(900, numberIn(draft, 'warmUp.minS') ?? 0, numberIn(draft, 'warmUp.maxS') ?? 3600));

const put = (find: (draft: Draft) => number | undefined) => (draft: Draft) => {
  const value = find(draft);
  return value === undefined ? undefined : assumed(value);
};

/** Most pressure from which on it is said to show, kPa: no more than the least at idle, or half of that at one speed. */
function mostShowsKpa(draft: Draft): number | undefined {
  const rated = numberIn(draft, 'floorRatedKpa');
  return numberIn(draft, 'floorIdleKpa') ?? (rated === undefined ? undefined : rated / 2);
}

/** On the hottest day, 50 °C, the charging voltage is so far below that at 25, V; and clear of a battery at rest, 13 V. */
const CLEAR_OF_REST_V = 13 + 0.45 + 0.01;
/** Most tolerance with which charging is told from resting, V. */
const widest = (draft: Draft): number => (numberIn(draft, 'charging.setpointV') ?? 14) - CLEAR_OF_REST_V;

/** A gauge goes on so far beyond what the relief valve holds, kPa: it is read off to a tenth of a bar. */
const ABOVE_RELIEF_KPA = 10;

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

/** What switches it off every day, where that is no key. */
const usualControl: Readonly<Record<string, string>> = {
  generator: 'mode switch to off',
  marine: 'key off at the helm',
};

/** Figures of the calculations and margins of the trade, asked for only where everything is. */
export const restQuestions: readonly Question[] = [
  {
    kind: 'words',
    id: 'stopControl',
    ask: 'What switches it off every day, as it is called out',
    usual: 'seen',
    fields: ['stopControl'],
    tier: 'rest',
    longest: 60,
    when: draft => textIn(draft, 'use') !== 'vehicle',
    propose: draft => assumed(usualControl[textIn(draft, 'use') ?? ''] ?? 'key off'),
  },
  {
    kind: 'words',
    id: 'jacketHeater',
    ask: 'Its jacket heater: where it is switched or unplugged',
    usual: 'seen',
    fields: ['jacketHeater'],
    tier: 'rest',
    longest: 60,
    orNone: true,
    // Hardly any standby set is without.
    propose: draft => assumed(textIn(draft, 'use') === 'generator' ? 'plug of the jacket heater' : null),
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
      return computed(least, 'SAE J300', ['oil.grades', 'oil.runningC']);
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
  rest('starter.limitC', 'temperature', [100, 250], always(140), {
    because: 'so hot every winding may get, and none hotter',
  }),
  rest('starter.ratedAmbientC', 'temperature', [10, 50], always(25), {
    because: 'a limit for a frosty day allows no full crank on any other',
  }),
  rest('starter.timeConstantS', 'time', [60, 1200], always(400), {
    because: 'a starter that has cranked is cool after minutes, not after seconds or hours',
  }),
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
        return relief === undefined || typeof value !== 'number' || value >= relief + ABOVE_RELIEF_KPA
          ? null
          : `The gauge has to reach beyond where the relief valve opens; allowed: ${bars(relief + ABOVE_RELIEF_KPA, draft)} or more.`;
      },
    },
  ),
  rest(
    'oilPressure.showsKpa',
    'pressure',
    [1, 300],
    draft => {
      const most = mostShowsKpa(draft);
      return most === undefined ? undefined : assumed(Math.min(70, Math.round(0.7 * most)));
    },
    {
      check: (value, draft) => {
        const most = mostShowsKpa(draft);
        return most === undefined || typeof value !== 'number' || value <= most
          ? null
          : `An engine that is well would seem to lose its pressure at idle; allowed: ${bars(most, draft)} or less.`;
      },
    },
  ),
  rest('idle.spreadMaxRpm', 'speed', [10, 300], always(40)),
  rest(
    'charging.toleranceV',
    'voltage',
    [0.05, 0.6],
    draft => assumed(clamp(downToTenths(widest(draft)), 0.05, 0.5)),
    {
      check: (value, draft) =>
        typeof value !== 'number' || value <= widest(draft)
          ? null
          : 'On a hot day nobody could tell from the voltage whether it charges; allowed: less.',
    },
  ),
  // 12.4 V is where a battery is charged, not where it is full: it is read again after the cranks, and has to start.
  rest('charging.minStateOfCharge', 'share', [0.5, 0.75], always(0.7), {
    because: 'with less it may not start, and a good one that has cranked shows no more',
  }),
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
