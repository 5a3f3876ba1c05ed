import { type Given, okWithin, type Range, take } from './checks.ts';
import type { Result, Rule } from './result.ts';

const ALTITUDE_M: Range = { min: -2000, max: 11_000, unit: 'm' };
const PRESSURE_KPA: Range = { min: 22, max: 128, unit: 'kPa' };

const RULE: Rule = {
  id: 'iso-2533-pressure',
  source: 'ISO 2533:1975, standard atmosphere, layer below 11 km',
  validity: 'altitudes from -2000 to 11000 m; weather moves the true pressure by a few kPa',
};

const SEA_LEVEL_KPA = 101.325;
const SEA_LEVEL_K = 288.15;
const LAPSE_K_PER_M = 0.0065;
const EARTH_RADIUS_M = 6_356_766;
const GRAVITY_M_S2 = 9.80665;
const AIR_GAS_CONSTANT = 287.05287;

/**
 * Pressure of the standard atmosphere, kPa absolute, at a height above sea level as maps give it.
 * Valid from -2000 to 11000 m. Source: ISO 2533:1975.
 */
export function atmosphericPressure(altitude: Given): Result<number> {
  const given = take({ altitudeM: [altitude, ALTITUDE_M] });
  if (!given.ok) return given;
  const { altitudeM } = given.values;
  // The standard's formula is written in geopotential height.
  const geopotentialM = (EARTH_RADIUS_M * altitudeM) / (EARTH_RADIUS_M + altitudeM);
  const exponent = GRAVITY_M_S2 / (AIR_GAS_CONSTANT * LAPSE_K_PER_M);
  const pressureKpa = SEA_LEVEL_KPA * (1 - (LAPSE_K_PER_M * geopotentialM) / SEA_LEVEL_K) ** exponent;
  return okWithin(pressureKpa, PRESSURE_KPA, RULE, 'altitudeM');
}
