import { extent, sampleRankCorrelation } from 'simple-statistics';
import { type Given, type Range, refuse } from './checks.ts';
import { fail, judge, ok, type Result, type Rule, type Verdict } from './result.ts';
import { fitLine, spearmanCritical } from './statistics.ts';

/** Oil pressure (gauge) at one speed of a sweep. */
export interface SweepPoint {
  readonly speedRpm: number;
  readonly pressureKpa: number;
}

interface Sweep {
  /**
   * Whether the pressure rises with the speed; otherwise it stays flat or falls. `held` where the relief valve holds so
   * much of the sweep that too few points are left to show a rise, and none of these speaks against one.
   */
  readonly state: 'rises' | 'held' | 'flat' | 'falls';
  /** Spearman rank correlation held against what chance reaches in 5 % of cases. */
  readonly rank: Verdict;
  readonly slopeKpaPer1000Rpm: number;
  /** Points left out because the relief valve was holding the pressure. */
  readonly relieved: number;
}

const RULE: Rule = {
  id: 'oil-pressure-follows-speed',
  source:
    'Spearman rank correlation, one-sided 5 % critical values (Zar, Biostatistical Analysis); a gear pump ' +
    'delivers in proportion to speed until the relief valve opens (closed form)',
  validity: 'at least 5 points below the relief pressure over a speed range of a third of the lowest speed',
};

const HELD_RULE: Rule = {
  id: 'relief-valve-holds',
  source:
    'a pump that delivers more than the engine takes brings the pressure up to its relief valve, from some speed on ' +
    '(closed form)',
  validity:
    'at least 5 points over a speed range of a third of the lowest speed, those at the relief pressure being the fastest',
};

const SPEED_RPM: Range = { min: 1, max: 8000, unit: 'rpm' };
const PRESSURE_KPA: Range = { min: 0, max: 2000, unit: 'kPa' };
const LEAST_SPEED_RATIO = 4 / 3;
/**
 * A relief valve begins to open at this share of its rating: pressures from here up say nothing of the pump. Common
 * practice, no published source.
 */
export const RELIEF_OPENS_SHARE = 0.95;
const FEWEST = 5;

/** A correlation of 0.9 must not miss a critical value of 0.9 by what arithmetic loses. */
const round = (correlation: number): number => Math.round(correlation * 1e9) / 1e9;

/**
 * Judges whether the oil pressure follows the speed in a sweep, up or down, in any order. `reliefKpa` is the
 * relief pressure of the engine profile: points within 5 % of it, or above it, are left out; see `held` where that
 * leaves too few.
 * Issues: an input missing or out of range; `tooLittleData` for fewer than 5 points or too narrow a sweep.
 */
export function judgeSweep(points: readonly SweepPoint[], reliefKpa?: Given): Result<Sweep> {
  const relief = reliefKpa ?? PRESSURE_KPA.max;
  const refused = refuse({ reliefKpa: [relief, { ...PRESSURE_KPA, min: 50 }] }) ?? refusePoints(points);
  if (refused) return refused;
  const used = points.filter(({ pressureKpa }) => pressureKpa < RELIEF_OPENS_SHARE * relief);
  const speeds = used.map(({ speedRpm }) => speedRpm);
  const pressures = used.map(({ pressureKpa }) => pressureKpa);
  const critical = spearmanCritical(used.length);
  const line = fitLine(speeds, pressures);
  const [slowest, fastest] = speeds.length > 0 ? extent(speeds) : [0, 0];
  const held = judgeHeld(points, used);
  if (held) return held;
  if (critical === undefined || !line || fastest < LEAST_SPEED_RATIO * slowest) {
    return fail('tooLittleData', 'points', {
      given: `${used.length} points from ${slowest} to ${fastest} rpm`,
      allowed: RULE.validity,
    });
  }
  const [least, most] = extent(pressures);
  // A pressure that never moves has no ranks: that is no correlation, not an unknown one.
  const correlation = most > least ? round(sampleRankCorrelation(speeds, pressures)) : 0;
  const rank = judge(correlation, '', { min: critical }, RULE);
  let state: Sweep['state'] = 'flat';
  if (rank.met && line.slope > 0) state = 'rises';
  else if (rank.value <= -critical) state = 'falls';
  return ok(
    { state, rank, slopeKpaPer1000Rpm: line.slope * 1000, relieved: points.length - used.length },
    RULE,
  );
}

/**
 * A sweep of which the relief valve holds so much that fewer points than a rank needs are below it: good where the
 * held ones are the fastest, and the others rise as far as they go. `undefined` where it is no such sweep.
 */
function judgeHeld(points: readonly SweepPoint[], below: readonly SweepPoint[]): Result<Sweep> | undefined {
  if (points.length < FEWEST || below.length >= FEWEST || below.length === points.length) return undefined;
  const [slowest, fastest] = extent(points.map(({ speedRpm }) => speedRpm));
  if (fastest < LEAST_SPEED_RATIO * slowest) return undefined;
  const slowestHeld = Math.min(
    ...points.filter(point => !below.includes(point)).map(({ speedRpm }) => speedRpm),
  );
  const rising = below.toSorted((one, other) => one.speedRpm - other.speedRpm);
  // How far each point rises above the one before it; the step up to the relief valve rises in any case.
  const steps = rising.slice(1).map((point, index) => point.pressureKpa - (rising[index]?.pressureKpa ?? 0));
  const share = (steps.filter(step => step > 0).length + 1) / (steps.length + 1);
  const inOrder = rising.every(({ speedRpm }) => speedRpm < slowestHeld);
  const rank = judge(inOrder ? share : 0, '', { min: 1 }, HELD_RULE);
  return ok(
    {
      state: rank.met ? 'held' : 'flat',
      rank,
      slopeKpaPer1000Rpm: 0,
      relieved: points.length - below.length,
    },
    HELD_RULE,
  );
}

function refusePoints(points: readonly SweepPoint[]) {
  for (const [i, { speedRpm, pressureKpa }] of points.entries()) {
    const refused = refuse({
      [`point ${i + 1} speedRpm`]: [speedRpm, SPEED_RPM],
      [`point ${i + 1} pressureKpa`]: [pressureKpa, PRESSURE_KPA],
    });
    if (refused) return refused;
  }
  return undefined;
}
