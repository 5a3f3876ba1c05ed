import { type Failure, type Given, located, type Range, take } from './checks.ts';
import { fail, ok, type Result, type Rule } from './result.ts';
import { ZERO_C_K } from './units.ts';

const CLOUD_C: Range = { min: -70, max: 30, unit: 'degC' };
const NIGHT_C: Range = { min: -60, max: 50, unit: 'degC' };
const MARGIN_K: Range = { min: 0, max: 20, unit: 'K' };
const LITRES: Range = { min: 0, max: 5000, unit: 'litre' };

const BLEND: Rule = {
  id: 'cloud-point-blending-index',
  source:
    'Riazi, ASTM MNL50 (2005), section 3.6: index T^(1/x), T in K, x = 0.05, shared by volume (from memory)',
  validity:
    'distillate fuels with cloud points from -70 to 30 degC; flow improvers do not move the cloud point',
};

const PRACTICE: Rule = {
  id: 'fuel-by-season',
  source: 'common practice, no published source',
  validity: 'coldest nights from -60 to 50 degC; no substitute for a cloud point from the supplier',
};

const toIndex = (cloudC: number): number => (cloudC + ZERO_C_K) ** 20;
const fromIndex = (index: number): number => index ** (1 / 20) - ZERO_C_K;

/** Fuels of the trade, and how cold it must not get for them. */
interface Fuels {
  /** Cloud point of the No. 1 at hand, degC, from the supplier. */
  readonly no1CloudC?: Given;
  /** Cloud point of the No. 2 at hand, degC, from the supplier. */
  readonly no2CloudC?: Given;
  /** Coldest night expected, degC. */
  readonly nightLowC?: Given;
  /** By how much the cloud point is to lie below that, K, 0 to 20. */
  readonly marginK?: Given;
}

interface Blend {
  /** Volume share of No. 1, 0 to 1. */
  readonly no1Share: number;
  readonly cloudC: number;
}

/** Cloud point in degC of fuels mixed by volume. Litres 0 to 5000, cloud points -70 to 30 degC. Source: MNL50. */
export function blendCloudPoint(
  parts: readonly { readonly litres?: Given; readonly cloudC?: Given }[],
): Result<number> {
  let litres = 0;
  let index = 0;
  for (const [place, part] of parts.entries()) {
    const given = take({ litres: [part.litres, LITRES], cloudC: [part.cloudC, CLOUD_C] });
    if (!given.ok) return located(given, `parts[${place}]`);
    litres += given.values.litres;
    index += given.values.litres * toIndex(given.values.cloudC);
  }
  if (litres === 0) return fail('missing', 'litres', { allowed: 'some fuel' });
  return ok(fromIndex(index / litres), BLEND);
}

/**
 * Least share of No. 1 that keeps the cloud point at or below the coldest night less the margin.
 * Refused: `contradictory` when No. 1 does not cloud colder than No. 2, `noSolution` when even straight No. 1
 * would cloud. Source: MNL50.
 */
export function blendForNight(fuels: Fuels): Result<Blend> {
  const plan = fillTank({ ...fuels, tankLitres: 1, inTankLitres: 0, inTankCloudC: fuels.no2CloudC });
  return plan.ok ? ok({ no1Share: plan.value.no1Litres, cloudC: plan.value.cloudC }, BLEND) : plan;
}

export interface TankPlan {
  readonly no1Litres: number;
  readonly no2Litres: number;
  /** Cloud point of the full tank, degC. */
  readonly cloudC: number;
}

/**
 * Litres of No. 1 and No. 2 to add so that the tank, full, keeps clear of the coldest night less the margin,
 * with as little No. 1 as that takes. `tankLitres` is the level to fill to, 1 to 5000.
 * Refused: more in the tank than it is to hold, or No. 1 no better than No. 2 (`contradictory`); not even
 * No. 1 alone on top of what is in the tank is enough (`noSolution`: drain first). Source: MNL50.
 */
