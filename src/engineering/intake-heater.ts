import { type Given, located, okWithin, type Range, take } from './checks.ts';
import { interpolate } from './curve.ts';
import { fail, judge, ok, type Result, type Rule, type Verdict } from './result.ts';

/** A row of the profile's table: how long the heater works at this temperature. */
interface HeaterRow {
  readonly temperatureC?: Given;
  readonly seconds?: Given;
}

const TEMPERATURE_C: Range = { min: -60, max: 60, unit: 'degC' };
const WAIT_S: Range = { min: 0, max: 300, unit: 's' };
const LAMP_S: Range = { min: 0, max: 3600, unit: 's' };

const RULE: Rule = {
  id: 'intake-heater-wait',
  source: "The engine profile's table, straight lines between its rows: common practice, no published source",
  validity: 'from the coldest to the warmest row of the table; warmer still only if the last row waits 0 s',
};

/**
 * Seconds the wait-to-start lamp should stay on at this temperature (degC, of the sensor that the profile's
 * table is for). Refused: fewer than two rows (`tooLittleData`), rows not in order of rising temperature or a
 * wait that grows with warmth (`contradictory`), a temperature the table does not reach (`outOfRange`).
 */
export function heaterWait(table: readonly HeaterRow[], temperature: Given): Result<number> {
  const given = take({ temperatureC: [temperature, TEMPERATURE_C] });
  if (!given.ok) return given;
  const checked = checkTable(table);
  if (!checked.ok) return checked;
  const { temperatureC } = given.values;
  const warmest = checked.value.at(-1);
  if (warmest !== undefined && warmest[1] === 0 && temperatureC > warmest[0]) return ok(0, RULE);
  const seconds = interpolate(checked.value, temperatureC);
  if (seconds === undefined) {
    const allowed = `${checked.value[0]?.[0]} to ${warmest?.[0]} degC, as far as the table goes`;
    return fail('outOfRange', 'temperatureC', { given: temperatureC, allowed });
  }
  return okWithin(seconds, WAIT_S, RULE, 'temperatureC');
}

/**
 * The time the lamp has been on so far, or was on, against the expected wait plus a tolerance in s: not met
 * as soon as the lamp outlasts it, which is a fault. Refusals as for `heaterWait`.
 */
export function judgeHeaterLamp(
  table: readonly HeaterRow[],
  inputs: { readonly temperatureC?: Given; readonly lampOnS?: Given; readonly toleranceS?: Given },
): Result<Verdict> {
  const given = take({ lampOnS: [inputs.lampOnS, LAMP_S], toleranceS: [inputs.toleranceS, WAIT_S] });
  if (!given.ok) return given;
  const wait = heaterWait(table, inputs.temperatureC);
  if (!wait.ok) return wait;
  return ok(judge(given.values.lampOnS, 's', { max: wait.value + given.values.toleranceS }, RULE), RULE);
}

function checkTable(table: readonly HeaterRow[]): Result<(readonly [number, number])[]> {
  if (table.length < 2)
    return fail('tooLittleData', 'table', { given: table.length, allowed: '2 rows or more' });
  const curve: (readonly [number, number])[] = [];
  for (const [index, row] of table.entries()) {
    const at = `table[${index}]`;
    const given = take({
      temperatureC: [row.temperatureC, TEMPERATURE_C],
      seconds: [row.seconds, WAIT_S],
    });
    if (!given.ok) return located(given, at);
    const { temperatureC, seconds } = given.values;
    const colder = curve.at(-1);
    if (colder !== undefined && temperatureC <= colder[0]) {
      return fail('contradictory', `${at}.temperatureC`, {
        given: temperatureC,
        allowed: `above ${colder[0]} degC`,
      });
    }
    if (colder !== undefined && seconds > colder[1]) {
      return fail('contradictory', `${at}.seconds`, { given: seconds, allowed: `${colder[1]} s at most` });
    }
    curve.push([temperatureC, seconds]);
  }
  return ok(curve, RULE);
}
