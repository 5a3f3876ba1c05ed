import { quantities } from '../../src/engineering/quantities/table.ts';
import type { Profile } from '../../src/profile/schema.ts';
import type { Quantity } from '../vocabulary.ts';

export { canBeRead } from '../../src/engineering/quantities/table.ts';

/** Air, and the coldest night, at which a first start is begun, degC; what lies beyond was misread. Common practice. */
export const AIR_C = { min: -40, max: 50 } as const;
export const NIGHT_C = { min: -40, max: 35 } as const;

/**
 * What is listened for, in SI: the range of the quantity, made narrower by what this engine can show. Every number
 * less is heard sooner and taken less easily for another.
 */
export function listenedRange(quantity: Quantity, profile: Profile): readonly [min: number, max: number] {
  switch (quantity) {
    // What is offered is what is accepted.
    case 'ambientTemperature':
      return [AIR_C.min, AIR_C.max];
    case 'coldestNight':
      return [NIGHT_C.min, NIGHT_C.max];
    // Up to ten thousand feet: numbers of five digits are not listened for.
    case 'altitude':
      return [0, 3040];
    case 'oilQuantity':
      return [0, profile.oil.capacityL * 1.5];
    case 'fuelInTank':
      return [0, profile.fuel.tankL];
    case 'primerStrokes':
      return [0, profile.fuel.primer.maxStrokes * 1.5];
    case 'batteryVoltage':
    case 'chargingVoltage':
    case 'crankingVoltage':
      return [(profile.systemVoltage / 12) * 8, (profile.systemVoltage / 12) * 16];
    case 'engineSpeed':
      return [0, 4000];
    case 'oilPressure':
      return [0, profile.oilPressure.gaugeMaxKpa];
    case 'coolantTemperature':
      return [-40, 130];
    case 'suspectParameter':
      return [1, 524_286];
    case 'coolantFreezePoint':
    case 'biodieselShare':
    case 'failureMode':
      return quantities[quantity].range;
  }
}

/**
 * What may be typed, in SI: nothing is misheard there, and what a gauge shows far out of all order has to count. Weather
 * in which no start is begun, and numbers that name no code, are none.
 */
export function typedRange(quantity: Quantity, profile: Profile): readonly [min: number, max: number] {
  switch (quantity) {
    case 'ambientTemperature':
    case 'coldestNight':
    case 'suspectParameter':
      return listenedRange(quantity, profile);
    default:
      return quantities[quantity].range;
  }
}
