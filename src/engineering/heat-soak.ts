import { atmosphericPressure } from './atmosphere.ts';
import { type Given, type Range, take } from './checks.ts';
import { judge, ok, type Result, type Rule, type Verdict } from './result.ts';
import { saturationTemperature } from './saturation.ts';

interface HeatSoak {
  /** The hottest the coolant may get after key-off, held against its boiling point under the cap, degC. */
  readonly underCap: Verdict;
  /** The coolant as it is now, held against its boiling point with the cap off, degC. */
  readonly capOff: Verdict;
}

const RULE: Rule = {
  id: 'heat-soak-boil-margin',
  source:
    'boiling point of water by IAPWS-IF97 (coolant mixed with glycol boils hotter, so this errs to the safe ' +
    'side) at ISO 2533 atmosphere plus cap pressure; rise after key-off from the engine profile',
  validity: 'a full, sealed system; cap rated 0 to 200 kPa',
};

const COOLANT_C: Range = { min: -60, max: 150, unit: 'degC' };
const SOAK_RISE_K: Range = { min: 0, max: 40, unit: 'K' };
const CAP_KPA: Range = { min: 0, max: 200, unit: 'kPa' };
const MARGIN_K: Range = { min: 0, max: 40, unit: 'K' };

/**
 * Margin to boiling after key-off, when nothing carries the heat of the metal away any more.
 *
 * - `coolantC` now (degC, -60 to 150) and `soakRiseK`, by how much it may still climb (0 to 40; 5 to 15 K is
 *   common practice, no published source);
 * - `capKpa`, rating of the cap, gauge (0 to 200); `altitudeM` (-2000 to 11000);
 * - `marginK`, how far from boiling it has to stay (0 to 40).
 *
 * Issues: an input missing, not a number or out of range.
 */
export function judgeHeatSoak(inputs: {
  readonly coolantC: Given;
  readonly soakRiseK: Given;
  readonly capKpa: Given;
  readonly altitudeM: Given;
  readonly marginK: Given;
}): Result<HeatSoak> {
  const given = take({
    coolantC: [inputs.coolantC, COOLANT_C],
    soakRiseK: [inputs.soakRiseK, SOAK_RISE_K],
    capKpa: [inputs.capKpa, CAP_KPA],
    marginK: [inputs.marginK, MARGIN_K],
  });
  if (!given.ok) return given;
  const { coolantC, soakRiseK, capKpa, marginK } = given.values;
  const airKpa = atmosphericPressure(inputs.altitudeM);
  if (!airKpa.ok) return airKpa;
  const openC = saturationTemperature(airKpa.value);
  const cappedC = saturationTemperature(airKpa.value + capKpa);
  if (!openC.ok) return openC;
  if (!cappedC.ok) return cappedC;
  return ok(
    {
      underCap: judge(coolantC + soakRiseK, 'degC', { max: cappedC.value - marginK }, RULE),
      capOff: judge(coolantC, 'degC', { max: openC.value - marginK }, RULE),
    },
    RULE,
  );
}

const COLD_RULE: Rule = {
  id: 'cap-cool-enough',
  source: 'common practice, no published source: a cap is opened below about 50 degC, never hot',
  validity: 'coolant read at the engine, thermostat housing or radiator',
};

/** Holds the coolant (degC) against the temperature up to which the profile lets a cap be opened (20 to 60 degC). */
export function judgeCapOpening(coolantC: Given, openBelowC: Given): Result<Verdict> {
  const given = take({
    coolantC: [coolantC, COOLANT_C],
    openBelowC: [openBelowC, { min: 20, max: 60, unit: 'degC' }],
  });
  if (!given.ok) return given;
  return ok(judge(given.values.coolantC, 'degC', { max: given.values.openBelowC }, COLD_RULE), COLD_RULE);
}
