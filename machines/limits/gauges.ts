import type { Quantity } from '../vocabulary.ts';

/**
 * What can be read off a gauge at all, in SI, on any engine and in any weather: beyond it a value was misheard
 * or mistyped, even where a rule has a limit on one side only. Common practice, no published source.
 */
const gaugeRanges: Record<Quantity, readonly [min: number, max: number]> = {
  ambientTemperature: [-60, 60],
  coldestNight: [-60, 60],
  altitude: [-500, 6000],
  coolantFreezePoint: [-80, 0],
  oilQuantity: [0, 1000],
  fuelInTank: [0, 5000],
  biodieselShare: [0, 100],
  primerStrokes: [0, 1000],
  batteryVoltage: [0, 40],
  chargingVoltage: [0, 40],
  crankingVoltage: [0, 40],
  engineSpeed: [0, 6000],
  oilPressure: [0, 2000],
  coolantTemperature: [-60, 150],
  suspectParameter: [0, 524_287],
  failureMode: [0, 31],
};

/** False for what is no number at all, and for what no gauge shows. */
export function canBeRead(quantity: Quantity, si: number): boolean {
  const [min, max] = gaugeRanges[quantity];
  return si >= min && si <= max;
}
