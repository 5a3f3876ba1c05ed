import { median } from 'simple-statistics';
import { type Given, type Range, take } from './checks.ts';
import { anyCurve, curveTowards } from './first-order-family.ts';
import { type FirstOrderFit, fitFirstOrder, searchRate } from './first-order-fit.ts';
import { gather } from './first-order-points.ts';
import { type Reading, refuseReadings, spanS } from './readings.ts';
import { fail, judge, ok, type Result, type Rule, type Verdict } from './result.ts';
import { findLateStart, findSlopeBreak, type SlopeBreak } from './slope-break.ts';
import { withoutSpikes } from './spikes.ts';
import { type TimeEstimate, timeLeft, timeToReach } from './time-to-reach.ts';

/** The thermostat of the engine profile. */
interface Thermostat {
  /** Begins to open, degC. */
  readonly opensC?: Given;
  /** Stands fully open, degC. */
  readonly fullyOpenC?: Given;
  /** How far either may be off before it is suspect, K. */
  readonly toleranceK?: Given;
}

/** T = finalC - (finalC - startC) exp(-(t - fromS) / tauS). */
interface HeatingCurve {
  readonly fromS: number;
  readonly startC: number;
  readonly finalC: number;
  readonly tauS: number;
  /** Standard deviation of the readings about the curve. */
  readonly scatterK: number;
}

interface Seen {
  /** Coolant now: median of the last three readings, degC. */
  readonly coolantC: number;
  /** Single readings set aside because they jumped away and back. */
  readonly setAside: number;
}

/** What the readings say of the warm-up. Times are on the readings' clock. */
export type WarmUp = Seen &
  (
    | {
        readonly state: 'warming';
        readonly curve: HeatingCurve;
        readonly thermostat: TimeEstimate;
        /** From the last reading; never negative. */
        readonly left: TimeEstimate;
      }
    /** Warm enough to open, the bend of an opening thermostat not yet seen. */
    | { readonly state: 'atThermostat' }
    | { readonly state: 'opened'; readonly opening: SlopeBreak }
    /** Levels off, or bends, below the opening temperature: open, or too little load for this cold. */
    | { readonly state: 'stuckOpenSuspected'; readonly levelsOffC: number }
    /** Hotter than fully open by more than the tolerance. */
    | { readonly state: 'stuckShutSuspected' }
  );

const RULE: Rule = {
  id: 'warm-up-first-order',
  source:
    'first-order heating T = Tinf - (Tinf - T0) exp(-t / tau) (closed form), least squares, profile-likelihood ' +
    '95 % interval; checked against NIST StRD Misra1a and BoxBOD',
  validity:
    'steady speed and load; at least 6 readings over 60 s with a rise of 5 K and of 6 times their scatter',
};

const COOLANT_C: Range = { min: -60, max: 150, unit: 'degC' };
const OPENING_C: Range = { min: 40, max: 120, unit: 'degC' };
const TOLERANCE_K: Range = { min: 0.5, max: 20, unit: 'K' };

const LEAST_READINGS = 6;
const LEAST_SPAN_S = 60;
const LEAST_RISE_K = 5;
const LEAST_RISE_PER_SCATTER = 6;
/** Gauges are read, and the bus reports, in whole degrees (J1939-71 SPN 110: 1 degC per bit). */
const RESOLUTION_K = 1;
/** Smallest jump taken for a misheard number. */
const LEAST_SPIKE_K = 5;
/** An opening thermostat leaves the last readings at least this far below the curve before it. */
const LEAST_SHORTFALL_K = 2;

/**
 * Reads a warm-up: time until the thermostat opens with its 95 % interval, opening seen, stuck open or stuck
 * shut suspected.
 *
 * Readings are coolant temperatures in degC (-60 to 150), in order of time, evenly spaced or not. Issues: an
 * input missing or out of range; `contradictory` for times that run backwards or a thermostat that is fully
 * open before it opens; `tooLittleData` where no curve can be claimed, and where the curve does not yet tell
 * whether it will reach the thermostat.
 */
