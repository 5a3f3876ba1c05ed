import { FUEL_J_PER_L, IRON_J_PER_KG_K } from '../../engineering/heat-bounds.ts';
import { fastestRpm, type Profile } from '../../profile/schema.ts';

/** Three lumps (metal, coolant, oil), the air outside, and a radiator behind a thermostat. */
export interface HeatPlant {
  readonly ambientC: number;
  readonly metalJPerK: number;
  readonly coolantJPerKPerL: number;
  readonly oilJPerK: number;
  readonly idleHeatW: number;
  readonly idleRpm: number;
  readonly metalToCoolantRunningWPerK: number;
  readonly metalToCoolantStandingWPerK: number;
  readonly metalToOilWPerK: number;
  readonly metalToAirWPerK: number;
  readonly radiatorWPerK: number;
  readonly opensC: number;
  readonly fullyOpenC: number;
}

export interface HeatState {
  readonly metalC: number;
  readonly coolantC: number;
  readonly oilC: number;
  /** 0 shut to 1 open; it follows the coolant late, as wax does. */
  readonly opening: number;
  /** Since the beginning, J: what the engine gave off inside, and what air has taken up. */
  readonly givenJ: number;
  readonly rejectedJ: number;
}

export interface HeatInputs {
  readonly rpm: number;
  readonly firing: boolean;
  readonly coolantL: number;
  readonly thermostat: 'works' | 'stuckOpen' | 'stuckShut';
}

/** Sizes without a figure in the profile: common practice, no published source, unless another is named. */
/** What of the engine's 65 kg for each litre warms along with the coolant: head, liners and the block around them. */
const WARMING_KG_PER_L = 35;
/** Half glycol, half water, J/(K litre) (from memory). */
const COOLANT_J_PER_K_L = 3500;
/** Engine oil, J/(K litre) (from memory). */
const OIL_J_PER_K_L = 1750;
/** Standing engines lose their heat with about this time constant. */
const COOL_DOWN_S = 8000;
/**
 * Fuel at warm idle without load, litre an hour for each litre of displacement: trucks of this size idle at 0.4 to
 * 0.6 US gallons an hour (Argonne National Laboratory, idle reduction, from memory).
 */
const IDLE_L_PER_H_PER_L = 0.3;
/**
 * At idle, coolant and oil take up this share of it, friction included (Heywood, Internal Combustion Engine
 * Fundamentals, chapter 12, energy balance: more the lighter the load; from memory).
 */
const TO_BLOCK_SHARE = 0.4;
/** What still moves between metal and coolant once the pump stands. */
const STANDING_SHARE = 0.15;
const HOT_DAY_C = 40;
const METAL_TO_OIL_S = 150;
const WAX_S = 15;
/** An empty system still holds what clings to its walls, so that a temperature stays defined. */
const LEAST_COOLANT_L = 0.5;
const HEAT_EXPONENT = 1.2;

/**
 * The lumps of the engine that a profile describes. The heat at idle is that of the fuel burned there: a cold engine
 * without load warms slowly, and may not come to its thermostat at all. The metal is so much hotter than the coolant that the
 * rise after key-off is half of what the profile expects.
 */
export function heatPlant(profile: Profile, ambientC: number): HeatPlant {
  const { coolant, oil, engine, thermostat, shutdown, idle } = profile;
  const metalJPerK = engine.displacementL * WARMING_KG_PER_L * IRON_J_PER_KG_K;
  const coolantJPerK = coolant.systemVolumeL * COOLANT_J_PER_K_L;
  const oilJPerK = oil.capacityL * OIL_J_PER_K_L;
  const allJPerK = metalJPerK + coolantJPerK + oilJPerK;
  const metalToAirWPerK = allJPerK / COOL_DOWN_S;
  const idleHeatW = ((engine.displacementL * IDLE_L_PER_H_PER_L) / 3600) * FUEL_J_PER_L * TO_BLOCK_SHARE;
  const idleRpm = (idle.warm.minRpm + idle.warm.maxRpm) / 2;
  const fastest = fastestRpm(profile);
  const excessK = Math.max(2, shutdown.soakRiseK / 2);
  const running = (idleHeatW * metalJPerK) / (metalJPerK + coolantJPerK) / excessK;
  return {
    ambientC,
    metalJPerK,
    coolantJPerKPerL: COOLANT_J_PER_K_L,
    oilJPerK,
    idleHeatW,
    idleRpm,
    metalToCoolantRunningWPerK: running,
    metalToCoolantStandingWPerK: STANDING_SHARE * running,
    metalToOilWPerK: oilJPerK / METAL_TO_OIL_S,
    metalToAirWPerK,
    radiatorWPerK:
      (idleHeatW * heatShare(fastest, idleRpm)) / Math.max(10, thermostat.fullyOpenC - HOT_DAY_C),
    opensC: thermostat.opensC,
    fullyOpenC: thermostat.fullyOpenC,
  };
}

