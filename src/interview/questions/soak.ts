import { judgeHeatSoak } from '../../engineering/heat-soak.ts';
import { type Draft, numberIn, type Value } from '../question.ts';
import { bars } from './makers.ts';

/** Of the air at this height, for whether a coolant can boil: most shops stand lower. */
const HEIGHT_M = 500;
export const SOAK_RISE_K = 12;
export const BOIL_MARGIN_K = 3;
/**
 * At idle the coolant stands so far above the thermostat's opening at least, on a hot day in its upper half: common
 * practice, no published source.
 */
const ABOVE_OPENING_K = 5;
const SHARE_OF_OPENING = 0.75;

/** Where the coolant settles at idle, degC. */
const settlesC = (draft: Draft, opensC: number): number => {
  const fullyOpenC = numberIn(draft, 'thermostat.fullyOpenC') ?? opensC;
  return opensC + Math.max(ABOVE_OPENING_K, SHARE_OF_OPENING * (fullyOpenC - opensC));
};

/** Whether the coolant stays below boiling after key off, with this cap and what else was answered. */
function staysLiquid(draft: Draft, opensC: number, capKpa: number): boolean {
  const soak = judgeHeatSoak({
    coolantC: settlesC(draft, opensC),
    soakRiseK: numberIn(draft, 'shutdown.soakRiseK') ?? SOAK_RISE_K,
    capKpa,
    altitudeM: HEIGHT_M,
    marginK: numberIn(draft, 'shutdown.boilMarginK') ?? BOIL_MARGIN_K,
  });
  return soak.ok && soak.value.underCap.met;
}

/** A rise or a margin with which the coolant could never be said to stay liquid. */
export const soakFault =
  (id: 'shutdown.soakRiseK' | 'shutdown.boilMarginK') =>
  (value: Value, draft: Draft): string | null => {
    const [opensC, capKpa] = [
      numberIn(draft, 'thermostat.opensC'),
      numberIn(draft, 'coolant.capPressureKpa'),
    ];
    if (opensC === undefined || capKpa === undefined || typeof value !== 'number') return null;
    const holds = (kelvin: number) => staysLiquid({ ...draft, [id]: kelvin }, opensC, capKpa);
    if (holds(value)) return null;
    let most = Math.floor(value);
    while (most > 0 && !holds(most)) most -= 1;
    return `With this thermostat and cap it would always be said to boil; allowed: ${most} K or less.`;
  };

/** A cap with which the coolant would always be said to boil. */
export function capFault(value: Value, draft: Draft): string | null {
  const opensC = numberIn(draft, 'thermostat.opensC');
  if (opensC === undefined || typeof value !== 'number') return null;
  const holds = (capKpa: number) => staysLiquid(draft, opensC, capKpa);
  if (holds(value)) return null;
  let least = value;
  while (least < 200 && !holds(least)) least += 1;
  return `The coolant would boil after key off with this thermostat; allowed: a cap of ${bars(least, draft)} or more.`;
}
