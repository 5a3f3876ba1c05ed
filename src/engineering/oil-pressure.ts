import { type Given, type Range, refuse, take } from './checks.ts';
import { type Curve, interpolate } from './curve.ts';
import { type Reading, refuseReadings } from './readings.ts';
import { fail, judge, ok, type Result, type Rule, type Verdict } from './result.ts';

/** Least oil pressure by engine speed, at one oil temperature. */
interface PressureFloorRow {
  readonly oilC: number;
  /** `[speed in rpm, least gauge pressure in kPa]`, speeds rising, pressures never falling. */
  readonly floorKpa: Curve;
}

/** The floor of the engine profile: rows by rising oil temperature; one row holds for any temperature up to it. */
type PressureFloor = readonly PressureFloorRow[];

const FLOOR_RULE: Rule = {
  id: 'oil-pressure-floor',
  source: 'table of the engine profile, straight lines between its points (closed form)',
  validity: 'speeds of the table; oil no hotter than its hottest row',
};

const PRESSURE_KPA: Range = { min: 0, max: 2000, unit: 'kPa' };
const SPEED_RPM: Range = { min: 0, max: 8000, unit: 'rpm' };
const OIL_C: Range = { min: -60, max: 180, unit: 'degC' };

/**
 * Least oil pressure (kPa gauge) at a speed (rpm) and oil temperature (degC). Colder than the coldest row the
 * coldest row holds, since thicker oil only gives more pressure; hotter than the hottest row is `outOfRange`,
 * since there the floor would be a guess. Issues also for speeds outside the table, and `contradictory` for a
 * table that is not in order.
 */
export function oilPressureFloor(speed: Given, oil: Given, table: PressureFloor): Result<number> {
  const given = take({ speedRpm: [speed, SPEED_RPM], oilC: [oil, OIL_C] });
  if (!given.ok) return given;
  const { speedRpm, oilC } = given.values;
  const refused = refuseTable(table);
  if (refused) return refused;
  const bySpeed = table.map(({ oilC: rowC, floorKpa }) => [rowC, interpolate(floorKpa, speedRpm)] as const);
  const byOil: (readonly [number, number])[] = [];
  for (const [rowC, kpa] of bySpeed) {
    if (kpa === undefined) {
      return fail('outOfRange', 'speedRpm', {
        given: speedRpm,
        allowed: 'the speeds of every row of the table',
      });
    }
    byOil.push([rowC, kpa]);
  }
  const coldestC = byOil[0]?.[0] ?? oilC;
  const floorKpa = interpolate(byOil, Math.max(oilC, coldestC));
  return floorKpa === undefined
    ? fail('outOfRange', 'oilC', { given: oilC, allowed: `up to ${byOil.at(-1)?.[0]} degC, the hottest row` })
    : ok(floorKpa, FLOOR_RULE);
}

/** Holds an oil pressure (kPa gauge, 0 to 2000) against the floor at its speed and oil temperature. */
export function judgeOilPressure(
  pressure: Given,
  at: { readonly speedRpm?: Given; readonly oilC?: Given },
  table: PressureFloor,
): Result<Verdict> {
  const given = take({ pressureKpa: [pressure, PRESSURE_KPA] });
  if (!given.ok) return given;
  const floor = oilPressureFloor(at.speedRpm, at.oilC, table);
  return floor.ok
    ? ok(judge(given.values.pressureKpa, 'kPa', { min: floor.value }, FLOOR_RULE), FLOOR_RULE)
    : floor;
}

function refuseTable(table: PressureFloor) {
  if (table.length === 0) return fail('missing', 'floorKpa', { allowed: 'at least one row' });
  let before: PressureFloorRow | undefined;
  for (const row of table) {
    const name = `floorKpa at ${row.oilC} degC`;
    const refused = refuse({ oilC: [row.oilC, OIL_C] });
    if (refused) return refused;
    if (before && row.oilC <= before.oilC)
      return fail('contradictory', name, { allowed: 'rows by rising oilC' });
    if (row.floorKpa.length === 0) return fail('missing', name, { allowed: 'at least one point' });
    for (const [i, [speedRpm, kpa]] of row.floorKpa.entries()) {
      const bad = refuse({ [`${name}, speed`]: [speedRpm, SPEED_RPM], [name]: [kpa, PRESSURE_KPA] });
      if (bad) return bad;
      const [lastRpm, lastKpa] = row.floorKpa[i - 1] ?? [-1, 0];
      if (speedRpm <= lastRpm || kpa < lastKpa) {
        return fail('contradictory', name, {
          given: `${kpa} kPa at ${speedRpm} rpm`,
          allowed: 'speeds that rise, with floors that never fall',
        });
      }
    }
    before = row;
  }
  return undefined;
}

type FirstPressureState =
  /** There in time, and still there. */
  | 'reached'
  /** Not there yet, time left. */
  | 'waiting'
  /** Not there in time: stop the engine. */
  | 'late'
  /** There, then lost again: stop the engine. */
  | 'lost';

interface FirstPressure {
  readonly state: FirstPressureState;
  /** Seconds after first fire when the pressure was there, or that have passed without it. */
  readonly verdict: Verdict;
}

const FIRST_RULE: Rule = {
  id: 'first-oil-pressure',
  source: 'seconds allowed by the engine profile; about 10 to 15 s is common practice, no published source',
  validity: 'gauge readings timed from first fire',
};

/**
 * Judges the oil pressure after first fire: `leastKpa` (gauge) must show within `withinS` seconds and stay.
 * `sinceFire` holds pressures in kPa with `timeS` counted from first fire; `now` is the time now on the same
 * count, so that silence is late and never in time. A reading later than `now` is `contradictory`.
 */
export function judgeFirstPressure(
  sinceFire: readonly Reading[],
  now: Given,
  limits: { readonly leastKpa?: Given; readonly withinS?: Given },
): Result<FirstPressure> {
  const given = take({
    nowS: [now, { min: 0, max: 3600, unit: 's' }],
    leastKpa: [limits.leastKpa, { ...PRESSURE_KPA, min: 1 }],
    withinS: [limits.withinS, { min: 1, max: 60, unit: 's' }],
  });
  if (!given.ok) return given;
  const { nowS, leastKpa, withinS } = given.values;
  const refused = refuseReadings('oilPressureKpa', sinceFire, PRESSURE_KPA);
  if (refused) return refused;
  const last = sinceFire.at(-1);
  if (last && last.timeS > nowS) {
    return fail('contradictory', 'oilPressureKpa', {
      given: `a reading at ${last.timeS} s`,
      allowed: `up to ${nowS} s`,
    });
  }
  const first = sinceFire.find(({ timeS, value }) => timeS >= 0 && value >= leastKpa);
  const verdict = judge(first?.timeS ?? nowS, 's', { max: withinS }, FIRST_RULE);
  let state: FirstPressureState = 'late';
  if (verdict.met && !first) state = 'waiting';
  else if (verdict.met) state = last && last.value >= leastKpa ? 'reached' : 'lost';
  return ok({ state, verdict }, FIRST_RULE);
}
