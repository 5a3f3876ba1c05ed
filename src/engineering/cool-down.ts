import { type Given, type Range, take } from './checks.ts';
import { curveTowards } from './first-order-family.ts';
import { fitFirstOrder } from './first-order-fit.ts';
import { gather } from './first-order-points.ts';
import { type Reading, refuseReadings, spanS } from './readings.ts';
import { fail, ok, type Result, type Rule } from './result.ts';
import { withoutSpikes } from './spikes.ts';
import { type TimeEstimate, timeLeft, timeToReach } from './time-to-reach.ts';

/** What the readings after key-off say of the cooling. */
export type CoolDown =
  | { readonly state: 'cool' }
  /** Still climbing after key-off, or only just past the peak: there is no estimate yet. */
  | { readonly state: 'noEstimateYet'; readonly peakC: number; readonly lookAgainS: number }
  | {
      readonly state: 'cooling';
      readonly peakC: number;
      readonly tauS: number;
      /** When the recheck temperature is reached, on the readings' clock. */
      readonly reached: TimeEstimate;
      /** The same, counted from the last reading. */
      readonly left: TimeEstimate;
      /** Seconds after the last reading at which to look again. */
      readonly lookAgainS: number;
    };

const RULE: Rule = {
  id: 'newton-cooling',
  source:
    "Newton's law of cooling T = Ta + (T0 - Ta) exp(-t / tau) (closed form), least squares, 95 % interval",
  validity:
    'engine standing still in unchanging air; an estimate from 5 readings over 2 min after the peak, 2 K below it',
};

const COOLANT_C: Range = { min: -60, max: 150, unit: 'degC' };
const AMBIENT_C: Range = { min: -60, max: 60, unit: 'degC' };
const RECHECK_C: Range = { min: 20, max: 60, unit: 'degC' };
const LEAST_ABOVE_AMBIENT_K = 2;

const RESOLUTION_K = 1;
const LEAST_SPIKE_K = 5;
const LEAST_READINGS = 5;
const LEAST_SPAN_S = 120;
const LEAST_FALL_K = 2;

/** A hot engine is looked at again at least this often, whatever the estimate says. */
const LONGEST_UNWATCHED_S = 600;
const SHORTEST_WAIT_S = 60;

/** Seconds at least until it is at `recheckC`: what cools falls ever slower, so never faster than between the last two. */
function earliestS(falling: readonly Reading[], recheckC: number): number {
  const [before, last] = [falling.at(-2), falling.at(-1)];
  if (!before || !last) return 0;
  const rateKPerS = (before.value - last.value + RESOLUTION_K) / (last.timeS - before.timeS);
  return rateKPerS > 0 ? Math.max(0, last.value - recheckC) / rateKPerS : LONGEST_UNWATCHED_S;
}

/** Cool readings so far apart, s, are two looks at the gauge, and no needle that hangs or lags. Our own choice. */
export const COOL_APART_S = SHORTEST_WAIT_S;

/**
 * Seconds since which every reading has been at `recheckC` (degC) or below, up to the last; null where that one is not.
 * It counts as cool from `COOL_APART_S` on: then two looks, so far apart, both say so.
 */
export function coolForS(coolant: readonly Reading[], recheckC: number): number | null {
  const first = coolant.slice(coolant.findLastIndex(({ value }) => !(value <= recheckC)) + 1).at(0);
  const last = coolant.at(-1);
  return first && last ? last.timeS - first.timeS : null;
}

const wait = (seconds: number) => Math.min(LONGEST_UNWATCHED_S, Math.max(SHORTEST_WAIT_S, seconds));

/**
 * Estimates when a stopped engine will have cooled to `recheck` (degC, 20 to 60) in air at `ambient` (degC, -60
 * to 60), and when to look again: at the earliest time at which it may be cool, yet at least every 10 minutes
 * (common practice, no published source).
 *
 * Readings are coolant temperatures after key-off (degC, -60 to 150), in order of time; those before the peak of
 * the heat soak are left out. It counts as cool only when the last two readings both say so, with a minute of cool
 * readings behind them (`coolForS`). Issues: an input missing or out of range; `contradictory` for a recheck temperature
 * that the air never lets it reach (less than 2 K above the ambient) and for times that run backwards; `tooLittleData`
 * for fewer than two readings.
 */
export function estimateCoolDown(
  coolant: readonly Reading[],
  ambient: Given,
  recheck: Given,
): Result<CoolDown> {
  const given = take({ ambientC: [ambient, AMBIENT_C], recheckC: [recheck, RECHECK_C] });
  if (!given.ok) return given;
  const { ambientC, recheckC } = given.values;
  if (recheckC < ambientC + LEAST_ABOVE_AMBIENT_K) {
    return fail('contradictory', 'recheckC', {
      given: recheckC,
      allowed: `at least ${LEAST_ABOVE_AMBIENT_K} K above ambientC, ${ambientC} degC`,
    });
  }
  const refused = refuseReadings('coolantC', coolant, COOLANT_C);
  if (refused) return refused;
  const readings = withoutSpikes(coolant, LEAST_SPIKE_K);
  const lastS = readings.at(-1)?.timeS;
  if (lastS === undefined || readings.length < 2) {
    return fail('tooLittleData', 'coolantC', { given: `${readings.length} readings`, allowed: 'at least 2' });
  }
  const coolS = coolForS(readings, recheckC);
  if (coolS !== null && coolS >= COOL_APART_S) return ok({ state: 'cool' }, RULE);

  const peakC = readings.reduce((peak, { value }) => Math.max(peak, value), Number.NEGATIVE_INFINITY);
  const falling = readings.slice(readings.findLastIndex(({ value }) => value === peakC));
  const fallK = peakC - (falling.at(-1)?.value ?? peakC);
  const atLeastS = fallK > 0 ? earliestS(falling, recheckC) : 0;
  const noEstimateYet = ok<CoolDown>({ state: 'noEstimateYet', peakC, lookAgainS: wait(atLeastS) }, RULE);
  if (falling.length < LEAST_READINGS || spanS(falling) < LEAST_SPAN_S || fallK < LEAST_FALL_K) {
    return noEstimateYet;
  }
  const fit = fitFirstOrder(curveTowards(gather(falling), ambientC), falling, RESOLUTION_K);
  const reached = fit && timeToReach(fit, recheckC);
  if (!reached) return noEstimateYet;
  const left = timeLeft(reached, lastS);
  return ok(
    {
      state: 'cooling',
      peakC,
      tauS: fit.tauS,
      reached,
      left,
      lookAgainS: wait(Math.max(atLeastS, left.lowS)),
    },
    RULE,
  );
}
