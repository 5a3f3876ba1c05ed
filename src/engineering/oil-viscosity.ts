import { type Given, okWithin, type Range, take } from './checks.ts';
import { fail, ok, type Result, type Rule } from './result.ts';
import { ZERO_C_K } from './units.ts';

/** A kinematic viscosity and the temperature it was measured at, as on an oil's data sheet. */
interface ViscosityPoint {
  readonly temperatureC?: Given;
  readonly viscosityMm2S?: Given;
}

const TEMPERATURE_C: Range = { min: -40, max: 150, unit: 'degC' };
/** Below 2 mm2/s the standard needs more terms; no engine oil is that thin. */
const VISCOSITY_MM2_S: Range = { min: 2, max: 2e7, unit: 'mm2/s' };

const D341: Rule = {
  id: 'astm-d341',
  source: 'ASTM D341-20, simplified form log log(v + 0.7) = A - B log T',
  validity:
    '-40 to 150 degC and 2 to 2e7 mm2/s; below its cloud point an oil is thicker than the line says, and oils with a viscosity modifier bend away from it in the cold',
};

const FILL_FACTOR: Rule = {
  id: 'suction-limited-fill',
  source: 'Hagen-Poiseuille: laminar flow through a pipe under a fixed head goes as 1/viscosity',
  validity: 'viscosities from 2 to 2e7 mm2/s; suction pipe in laminar flow',
};

/** Closer together, errors in the two readings swamp the slope between them. */
const SMALLEST_SPREAD_K = 20;

const doubleLog = (viscosityMm2S: number): number => Math.log10(Math.log10(viscosityMm2S + 0.7));

/**
 * Kinematic viscosity in mm2/s at a temperature in degC, on the line through two measured points (usually 40
 * and 100 degC). Valid from -40 to 150 degC and 2 to 2e7 mm2/s; the points must lie 20 K apart or more, and
 * the colder one must be the thicker. Source: ASTM D341.
 */
export function viscosityAt(
  points: readonly [ViscosityPoint, ViscosityPoint],
  temperature: Given,
): Result<number> {
  const given = take({
    firstTemperatureC: [points[0].temperatureC, TEMPERATURE_C],
    firstViscosityMm2S: [points[0].viscosityMm2S, VISCOSITY_MM2_S],
    secondTemperatureC: [points[1].temperatureC, TEMPERATURE_C],
    secondViscosityMm2S: [points[1].viscosityMm2S, VISCOSITY_MM2_S],
    temperatureC: [temperature, TEMPERATURE_C],
  });
  if (!given.ok) return given;
  const first = { t: given.values.firstTemperatureC, v: given.values.firstViscosityMm2S };
  const second = { t: given.values.secondTemperatureC, v: given.values.secondViscosityMm2S };
  if (Math.abs(first.t - second.t) < SMALLEST_SPREAD_K) {
    return fail('tooLittleData', 'secondTemperatureC', {
      given: second.t,
      allowed: `${SMALLEST_SPREAD_K} K or more from ${first.t} degC`,
    });
  }
  const [cold, hot] = first.t < second.t ? [first, second] : [second, first];
  if (cold.v <= hot.v) {
    return fail('contradictory', 'secondViscosityMm2S', {
      given: second.v,
      allowed: 'an oil is thicker when colder',
    });
  }
  const logCold = Math.log10(cold.t + ZERO_C_K);
  const slope = (doubleLog(cold.v) - doubleLog(hot.v)) / (Math.log10(hot.t + ZERO_C_K) - logCold);
  const atTemperature =
    doubleLog(cold.v) - slope * (Math.log10(given.values.temperatureC + ZERO_C_K) - logCold);
  return okWithin(10 ** (10 ** atTemperature) - 0.7, VISCOSITY_MM2_S, D341, 'temperatureC');
}

/**
 * By how many times longer the oil galleries take to fill, at least 1. Up to the viscosity at which the pump
 * still fills at cranking speed (from the engine profile) a positive-displacement pump moves the same volume
 * whatever the oil; beyond it the suction pipe limits, and the flow falls as the viscosity rises.
 * Both in mm2/s, 2 to 2e7. Source: Hagen-Poiseuille.
 */
export function fillTimeFactor(inputs: {
  readonly viscosityMm2S?: Given;
  readonly fullFlowViscosityMm2S?: Given;
}): Result<number> {
  const given = take({
    viscosityMm2S: [inputs.viscosityMm2S, VISCOSITY_MM2_S],
    fullFlowViscosityMm2S: [inputs.fullFlowViscosityMm2S, VISCOSITY_MM2_S],
  });
  if (!given.ok) return given;
  return ok(Math.max(1, given.values.viscosityMm2S / given.values.fullFlowViscosityMm2S), FILL_FACTOR);
}
