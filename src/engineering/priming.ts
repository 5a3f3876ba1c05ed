import { type Given, type Range, take } from './checks.ts';
import { fail, ok, type Result, type Rule } from './result.ts';

/** What has to be filled by which pump, from the engine profile and the crank at hand. */
interface Priming {
  /** Volume the oil pump moves per turn of its own, litre, 0.001 to 1. */
  readonly pumpLitrePerTurn?: Given;
  /** Turns of the pump per turn of the crankshaft, 0.2 to 5. */
  readonly pumpTurnsPerCrankTurn?: Given;
  /** Cranking speed, 1/min, 30 to 500. */
  readonly crankingRpm?: Given;
  /** Empty galleries, filter and cooler, litre, 0.01 to 100. */
  readonly fillLitres?: Given;
  /** How far off that volume may be, as a share of it, 0 to 0.9. */
  readonly fillSpreadShare?: Given;
  /** Least and greatest volumetric efficiency of the pump while cranking, 0.1 to 1. */
  readonly leastEfficiency?: Given;
  readonly greatestEfficiency?: Given;
  /** How much longer this oil takes, 1 to 1000: see `fillTimeFactor`. */
  readonly viscosityFactor?: Given;
  /** Cranking is given up at this multiple of the expected time, 1 to 10. */
  readonly giveUpMultiple?: Given;
}

export interface PrimingTime {
  readonly earliestS: number;
  readonly expectedS: number;
  readonly latestS: number;
  /** Cranking time without oil pressure after which something is wrong. */
  readonly giveUpS: number;
}

const RANGES = {
  pumpLitrePerTurn: { min: 0.001, max: 1, unit: 'litre' },
  pumpTurnsPerCrankTurn: { min: 0.2, max: 5, unit: '' },
  crankingRpm: { min: 30, max: 500, unit: '1/min' },
  fillLitres: { min: 0.01, max: 100, unit: 'litre' },
  fillSpreadShare: { min: 0, max: 0.9, unit: '' },
  leastEfficiency: { min: 0.1, max: 1, unit: '' },
  greatestEfficiency: { min: 0.1, max: 1, unit: '' },
  viscosityFactor: { min: 1, max: 1000, unit: '' },
  giveUpMultiple: { min: 1, max: 10, unit: '' },
} as const satisfies Record<keyof Priming, Range>;

const RULE: Rule = {
  id: 'priming-time',
  source:
    'Flow of a positive-displacement pump: displacement x speed x volumetric efficiency (ISO 4391:1983)',
  validity: 'cranking at 30 to 500 1/min; the pump itself is wetted, so that it draws from the first turn',
};

/**
 * Seconds of cranking until oil has filled the engine and pressure shows: earliest, expected, latest, and the
 * time at which to give up. Add the bursts up; rests do not count. Refused as `contradictory` when the least
 * efficiency is above the greatest. Source: ISO 4391.
 */
export function primingTime(inputs: Priming): Result<PrimingTime> {
  const given = take({
    pumpLitrePerTurn: [inputs.pumpLitrePerTurn, RANGES.pumpLitrePerTurn],
    pumpTurnsPerCrankTurn: [inputs.pumpTurnsPerCrankTurn, RANGES.pumpTurnsPerCrankTurn],
    crankingRpm: [inputs.crankingRpm, RANGES.crankingRpm],
    fillLitres: [inputs.fillLitres, RANGES.fillLitres],
    fillSpreadShare: [inputs.fillSpreadShare, RANGES.fillSpreadShare],
    leastEfficiency: [inputs.leastEfficiency, RANGES.leastEfficiency],
    greatestEfficiency: [inputs.greatestEfficiency, RANGES.greatestEfficiency],
    viscosityFactor: [inputs.viscosityFactor, RANGES.viscosityFactor],
    giveUpMultiple: [inputs.giveUpMultiple, RANGES.giveUpMultiple],
  });
  if (!given.ok) return given;
  const v = given.values;
  if (v.leastEfficiency > v.greatestEfficiency) {
    const allowed = `${v.greatestEfficiency} at most`;
    return fail('contradictory', 'leastEfficiency', { given: v.leastEfficiency, allowed });
  }
  const idealLitrePerS = (v.pumpLitrePerTurn * v.pumpTurnsPerCrankTurn * v.crankingRpm) / 60;
  const seconds = (fillLitres: number, efficiency: number) =>
    (fillLitres * v.viscosityFactor) / (idealLitrePerS * efficiency);
  const expectedS = seconds(v.fillLitres, (v.leastEfficiency + v.greatestEfficiency) / 2);
  return ok(
    {
      earliestS: seconds(v.fillLitres * (1 - v.fillSpreadShare), v.greatestEfficiency),
      expectedS,
      latestS: seconds(v.fillLitres * (1 + v.fillSpreadShare), v.leastEfficiency),
      giveUpS: expectedS * v.giveUpMultiple,
    },
    RULE,
  );
}
