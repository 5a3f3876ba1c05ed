import { saturationPressure, saturationTemperature } from '../../../src/engineering/saturation.ts';
import { numberOf, type PublishedCheck } from '../check.ts';

const KELVIN = 273.15;

/** Temperature in K, pressure in kPa. */
const TABLE_35 = [
  [300, 3.53658941],
  [500, 2638.89776],
  [600, 12_344.3146],
] as const;

/** Pressure in kPa, temperature in K. */
const TABLE_36 = [
  [100, 372.755919],
  [1000, 453.035632],
  [10_000, 584.149488],
] as const;

export const saturationChecks: readonly PublishedCheck[] = [
  ...TABLE_35.map(([temperatureK, expected]) => ({
    subject: 'saturation',
    source: 'IAPWS R7-97(2012), table 35',
    quantity: `saturation pressure at ${temperatureK} K`,
    unit: 'kPa',
    expected,
    tolerance: expected * 2e-9,
    compute: () => numberOf(saturationPressure(temperatureK - KELVIN)),
  })),
  ...TABLE_36.map(([pressureKpa, expected]) => ({
    subject: 'saturation',
    source: 'IAPWS R7-97(2012), table 36',
    quantity: `saturation temperature at ${pressureKpa} kPa`,
    unit: 'K',
    expected,
    tolerance: 5.1e-7,
    compute: () => numberOf(saturationTemperature(pressureKpa)) + KELVIN,
  })),
];
