import { chargingWindow } from '../../engineering/battery.ts';
import type { Profile } from '../../profile/schema.ts';

export interface ElectricPlant {
  readonly systemVoltage: 12 | 24;
  readonly capacityAs: number;
  readonly resistanceOhm: number;
  /** Taking charge, a battery resists more than giving it. */
  readonly chargingOhm: number;
  readonly starterA: number;
  readonly heaterA: number;
  readonly loadA: number;
  readonly alternatorMaxA: number;
  /** What the regulator holds at this temperature. */
  readonly setpointV: number;
  readonly ambientC: number;
}

export interface ElectricState {
  /** 0 to 1. */
  readonly charge: number;
  readonly batteryV: number;
  /** Into the battery; negative while it gives. */
  readonly batteryA: number;
  readonly alternatorA: number;
  /** Since the beginning, ampere seconds in and out of the battery together. */
  readonly netAs: number;
}

interface ElectricInputs {
  readonly keyOn: boolean;
  readonly starter: boolean;
  readonly heater: boolean;
  readonly rpm: number;
  readonly alternator: 'works' | 'dead';
}

/** Sizes by displacement: common practice, no published source. */
const AMPERE_PER_L = 75;
const AMPERE_HOUR_PER_L = 30;
/** The smallest diesels have starter and battery as for so much: lamps and gauges draw the same of every engine. */
const LEAST_L = 1.3;
/** The starter pulls a 12 V battery down by so much. */
const SAG_V = 1.9;
const LOAD_A = 10;
const ALTERNATOR_A = 120;
const HEATER_SHARE = 0.25;
/** Below this the alternator does not excite. */
const CUT_IN_RPM = 400;
const FIRST_CHARGE = 0.95;
/** A charged battery takes a few tens of amperes at the regulator's voltage, not hundreds. */
const CHARGING_SHARE = 15;

/**
 * Volts of a rested 12 V battery from empty to full, as straight as the table that the tool reads it back with.
 * Source: Battery Council International, 11.89 to 12.65 V at 26.7 degC (from memory).
 */
const EMPTY_V = 11.89;
const FULL_V = 12.65;

export function electricPlant(profile: Profile, ambientC: number): ElectricPlant {
  const { systemVoltage, engine, charging } = profile;
  const series = systemVoltage / 12;
  const sizeL = Math.max(LEAST_L, engine.displacementL);
  const starterA = (AMPERE_PER_L * sizeL) / series;
  const resistanceOhm = (SAG_V * series) / starterA;
  const window = chargingWindow(systemVoltage, { ...charging, batteryC: ambientC });
  return {
    systemVoltage,
    capacityAs: ((AMPERE_HOUR_PER_L * sizeL) / series) * 3600,
    resistanceOhm,
    chargingOhm: CHARGING_SHARE * resistanceOhm,
    starterA,
    heaterA: HEATER_SHARE * starterA,
    loadA: LOAD_A / series,
    alternatorMaxA: ALTERNATOR_A / series,
    setpointV: window.ok ? (window.value.minV + window.value.maxV) / 2 : charging.setpointV * series,
    ambientC,
  };
}

/** Volts at rest of a battery that is charged so far, 0 to 1. */
export const restVoltage = ({ systemVoltage }: ElectricPlant, charge: number): number =>
  (systemVoltage / 12) * (EMPTY_V + (FULL_V - EMPTY_V) * charge);

export const electricAtRest = (plant: ElectricPlant): ElectricState => ({
  charge: FIRST_CHARGE,
  batteryV: restVoltage(plant, FIRST_CHARGE),
  batteryA: 0,
  alternatorA: 0,
  netAs: 0,
});

/**
 * One step: the battery stands behind its resistance; the alternator gives what brings the voltage to its
 * setpoint, as far as it can; what flows in or out is the charge.
 */
export function electricStep(
  plant: ElectricPlant,
  state: ElectricState,
  inputs: ElectricInputs,
  dtS: number,
): ElectricState {
  const drawnA =
    (inputs.keyOn ? plant.loadA : 0) +
    (inputs.starter ? plant.starterA : 0) +
    (inputs.heater ? plant.heaterA : 0);
  const rest = restVoltage(plant, state.charge);
  const works = inputs.alternator === 'works' && inputs.keyOn && inputs.rpm > CUT_IN_RPM;
  const wantedA = drawnA + (plant.setpointV - rest) / plant.chargingOhm;
  const alternatorA = works ? Math.min(plant.alternatorMaxA, Math.max(0, wantedA)) : 0;
  const flowA = alternatorA - drawnA;
  // A battery neither takes what it has no room for nor gives what it has not.
  const nextCharge = Math.min(1, Math.max(0, state.charge + (flowA * dtS) / plant.capacityAs));
  return {
    charge: nextCharge,
    batteryV: Math.max(0, rest + flowA * (flowA > 0 ? plant.chargingOhm : plant.resistanceOhm)),
    batteryA: flowA,
    alternatorA,
    netAs: state.netAs + (nextCharge - state.charge) * plant.capacityAs,
  };
}