export function readWarmUp(coolant: readonly Reading[], thermostat: Thermostat): Result<WarmUp> {
  const given = checkThermostat(thermostat);
  if (!given.ok) return given;
  const { opensC, fullyOpenC, toleranceK } = given.values;
  const refused = refuseReadings('coolantC', coolant, COOLANT_C);
  if (refused) return refused;
  const readings = withoutSpikes(coolant, LEAST_SPIKE_K);
  const last = readings.at(-1);
  if (!last) return fail('missing', 'coolantC', { allowed: 'at least 6 readings' });
  const seen: Seen = {
    coolantC: median(readings.slice(-3).map(({ value }) => value)),
    setAside: coolant.length - readings.length,
  };
  if (seen.coolantC >= fullyOpenC + toleranceK) return ok({ ...seen, state: 'stuckShutSuspected' }, RULE);

  const rising = sinceItRises(readings);
  const fit = fitTo(rising);
  if (!fit || rising.length < LEAST_READINGS || spanS(rising) < LEAST_SPAN_S) {
    return tooLittle(`${rising.length} readings over ${Math.round(spanS(rising))} s`);
  }
  const opening = findSlopeBreak(fit, RESOLUTION_K, LEAST_SHORTFALL_K);
  if (opening && Math.max(opening.value, seen.coolantC) >= opensC - toleranceK) {
    return ok({ ...seen, state: 'opened', opening }, RULE);
  }
  if (seen.coolantC >= opensC) return ok({ ...seen, state: 'atThermostat' }, RULE);

  const riseK = last.value - (rising[0]?.value ?? last.value);
  // A break is scatter explained already; without one the scatter about the whole curve counts.
  const scatterK = opening ? 0 : fit.deviation;
  if (riseK < Math.max(LEAST_RISE_K, LEAST_RISE_PER_SCATTER * scatterK)) {
    return tooLittle(`a rise of ${riseK.toFixed(1)} K`);
  }
  if (opening) return ok({ ...seen, state: 'stuckOpenSuspected', levelsOffC: opening.value }, RULE);
  if (levelsOffBelow(fit, opensC - toleranceK)) {
    return ok({ ...seen, state: 'stuckOpenSuspected', levelsOffC: fit.finalValue }, RULE);
  }
  const reached = timeToReach(fit, opensC);
  if (!reached) return tooLittle('readings that do not yet show whether the thermostat will be reached');
  return ok(
    {
      ...seen,
      state: 'warming',
      curve: curveOf(fit),
      thermostat: reached,
      left: timeLeft(reached, last.timeS),
    },
    RULE,
  );
}

const fitTo = (readings: readonly Reading[]): FirstOrderFit | undefined =>
  fitFirstOrder(anyCurve(gather(readings)), readings, RESOLUTION_K);

/** Without the beginning during which the metal took up the heat before the gauge showed any. */
function sinceItRises(readings: readonly Reading[]): readonly Reading[] {
  const fit = fitTo(readings);
  const startS = fit && findLateStart(fit, RESOLUTION_K);
  return startS === undefined ? readings : readings.filter(({ timeS }) => timeS >= startS);
}

const curveOf = (fit: FirstOrderFit): HeatingCurve => ({
  fromS: fit.family.points.originS,
  startC: fit.startValue,
  finalC: fit.finalValue,
  tauS: fit.tauS,
  scatterK: fit.deviation,
});

const tooLittle = (given: string) => fail('tooLittleData', 'coolantC', { given, allowed: RULE.validity });

function checkThermostat({ opensC, fullyOpenC, toleranceK }: Thermostat) {
  const given = take({
    opensC: [opensC, OPENING_C],
    fullyOpenC: [fullyOpenC, OPENING_C],
    toleranceK: [toleranceK, TOLERANCE_K],
  });
  if (!given.ok || given.values.fullyOpenC > given.values.opensC) return given;
  return fail('contradictory', 'fullyOpenC', {
    given: given.values.fullyOpenC,
    allowed: `above opensC, ${given.values.opensC} degC`,
  });
}

/** Whether no curve that still reaches `valueC` in the end can be told from the best one. */
function levelsOffBelow(fit: FirstOrderFit, valueC: number): boolean {
  if (fit.finalValue >= valueC || fit.tauS > fit.family.points.spanS) return false;
  const reaching = curveTowards(fit.family.points, valueC);
  const { squares } = searchRate(each => reaching.best(each).squares, fit.family.points.spanS, 1e-3);
  return squares > fit.plausibleSquares;
}

const HOLD_RULE: Rule = {
  id: 'warm-up-hold',
  source: 'common practice, no published source: 3 to 5 minutes at idle before load or speed',
  validity: 'a first start; the profile may ask for longer',
};

/** Holds the seconds run at idle before the first sweep against the hold asked for (180 to 300 s usual). */
export function judgeWarmUpHold(run: Given, hold: Given): Result<Verdict> {
  const given = take({
    runS: [run, { min: 0, max: 86_400, unit: 's' }],
    holdS: [hold, { min: 180, max: 3600, unit: 's' }],
  });
  if (!given.ok) return given;
  return ok(judge(given.values.runS, 's', { min: given.values.holdS }, HOLD_RULE), HOLD_RULE);
}
