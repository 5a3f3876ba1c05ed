import { type Given, okWithin, type Range, take } from './checks.ts';
import type { Result, Rule } from './result.ts';
import { ZERO_C_K } from './units.ts';

const TEMPERATURE_C: Range = { min: 0, max: 373.946, unit: 'degC' };
const PRESSURE_KPA: Range = { min: 0.611213, max: 22_064, unit: 'kPa' };

const RULE: Rule = {
  id: 'iapws-if97-region-4',
  source: 'IAPWS R7-97(2012), Industrial Formulation 1997, region 4, equations 30 and 31, table 34',
  validity: 'pure water from 0 degC (0.611 kPa) to the critical point (373.946 degC, 22064 kPa)',
};

/** n1 to n10 of table 34. */
const N = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

const KPA_PER_MPA = 1000;

/**
 * Pressure at which water boils, kPa absolute, at a temperature in degC.
 * Valid from 0 degC to the critical point. Source: IAPWS-IF97 equation 30.
 */
export function saturationPressure(temperature: Given): Result<number> {
  const given = take({ temperatureC: [temperature, TEMPERATURE_C] });
  if (!given.ok) return given;
  const temperatureK = given.values.temperatureC + ZERO_C_K;
  const theta = temperatureK + N[8] / (temperatureK - N[9]);
  const a = theta ** 2 + N[0] * theta + N[1];
  const b = N[2] * theta ** 2 + N[3] * theta + N[4];
  const c = N[5] * theta ** 2 + N[6] * theta + N[7];
  const pressureKpa = ((2 * c) / (-b + Math.sqrt(b ** 2 - 4 * a * c))) ** 4 * KPA_PER_MPA;
  return okWithin(pressureKpa, { ...PRESSURE_KPA, min: 0.611, max: 22_065 }, RULE, 'temperatureC');
}

/**
 * Temperature at which water boils, degC, under an absolute pressure in kPa.
 * Valid from 0.611213 to 22064 kPa. Source: IAPWS-IF97 equation 31.
 */
export function saturationTemperature(pressure: Given): Result<number> {
  const given = take({ pressureKpa: [pressure, PRESSURE_KPA] });
  if (!given.ok) return given;
  const beta = (given.values.pressureKpa / KPA_PER_MPA) ** 0.25;
  const e = beta ** 2 + N[2] * beta + N[5];
  const f = N[0] * beta ** 2 + N[3] * beta + N[6];
  const g = N[1] * beta ** 2 + N[4] * beta + N[7];
  const d = (2 * g) / (-f - Math.sqrt(f ** 2 - 4 * e * g));
  const temperatureK = (N[9] + d - Math.sqrt((N[9] + d) ** 2 - 4 * (N[8] + N[9] * d))) / 2;
  return okWithin(
    temperatureK - ZERO_C_K,
    { ...TEMPERATURE_C, min: -0.001, max: 373.95 },
    RULE,
    'pressureKpa',
  );
}
