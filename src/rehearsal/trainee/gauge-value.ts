import type { Quantity } from '../../../machines/vocabulary.ts';
import { freezePoint, shareForNight } from '../../engineering/glycol.ts';
import type { Profile } from '../../profile/schema.ts';
import type { Gauges } from '../gauges.ts';

/** The weather, the tank and the tester in a rehearsal: invented, and good for any profile. */
export const NIGHT_COLDER_K = 10;
const ALTITUDE_M = 300;
const TANK_SHARE = 0.1;
const BIODIESEL_PERCENT = 5;

/** Of the mix that was asked for: what stands the night, inside what the profile allows. */
function freezesC({ coolant }: Profile, nightLowC: number): number {
  const share = shareForNight(coolant.kind, { nightLowC, marginK: coolant.freezeMarginK });
  const mixed = Math.min(coolant.maxShare, Math.max(coolant.minShare, share.ok ? share.value : 0));
  const freezes = freezePoint(coolant.kind, mixed);
  // To the whole degree below: as it is read off a tester, and never warmer than it is.
  return Math.floor(freezes.ok ? freezes.value : nightLowC - coolant.freezeMarginK);
}

/** What is read off for a quantity, in SI; null where the gauge shows nothing. */
export function gaugeValue(
  quantity: Quantity,
  gauges: Gauges,
  profile: Profile,
  ambientC: number,
): number | null {
  switch (quantity) {
    case 'ambientTemperature':
      return ambientC;
    case 'coldestNight':
      return ambientC - NIGHT_COLDER_K;
    case 'altitude':
      return ALTITUDE_M;
    case 'coolantFreezePoint':
      return freezesC(profile, ambientC - NIGHT_COLDER_K);
    case 'oilQuantity':
      return gauges.oilFilledL;
    case 'fuelInTank':
      // Never more than there is, to a tenth as it is read off.
      return Math.floor(10 * TANK_SHARE * profile.fuel.tankL) / 10;
    case 'biodieselShare':
      return Math.min(BIODIESEL_PERCENT, profile.fuel.biodieselMaxPercent);
    case 'primerStrokes':
      return gauges.strokes;
    case 'batteryVoltage':
    case 'chargingVoltage':
      return gauges.batteryV;
    case 'crankingVoltage':
      return gauges.crankingV ?? gauges.underLoadV;
    case 'engineSpeed':
      return gauges.rpm;
    case 'oilPressure':
      return gauges.oilPressureKpa;
    case 'coolantTemperature':
      return gauges.coolantC;
    case 'suspectParameter':
    case 'failureMode':
      // Codes are read one by one, not off a gauge.
      return null;
  }
}
