import { type Draft, numberIn, type Question, rangeIn } from '../question.ts';
import { leastRatedRpm, leastReliefKpa, MOST_RPM } from '../speeds.ts';
import { always, assumed, bars, isFixed, isSwept, number, over } from './makers.ts';

/** No relief valve of a diesel opens later, and no bus shows more: common practice, no published source. */
const MOST_RELIEF_KPA = 1000;
/** So far above the floor a relief valve opens at least. */
const RELIEF_ABOVE_FLOOR = 1.15;

/** Least pressure at which the relief valve may open with these floors, kPa. */
const leastRelief = (draft: Draft): number =>
  Math.max(
    leastReliefKpa(draft) ?? 0,
    Math.ceil((numberIn(draft, 'floorRatedKpa') ?? 0) * RELIEF_ABOVE_FLOOR),
  );

/** Gauges are read to ten: in a narrower band hardly a reading lies. Common practice, no published source. */
const LEAST_BAND_RPM = 20;
const isNarrow = ([from, to]: readonly [number, number]) => to - from < LEAST_BAND_RPM;
const NARROW = `So narrow a band is hardly ever read off; allowed: ${LEAST_BAND_RPM} rpm from end to end, or more.`;

/** Idle, and the oil pressure below which it is stopped. */
export const speedAndPressureQuestions: readonly Question[] = [
  {
    kind: 'range',
    id: 'fixedRange',
    ask: 'Speed without load, from and to',
    measure: 'speed',
    min: 1100,
    max: 5000,
    whole: true,
    example: [1470, 1575],
    fields: ['idle.warm', 'idle.cold'],
    tier: 'manual',
    when: isFixed,
    why: 'its speed is judged by it',
    where: 'manual of the set: speed or frequency without load',
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
      if (isNarrow(range)) return NARROW;
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
    example: [650, 750],
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
      if (!range) return null;
      if (isNarrow(range)) return NARROW;
      if (rated === undefined || rated >= leastRatedRpm(range[1])) return null;
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
    example: [700, 900],
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
      if (isNarrow(cold)) return NARROW;
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
    propose: always(100, '1 bar (15 psi) at idle; common practice, no published source'),
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
    max: 700,
    fields: ['oilPressure.floor'],
    tier: 'manual',
    propose: draft => {
      const idle = numberIn(draft, 'floorIdleKpa') ?? 0;
      return {
        ...assumed(
          Math.max(250, idle + 50),
          '2.5 bar (36 psi) at rated speed; common practice, no published source',
        ),
        uses: [],
      };
    },
    check: (value, draft) => {
      const fault = over('floorIdleKpa', 'that at idle', 'pressure')(value, draft);
      if (fault !== null || typeof value !== 'number') return fault;
      const least = leastRelief({ ...draft, floorRatedKpa: value });
      return least <= MOST_RELIEF_KPA
        ? null
        : `Above this floor no relief valve leaves room for the sweeps; allowed: ${bars(Math.floor((value * MOST_RELIEF_KPA) / least), draft)} or less.`;
    },
  },
  number('oilPressure.reliefKpa', 'Oil relief valve opens at', 'pressure', [100, MOST_RELIEF_KPA], {
    because: 'no relief valve of a diesel opens later, and no bus shows more',
    propose: draft => {
      const usual = Math.ceil(Math.max(450, 1.1 * leastRelief(draft)) / 10);
      return assumed(Math.min(MOST_RELIEF_KPA, 10 * usual));
    },
    check: (value, draft) => {
      const least = leastRelief(draft);
      return typeof value !== 'number' || value >= least
        ? null
        : `Below these floors it would be open at every speed; allowed: ${bars(least, draft)} or more.`;
    },
  }),
  number('oilPressure.firstFireWithinS', 'Key off if no oil pressure within', 'time', [4, 30], {
    propose: always(8, 'less than the 10 to 15 s that are usual; common practice, no published source'),
  }),
];