export function fillTank(
  inputs: Fuels & {
    readonly tankLitres?: Given;
    readonly inTankLitres?: Given;
    /** Cloud point of what is already in the tank, degC. */
    readonly inTankCloudC?: Given;
  },
): Result<TankPlan> {
  const given = take({
    tankLitres: [inputs.tankLitres, { ...LITRES, min: 1 }],
    inTankLitres: [inputs.inTankLitres, LITRES],
    inTankCloudC: [inputs.inTankCloudC, CLOUD_C],
    no1CloudC: [inputs.no1CloudC, CLOUD_C],
    no2CloudC: [inputs.no2CloudC, CLOUD_C],
    nightLowC: [inputs.nightLowC, NIGHT_C],
    marginK: [inputs.marginK, MARGIN_K],
  });
  if (!given.ok) return given;
  const { tankLitres, inTankLitres, inTankCloudC, no1CloudC, no2CloudC, nightLowC, marginK } = given.values;
  const impossible = contradiction(tankLitres, inTankLitres, no1CloudC, no2CloudC);
  if (impossible) return impossible;

  const addLitres = tankLitres - inTankLitres;
  const targetC = nightLowC - marginK;
  // Index budget left for what is added; No. 2 spends more of it per litre than No. 1.
  const budget = tankLitres * toIndex(targetC) - inTankLitres * toIndex(inTankCloudC);
  const excess = addLitres * toIndex(no2CloudC) - budget;
  const no1Litres = Math.max(0, excess / (toIndex(no2CloudC) - toIndex(no1CloudC)));
  if (no1Litres > addLitres) {
    return fail('noSolution', 'nightLowC', {
      given: nightLowC,
      allowed: 'a warmer night, a colder No. 1, or less of the old fuel in the tank',
    });
  }
  const no2Litres = addLitres - no1Litres;
  const cloud = blendCloudPoint([
    { litres: inTankLitres, cloudC: inTankCloudC },
    { litres: no1Litres, cloudC: no1CloudC },
    { litres: no2Litres, cloudC: no2CloudC },
  ]);
  return cloud.ok ? ok({ no1Litres, no2Litres, cloudC: cloud.value }, BLEND) : cloud;
}

function contradiction(
  tankLitres: number,
  inTankLitres: number,
  no1CloudC: number,
  no2CloudC: number,
): Failure | undefined {
  if (inTankLitres > tankLitres) {
    return fail('contradictory', 'inTankLitres', {
      given: inTankLitres,
      allowed: `${tankLitres} litre at most`,
    });
  }
  if (no1CloudC >= no2CloudC) {
    return fail('contradictory', 'no1CloudC', { given: no1CloudC, allowed: `below ${no2CloudC} degC` });
  }
  return undefined;
}

export type FuelPractice = 'no2' | 'blend' | 'no1';

/** No. 2 serves down to about this night, by common practice. */
const NO2_SERVES_TO_C = 0;

/**
 * What the trade would fill for the coldest night: No. 2 to about 0 degC, a blend below that, straight No. 1
 * far below. How far is no fixed figure in the trade, so the engine profile names it. To stand beside
 * `blendForNight`, not in its place. Source: common practice, no published source.
 */
export function fuelByPractice(inputs: {
  readonly nightLowC?: Given;
  readonly straightNo1BelowC?: Given;
}): Result<FuelPractice> {
  const given = take({
    nightLowC: [inputs.nightLowC, NIGHT_C],
    straightNo1BelowC: [inputs.straightNo1BelowC, { ...NIGHT_C, max: NO2_SERVES_TO_C }],
  });
  if (!given.ok) return given;
  const { nightLowC, straightNo1BelowC } = given.values;
  if (nightLowC >= NO2_SERVES_TO_C) return ok('no2', PRACTICE);
  return ok(nightLowC < straightNo1BelowC ? 'no1' : 'blend', PRACTICE);
}

export type GellingRisk =
  /** The night stays above the cloud point by the margin or more. */
  | 'clear'
  /** The night comes nearer to the cloud point than the margin. */
  | 'nearCloud'
  /** Wax forms: filters may plug. */
  | 'belowCloud'
  /** The fuel may set. */
  | 'belowPour';

const RISK: Rule = {
  id: 'gelling-risk',
  source: 'ASTM D2500 (cloud point) and ASTM D97 (pour point) as definitions; margin from the engine profile',
  validity: 'coldest nights from -60 to 50 degC, cloud and pour points from -70 to 30 degC',
};

/**
 * How near a fuel comes to gelling on the coldest night, degC. The pour point may be left out: then nothing
 * is worse than `belowCloud`. Refused: a pour point above the cloud point. Source: ASTM D2500 and D97.
 */
export function gellingRisk(inputs: {
  readonly nightLowC?: Given;
  readonly cloudC?: Given;
  readonly pourC?: Given;
  readonly marginK?: Given;
}): Result<GellingRisk> {
  const given = take({
    nightLowC: [inputs.nightLowC, NIGHT_C],
    cloudC: [inputs.cloudC, CLOUD_C],
    pourC: [inputs.pourC ?? CLOUD_C.min, CLOUD_C],
    marginK: [inputs.marginK, MARGIN_K],
  });
  if (!given.ok) return given;
  const { nightLowC, cloudC, pourC, marginK } = given.values;
  if (pourC > cloudC)
    return fail('contradictory', 'pourC', { given: pourC, allowed: `${cloudC} degC at most` });
  if (inputs.pourC !== undefined && nightLowC <= pourC) return ok('belowPour', RISK);
  if (nightLowC <= cloudC) return ok('belowCloud', RISK);
  return ok(nightLowC < cloudC + marginK ? 'nearCloud' : 'clear', RISK);
}
