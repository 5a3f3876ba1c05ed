import { fillTimeFactor } from '../engineering/oil-viscosity.ts';
import { primingTime } from '../engineering/priming.ts';
import { runningViscosities } from './oil-table.ts';
import { type Draft, gradesIn, numberIn, type QuestionId } from './question.ts';

/** A shop is seldom colder: with its oil at this temperature the engine still has to come by its pressure. */
const COLD_SHOP_C = -5;
/** Later cranks are shorter than the longest, as the starter is warm by then. */
const BURST_SHARE = 0.5;
/** Oil that is drawn in more slowly than so many times has no business in a cold shop. */
const SLOWEST_FACTOR = 5;

/** What stands for a figure that nobody gave: common practice, no published source. */
const usual = {
  'priming.pumpTurnsPerCrankTurn': 1.2,
  'priming.fillSpreadShare': 0.3,
  'priming.leastEfficiency': 0.55,
  'priming.greatestEfficiency': 0.9,
} as const satisfies Partial<Record<QuestionId, number>>;

/** The oil pump of an engine of one litre moves so much with a turn, and a share of the oil fills its galleries. */
const PUMP_SHARE = 0.0072;
const GREATEST_PUMP_SHARE = 0.03;
const FILL_SHARE = 0.11;
const LEAST_FILL_SHARE = 0.02;

const clamp = (value: number, min: number, max: number) => Math.min(max, Math.max(min, value));
const rough = (value: number) => Number(value.toPrecision(2));
/** To two figures, on the safe side. */
const roughUp = (value: number) => {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((Math.ceil(value / step - 1e-9) * step).toPrecision(2));
};
const roughDown = (value: number) => {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((Math.floor(value / step + 1e-9) * step).toPrecision(2));
};

const figure = (draft: Draft, id: keyof typeof usual): number => numberIn(draft, id) ?? usual[id];

/** How much longer oil takes in a cold shop than warm oil does. */
function coldFactor(draft: Draft, fullFlowViscosityMm2S: number): number {
  const viscosityMm2S = runningViscosities(gradesIn(draft), COLD_SHOP_C).at(-1);
  const factor = fillTimeFactor({ viscosityMm2S, fullFlowViscosityMm2S });
  return factor.ok ? factor.value : 1;
}

/** Least viscosity up to which the pump has to draw oil in fully, mm2/s; undefined where no grade is known. */
export function leastFullFlow(draft: Draft): number | undefined {
  const thickest = runningViscosities(gradesIn(draft), COLD_SHOP_C).at(-1);
  return thickest === undefined ? undefined : roughUp(thickest / SLOWEST_FACTOR);
}

/** What a step of the chain takes for granted: an engine with this pump and this fill. */
interface Oiling {
  readonly pumpL: number;
  readonly fillL: number;
}

/**
 * By how many times the starter may turn longer, in all its bursts, than the oil can take to the gauge at the most:
 * below 1 an engine that is well is given up. Undefined while figures are missing.
 */
function reserve(draft: Draft, { pumpL, fillL }: Oiling): number | undefined {
  const [crankingRpm, burstS, bursts] = [
    numberIn(draft, 'starter.crankingRpm'),
    numberIn(draft, 'starter.longestBurstS'),
    numberIn(draft, 'starter.maxBursts'),
  ];
  if (crankingRpm === undefined || burstS === undefined || bursts === undefined) return undefined;
  const leastEfficiency = figure(draft, 'priming.leastEfficiency');
  const time = primingTime({
    pumpLitrePerTurn: pumpL,
    pumpTurnsPerCrankTurn: figure(draft, 'priming.pumpTurnsPerCrankTurn'),
    crankingRpm,
    fillLitres: fillL,
    fillSpreadShare: figure(draft, 'priming.fillSpreadShare'),
    leastEfficiency,
    greatestEfficiency: Math.max(leastEfficiency, figure(draft, 'priming.greatestEfficiency')),
    viscosityFactor: clamp(coldFactor(draft, numberIn(draft, 'oil.fullFlowViscosityMm2S') ?? 1500), 1, 1000),
    giveUpMultiple: 3,
  });
  return time.ok ? (BURST_SHARE * burstS * bursts) / time.value.latestS : undefined;
}

/** The least that the galleries can hold, litre. */
export const leastFillL = (draft: Draft): number =>
  Math.max(0.01, roughUp(LEAST_FILL_SHARE * (numberIn(draft, 'oil.capacityL') ?? 1)));
/** The most: half of the oil. */
export const mostFillL = (draft: Draft): number => 0.5 * (numberIn(draft, 'oil.capacityL') ?? 1);

const usualFillL = (draft: Draft) =>
  clamp(rough(FILL_SHARE * (numberIn(draft, 'oil.capacityL') ?? 1)), leastFillL(draft), mostFillL(draft));

/** What the pump moves with each turn, litre: as usual for the size, and enough for the cranks that are allowed. */
export function usualPumpL(draft: Draft): number | undefined {
  const size = numberIn(draft, 'engine.displacementL');
  if (size === undefined) return undefined;
  const pumpL = clamp(rough(PUMP_SHARE * size), 0.001, 1);
  const times = reserve(draft, { pumpL, fillL: usualFillL(draft) }) ?? 1;
  return times >= 1 ? pumpL : clamp(roughUp(pumpL / times), 0.001, 1);
}

/** What fills the galleries, litre: as usual for the oil that it holds, and no more than the pump moves in time. */
export function usualGalleryL(draft: Draft): number | undefined {
  const pumpL = numberIn(draft, 'priming.pumpLitrePerTurn');
  if (pumpL === undefined || numberIn(draft, 'oil.capacityL') === undefined) return undefined;
  const fillL = usualFillL(draft);
  const times = reserve(draft, { pumpL, fillL }) ?? 1;
  return times >= 1 ? fillL : Math.max(leastFillL(draft), roughDown(fillL * times));
}

/** Least number of bursts in which oil can come to the gauge of an engine of this size at all. */
export function leastBursts(draft: Draft): number {
  const pumpL = clamp(GREATEST_PUMP_SHARE * (numberIn(draft, 'engine.displacementL') ?? 1), 0.001, 1);
  const inOne = reserve({ ...draft, 'starter.maxBursts': 1 }, { pumpL, fillL: leastFillL(draft) });
  return inOne === undefined ? 1 : Math.max(1, Math.ceil(1 / inOne - 1e-9));
}

/**
 * By how many times the starter may turn longer than the oil takes, with what was answered and the rest as usual: the
 * pump has to fill at least the smallest galleries.
 */
export const reserveWith = (draft: Draft): number | undefined => {
  const pumpL = numberIn(draft, 'priming.pumpLitrePerTurn');
  return pumpL === undefined
    ? undefined
    : reserve(draft, { pumpL, fillL: numberIn(draft, 'priming.fillLitres') ?? leastFillL(draft) });
};

/** Least multiple of the expected time at which cranking is given up, so that no engine that is well is given up. */
export function leastGiveUp(draft: Draft): number {
  const least = figure(draft, 'priming.leastEfficiency');
  const greatest = Math.max(least, figure(draft, 'priming.greatestEfficiency'));
  const slowest = ((1 + figure(draft, 'priming.fillSpreadShare')) * (least + greatest)) / 2 / least;
  return Math.ceil(slowest * 10 - 1e-9) / 10;
}
