import { median } from 'simple-statistics';
import { type Given, type Range, refuse } from './checks.ts';
import { type Reading, refuseReadings, spanS } from './readings.ts';
import { fail, ok, type Result, type Rule } from './result.ts';

const RULE: Rule = {
  id: 'warm-up-pace',
  source: 'slope of Theil and Sen: the median of the slopes between all pairs of readings (closed form)',
  validity: 'at least 3 readings over 60 s below the opening of the thermostat, rising',
};

const COOLANT_C: Range = { min: -60, max: 150, unit: 'degC' };
const OPENING_C: Range = { min: 40, max: 120, unit: 'degC' };
const FEWEST = 3;
const SHORTEST_S = 60;
const STEP_K = 10;

/**
 * Seconds that the coolant takes for 10 K on its way to the thermostat, from readings in degC. What is read from the
 * opening (`opensC`, degC) on is left out: there the radiator slows it. One odd reading changes little.
 *
 * @returns `tooLittleData` for fewer than 3 readings below, over less than 60 s, or without a rise
 */
export function tenKelvinS(readings: readonly Reading[], opensC: Given): Result<number> {
  const refused =
    refuse({ opensC: [opensC, OPENING_C] }) ?? refuseReadings('coolant degC', readings, COOLANT_C);
  if (refused) return refused;
  const opened = readings.findIndex(({ value }) => value >= (opensC ?? 0));
  const below = opened < 0 ? readings : readings.slice(0, opened);
  const slopes = below.flatMap((one, index) =>
    below
      .slice(index + 1)
      .filter(other => other.timeS > one.timeS)
      .map(other => (other.value - one.value) / (other.timeS - one.timeS)),
  );
  const pace = slopes.length === 0 ? 0 : median(slopes);
  if (below.length < FEWEST || spanS(below) < SHORTEST_S || pace <= 0)
    return fail('tooLittleData', 'readings', {
      given: `${below.length} readings over ${spanS(below)} s`,
      allowed: RULE.validity,
    });
  return ok(STEP_K / pace, RULE);
}
