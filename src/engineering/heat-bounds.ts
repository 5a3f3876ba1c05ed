import { type Given, type Range, take } from './checks.ts';
import { ok, type Result, type Rule } from './result.ts';

/** What bounds how fast an engine can warm up or cool down. */
interface HeatSize {
  readonly displacementL: Given;
  readonly coolantL: Given;
  readonly oilL: Given;
}

interface HeatBounds {
  /** No idling engine warms its coolant faster, K/s. */
  readonly warmingKPerS: number;
  /** No standing engine nears the temperature of the air with a shorter time constant, s. */
  readonly coolingS: number;
}

/**
 * The thirstiest diesel at idle in the table, a transit bus: 0.97 US gal/h, of about 8.9 litres (from memory); a
 * 2 litre car takes 0.32 L/h for each litre.
 */
const IDLE_LITRE_PER_H_PER_L = 0.45;
/** Lower heating value of diesel fuel, J/L (from memory). */
export const FUEL_J_PER_L = 36e6;
/** Six parts of glycol in ten: less heat capacity than any other mix that is filled in, J/(K L) (from memory). */
const LEAST_COOLANT_J_PER_K_L = 3400;
/** Engine oil, J/(K L) (from memory). */
const OIL_J_PER_K_L = 1750;
/** A light engine for its displacement; common practice, no published source. */
const METAL_KG_PER_L = 60;
/** Cast iron, J/(kg K) (from memory). */
export const IRON_J_PER_KG_K = 460;
/** Outer surface, m2, of an engine of one litre; it grows as the square of its length. Common practice. */
const SURFACE_M2_AT_1_L = 1.2;
/** The most that still air takes off, W/(m2 K): free convection of gases, 2 to 25 (Incropera, table 1.1; from memory). */
const AIR_W_PER_M2_K = 25;

const RULE: Rule = {
  id: 'heat-bounds',
  source:
    'heat balance; idle fuel: US Department of Energy, Fact 861 (2015); free convection: Incropera, table 1.1 (from memory)',
  validity: 'idling or standing diesel engines, no fan blowing at them, no cold water let in',
};

const DISPLACEMENT: Range = { min: 0.2, max: 120, unit: 'litre' };
const FILL: Range = { min: 1, max: 300, unit: 'litre' };

/**
 * How fast coolant may rise and fall at the most: rising, as though all the heat of the fuel that an idle takes went
 * into the coolant alone; falling, with a time constant of all that the engine holds, over the most that still air
 * takes off its surface. Both are beyond what is seen, so that what is beyond them is not. Litres; issues for what is
 * missing or out of range.
 */
export function heatBounds({ displacementL, coolantL, oilL }: HeatSize): Result<HeatBounds> {
  const given = take({
    displacementL: [displacementL, DISPLACEMENT],
    coolantL: [coolantL, FILL],
    oilL: [oilL, FILL],
  });
  if (!given.ok) return given;
  const { displacementL: engineL, coolantL: coolant, oilL: oil } = given.values;
  const coolantJPerK = coolant * LEAST_COOLANT_J_PER_K_L;
  const fuelW = (engineL * IDLE_LITRE_PER_H_PER_L * FUEL_J_PER_L) / 3600;
  const allJPerK = coolantJPerK + oil * OIL_J_PER_K_L + engineL * METAL_KG_PER_L * IRON_J_PER_KG_K;
  const surfaceM2 = SURFACE_M2_AT_1_L * engineL ** (2 / 3);
  return ok({ warmingKPerS: fuelW / coolantJPerK, coolingS: allJPerK / (AIR_W_PER_M2_K * surfaceM2) }, RULE);
}

/** How cold it can have become after so many seconds of standing: Newton's law of cooling (closed form). */
export const coldestAfter = (beforeC: number, airC: number, seconds: number, coolingS: number): number =>
  beforeC <= airC ? beforeC : airC + (beforeC - airC) * Math.exp(-seconds / coolingS);
