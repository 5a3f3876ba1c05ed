import { type Given, okWithin, type Range, take } from './checks.ts';
import { type Curve, interpolate } from './curve.ts';
import { fail, ok, type Result, type Rule } from './result.ts';

/** System voltages of lead-acid starting batteries: one of six cells, or two of them in series. */
type NominalVoltage = 12 | 24;

const CELLS_IN_12_V = 6;
const TEMPERATURE_C: Range = { min: -40, max: 60, unit: 'degC' };
/** Of one 12 V battery: below, a cell is dead; above, the charger's surface charge still stands. */
const REST_V: Range = { min: 10.5, max: 13, unit: 'V' };
const VOLTS: Range = { min: 0, max: 60, unit: 'V' };
const SETPOINT_V: Range = { min: 13, max: 15.5, unit: 'V' };
const TOLERANCE_V: Range = { min: 0.05, max: 1, unit: 'V' };

const REST: Rule = {
  id: 'lead-acid-rest-voltage',
  source:
    'Battery Council International: open-circuit voltage against state of charge at 26.7 degC; 0.2 mV/K per cell for other temperatures (from memory)',
  validity:
    'flooded lead-acid at rest for hours, -40 to 60 degC, 10.5 to 13 V per 12 V battery; gel and glass-mat batteries rest a little higher',
};

const CRANKING: Rule = {
  id: 'cranking-voltage-floor',
  source:
    'Load-test table of vehicle service manuals: 15 s at half the cold-cranking current, 9.6 V at 21 degC to 8.5 V at -18 degC',
  validity: '-40 to 60 degC; above 21 and below -18 degC the end figures stand, which is strict in the cold',
};

const CHARGING: Rule = {
  id: 'charging-window',
  source:
    'Setpoint and tolerance from the engine profile at 25 degC, -3 mV/K per cell: common practice, no published source',
  validity: 'lead-acid batteries from -40 to 60 degC; electronics may hold the voltage narrower',
};

/** Volts of a 12 V battery at rest against state of charge, at 26.7 degC. */
const STATE_OF_CHARGE: Curve = [
  [11.89, 0],
  [12.06, 0.25],
  [12.24, 0.5],
  [12.45, 0.75],
  [12.65, 1],
];
const STATE_OF_CHARGE_AT_C = 26.7;
const REST_V_PER_K = 0.0002 * CELLS_IN_12_V;

/** Battery temperature in degC against least volts under load of a 12 V battery. */
const CRANKING_FLOOR: Curve = [
  [-18, 8.5],
  [-12, 8.7],
  [-7, 8.9],
  [-1, 9.1],
  [4, 9.3],
  [10, 9.4],
  [16, 9.5],
  [21, 9.6],
];

const CHARGING_V_PER_K = -0.003 * CELLS_IN_12_V;
const CHARGING_AT_C = 25;

const inSeries = (nominalV: NominalVoltage): number => nominalV / 12;
const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/**
 * State of charge, 0 to 1, from the voltage at rest and the battery's temperature in degC. Valid for 10.5 to
 * 13 V per 12 V battery (both ends doubled for 24 V): outside that a cell is dead, the battery has not rested,
 * or the system voltage is another. Source: BCI.
 */
export function stateOfCharge(
  nominalV: NominalVoltage,
  inputs: { readonly restVoltageV?: Given; readonly batteryC?: Given },
): Result<number> {
  const series = inSeries(nominalV);
  const given = take({
    restVoltageV: [inputs.restVoltageV, { ...REST_V, min: REST_V.min * series, max: REST_V.max * series }],
    batteryC: [inputs.batteryC, TEMPERATURE_C],
  });
  if (!given.ok) return given;
  const { restVoltageV, batteryC } = given.values;
  const atReference = restVoltageV / series + (STATE_OF_CHARGE_AT_C - batteryC) * REST_V_PER_K;
  const charge = interpolate(STATE_OF_CHARGE, within(atReference, 11.89, 12.65)) ?? Number.NaN;
  return okWithin(charge, { min: 0, max: 1, unit: '' }, REST, 'restVoltageV');
}

/**
 * Voltage below which the battery must not fall while it cranks, V, by battery temperature in degC (-40 to
 * 60). Source: load-test table of vehicle service manuals.
 */
export function crankingFloor(nominalV: NominalVoltage, battery: Given): Result<number> {
  const given = take({ batteryC: [battery, TEMPERATURE_C] });
  if (!given.ok) return given;
  const floorV = interpolate(CRANKING_FLOOR, within(given.values.batteryC, -18, 21)) ?? Number.NaN;
  return okWithin(floorV * inSeries(nominalV), VOLTS, CRANKING, 'batteryC');
}

interface ChargingWindow {
  readonly minV: number;
  readonly maxV: number;
}

/**
 * Voltage that a charging system should hold, V, by battery temperature in degC (-40 to 60). `setpointV`
 * (13 to 15.5) and `toleranceV` (0.05 to 1) are the profile's figures for a 12 V battery at 25 degC.
 * Refused as `contradictory` when the window would reach down to a battery that is not being charged.
 * Source: common practice.
 */
export function chargingWindow(
  nominalV: NominalVoltage,
  inputs: { readonly setpointV?: Given; readonly toleranceV?: Given; readonly batteryC?: Given },
): Result<ChargingWindow> {
  const given = take({
    setpointV: [inputs.setpointV, SETPOINT_V],
    toleranceV: [inputs.toleranceV, TOLERANCE_V],
    batteryC: [inputs.batteryC, TEMPERATURE_C],
  });
  if (!given.ok) return given;
  const { setpointV, toleranceV, batteryC } = given.values;
  const centreV = setpointV + (batteryC - CHARGING_AT_C) * CHARGING_V_PER_K;
  // A window that a resting battery could meet would say nothing about charging.
  if (centreV - toleranceV <= REST_V.max) {
    const allowed = `a window above ${REST_V.max} V at ${batteryC} degC`;
    return fail('contradictory', 'toleranceV', { given: toleranceV, allowed });
  }
  const series = inSeries(nominalV);
  return ok({ minV: (centreV - toleranceV) * series, maxV: (centreV + toleranceV) * series }, CHARGING);
}
