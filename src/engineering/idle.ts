import { extent, mean } from 'simple-statistics';
import { type Given, type Range, take } from './checks.ts';
import { type Reading, refuseReadings, spanS } from './readings.ts';
import { fail, judge, ok, type Result, type Rule, type Verdict } from './result.ts';
import { fitLine } from './statistics.ts';

/** What the engine profile asks of the idle. Speeds in revolutions per minute. */
interface IdleSpec {
  readonly minRpm?: Given;
  readonly maxRpm?: Given;
  /** Most that the speed may scatter about its trend, one standard deviation. */
  readonly maxScatterRpm?: Given;
  /** Most that the trend may climb or sink over the window. */
  readonly maxDriftRpm?: Given;
  /** Length of the window that is judged, up to the last reading, seconds. */
  readonly windowS?: Given;
}

export type IdleState = 'inRangeSteady' | 'outOfRange' | 'hunting' | 'falling' | 'rising';

interface Idle {
  readonly state: IdleState;
  readonly meanRpm: number;
  /** Standard deviation about the trend. */
  readonly scatterRpm: number;
  readonly peakToPeakRpm: number;
  readonly slopeRpmPerS: number;
  /** Trend over the window: end less beginning. */
  readonly driftRpm: number;
  /** The mean, the last reading, the scatter and the drift held against their limits, in this order. */
  readonly verdicts: readonly Verdict[];
}

const RULE: Rule = {
  id: 'idle-trend',
  source:
    'least-squares line (closed form), checked against NIST StRD Norris; limits from the engine profile',
  validity: 'at least 5 readings that cover the window with no gap over half of it',
};

const SPEED_RPM: Range = { min: 0, max: 8000, unit: 'rpm' };
const LIMIT_RPM: Range = { min: 1, max: 8000, unit: 'rpm' };
const WINDOW_S: Range = { min: 5, max: 600, unit: 's' };
const LEAST_READINGS = 5;
/** Share of the window that the readings must span; spoken readings rarely end exactly on time. */
const LEAST_COVER = 0.8;
const MOST_GAP = 0.5;

/**
 * Judges the idle over the last `windowS` seconds of readings: in range and steady, or what is wrong first
 * (out of range before hunting before drifting, so that a swing is never mistaken for a trend).
 *
 * Readings in rpm (0 to 8000), in order of time. Issues: an input missing or out of range; `contradictory`
 * for limits the wrong way round or times that run backwards; `tooLittleData` for fewer than 5 readings, or
 * readings that leave more than a fifth of the window, or a gap of more than half of it, uncovered.
 */
export function judgeIdle(speedRpm: readonly Reading[], spec: IdleSpec): Result<Idle> {
  const given = checkSpec(spec);
  if (!given.ok) return given;
  const { minRpm, maxRpm, maxScatterRpm, maxDriftRpm, windowS } = given.values;
  const refused = refuseReadings('speedRpm', speedRpm, SPEED_RPM);
  if (refused) return refused;
  const endS = speedRpm.at(-1)?.timeS ?? 0;
  const window = speedRpm.filter(({ timeS }) => timeS >= endS - windowS);
  const times = window.map(({ timeS }) => timeS - endS);
  const speeds = window.map(({ value }) => value);
  const line = fitLine(times, speeds);
  const gapS = Math.max(0, ...times.slice(1).map((timeS, i) => timeS - (times[i] ?? timeS)));
  const covered = spanS(window) >= LEAST_COVER * windowS && gapS <= MOST_GAP * windowS;
  if (!line || window.length < LEAST_READINGS || !covered) {
    return fail('tooLittleData', 'speedRpm', {
      given: `${window.length} readings over ${spanS(window).toFixed(1)} s, longest gap ${gapS.toFixed(1)} s`,
      allowed: `${RULE.validity} of ${windowS} s`,
    });
  }
  const [leastRpm, mostRpm] = extent(speeds);
  const meanRpm = mean(speeds);
  const driftRpm = line.slope * spanS(window);
  const range = { min: minRpm, max: maxRpm };
  const inMean = judge(meanRpm, 'rpm', range, RULE);
  // A dying engine still has a fine mean: the latest speed must be in range as well.
  const inLast = judge(speeds.at(-1) ?? 0, 'rpm', range, RULE);
  const steady = judge(line.residualDeviation, 'rpm', { max: maxScatterRpm }, RULE);
  const level = judge(driftRpm, 'rpm', { min: -maxDriftRpm, max: maxDriftRpm }, RULE);
  let state: IdleState = 'inRangeSteady';
  if (!inMean.met || !inLast.met) state = 'outOfRange';
  else if (!steady.met) state = 'hunting';
  else if (!level.met) state = driftRpm < 0 ? 'falling' : 'rising';
  return ok(
    {
      state,
      meanRpm,
      scatterRpm: line.residualDeviation,
      peakToPeakRpm: mostRpm - leastRpm,
      slopeRpmPerS: line.slope,
      driftRpm,
      verdicts: [inMean, inLast, steady, level],
    },
    RULE,
  );
}

function checkSpec(spec: IdleSpec) {
  const given = take({
    minRpm: [spec.minRpm, LIMIT_RPM],
    maxRpm: [spec.maxRpm, LIMIT_RPM],
    maxScatterRpm: [spec.maxScatterRpm, LIMIT_RPM],
    maxDriftRpm: [spec.maxDriftRpm, LIMIT_RPM],
    windowS: [spec.windowS, WINDOW_S],
  });
  if (!given.ok || given.values.maxRpm > given.values.minRpm) return given;
  const { minRpm, maxRpm } = given.values;
  return fail('contradictory', 'maxRpm', { given: maxRpm, allowed: `above minRpm, ${minRpm} rpm` });
}