/** Heat against that at idle, by speed, without load. */
const heatShare = (rpm: number, idleRpm: number) => (Math.max(0, rpm) / idleRpm) ** HEAT_EXPONENT;

export const heatAtRest = ({ ambientC }: HeatPlant): HeatState => ({
  metalC: ambientC,
  coolantC: ambientC,
  oilC: ambientC,
  opening: 0,
  givenJ: 0,
  rejectedJ: 0,
});

const held = (coolantL: number) => Math.max(LEAST_COOLANT_L, coolantL);

/**
 * Heat in the lumps above the air outside, J. Coolant that runs out takes its heat along, so this changes also
 * where the coolant does.
 */
export const storedJ = (plant: HeatPlant, { metalC, coolantC, oilC }: HeatState, coolantL: number): number =>
  plant.metalJPerK * (metalC - plant.ambientC) +
  plant.coolantJPerKPerL * held(coolantL) * (coolantC - plant.ambientC) +
  plant.oilJPerK * (oilC - plant.ambientC);

/** A dry system is filled with coolant as cold as the air outside. */
export const mixInCoolant = (plant: HeatPlant, state: HeatState, coolantL: number): HeatState => ({
  ...state,
  coolantC: plant.ambientC + ((state.coolantC - plant.ambientC) * LEAST_COOLANT_L) / held(coolantL),
});

/** One step of explicit Euler. What leaves one lump enters another or the air: nothing is lost between them. */
export function heatStep(plant: HeatPlant, state: HeatState, inputs: HeatInputs, dtS: number): HeatState {
  const turning = inputs.rpm > 0;
  const coolantJPerK = plant.coolantJPerKPerL * held(inputs.coolantL);
  const giveW = inputs.firing ? plant.idleHeatW * heatShare(inputs.rpm, plant.idleRpm) : 0;
  const toCoolantW =
    (turning ? plant.metalToCoolantRunningWPerK : plant.metalToCoolantStandingWPerK) *
    (state.metalC - state.coolantC);
  const toOilW = plant.metalToOilWPerK * (state.metalC - state.oilC);
  const toAirW = plant.metalToAirWPerK * (state.metalC - plant.ambientC);
  const radiatorW = turning ? plant.radiatorWPerK * state.opening * (state.coolantC - plant.ambientC) : 0;
  return {
    metalC: state.metalC + ((giveW - toCoolantW - toOilW - toAirW) * dtS) / plant.metalJPerK,
    coolantC: state.coolantC + ((toCoolantW - radiatorW) * dtS) / coolantJPerK,
    oilC: state.oilC + (toOilW * dtS) / plant.oilJPerK,
    opening: nextOpening(plant, state, inputs.thermostat, dtS),
    givenJ: state.givenJ + giveW * dtS,
    rejectedJ: state.rejectedJ + (toAirW + radiatorW) * dtS,
  };
}

function nextOpening(
  { opensC, fullyOpenC }: HeatPlant,
  { coolantC, opening }: HeatState,
  thermostat: HeatInputs['thermostat'],
  dtS: number,
): number {
  if (thermostat !== 'works') return thermostat === 'stuckOpen' ? 1 : 0;
  const wanted = Math.min(1, Math.max(0, (coolantC - opensC) / (fullyOpenC - opensC)));
  return opening + ((wanted - opening) * dtS) / WAX_S;
}
