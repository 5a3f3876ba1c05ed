import { heaterWait } from '../../engineering/intake-heater.ts';
import type { Profile } from '../../profile/schema.ts';
import type { FaultName } from '../faults.ts';
import { seeded } from '../random.ts';
import { type Controls, handsOff } from './controls.ts';
import {
  type ElectricPlant,
  type ElectricState,
  electricAtRest,
  electricPlant,
  electricStep,
} from './electrics.ts';
import { type FluidState, fillCoolant, fluidStep, noFluids } from './fluids.ts';
import { FIRES_FROM_KPA, type FuelState, fuelPlant, fuelStep, unprimed } from './fuel.ts';
import { type HeatPlant, type HeatState, heatAtRest, heatPlant, heatStep, mixInCoolant } from './heat.ts';
import { dryOil, fillOil, type OilPlant, type OilState, oilPlant, oilStep } from './oil.ts';
import { type SpeedPlant, type SpeedState, speedPlant, speedStep, standing } from './speed.ts';

/** The fixed step, seconds: as often as the fastest message is sent. */
export const STEP_S = 0.05;

/** Everything about the engine at one moment. */
export interface EngineState {
  readonly timeS: number;
  readonly controls: Controls;
  readonly speed: SpeedState;
  readonly heat: HeatState;
  readonly oil: OilState;
  readonly fuel: FuelState;
  readonly electrics: ElectricState;
  readonly fluids: FluidState;
  /** Seconds since the key was turned on; 0 while it is off. */
  readonly keyOnS: number;
  /** Seconds that the intake heater still works. */
  readonly heaterLeftS: number;
  /** It has fired since the beginning. */
  readonly hasRun: boolean;
}

interface Plant {
  readonly heat: HeatPlant;
  readonly oil: OilPlant;
  readonly electrics: ElectricPlant;
  readonly speed: SpeedPlant;
  readonly coolantL: number;
  /** Seconds that the intake heater works after each key-on. */
  readonly heaterS: number;
}

interface EngineOptions {
  readonly seed: number;
  /** -40 to 50 degC. */
  readonly ambientC: number;
}

export interface Engine {
  readonly plant: Plant;
  readonly state: EngineState;
  readonly faults: ReadonlySet<FaultName>;
  /** What people do from now on. */
  control(controls: Controls): void;
  inject(fault: FaultName): void;
  /** Moves the engine on to this time, seconds since the beginning, in whole steps; never back. */
  advanceTo(timeS: number): void;
}

const PUMP_HEALTH_WHEN_SLOW = 0.2;

/** A model of the engine that the profile describes, standing cold and dry; the same for the same seed. */
export function createEngine(profile: Profile, { seed, ambientC }: EngineOptions): Engine {
  const random = seeded(seed, 'engine');
  const plant: Plant = {
    heat: heatPlant(profile, ambientC),
    oil: oilPlant(profile, ambientC, random),
    electrics: electricPlant(profile, ambientC),
    speed: speedPlant(profile),
    coolantL: profile.coolant.systemVolumeL,
    heaterS: heaterSeconds(profile, ambientC),
  };
  const faults = new Set<FaultName>();
  let steps = 0;
  let state: EngineState = {
    timeS: 0,
    controls: handsOff,
    speed: standing,
    heat: heatAtRest(plant.heat),
    oil: dryOil,
    fuel: unprimed(fuelPlant(profile, random)),
    electrics: electricAtRest(plant.electrics),
    fluids: noFluids,
    keyOnS: 0,
    heaterLeftS: 0,
    hasRun: false,
  };
  return {
    plant,
    get state() {
      return state;
    },
    faults,
    control(controls) {
      state = filled(plant, { ...state, controls });
    },
    inject(fault) {
      faults.add(fault);
    },
    advanceTo(timeS) {
      // Half a step of grace: sums of steps are never exactly whole.
      for (; (steps + 0.5) * STEP_S < timeS; steps += 1)
        state = { ...engineStep(plant, state, faults), timeS: (steps + 1) * STEP_S };
    },
  };
}

function heaterSeconds({ heater }: Profile, ambientC: number): number {
  if (!heater) return 0;
  const wait = heaterWait(
    heater.waits.map(row => ({ temperatureC: row.atC, seconds: row.waitS })),
    ambientC,
  );
  return wait.ok ? wait.value : 0;
}

function filled(plant: Plant, state: EngineState): EngineState {
  const { controls, oil, fluids, heat } = state;
  const fillsCoolant = controls.coolantFilled && fluids.coolantL === 0;
  return {
    ...state,
    oil: controls.oilFilled && oil.sumpL === 0 ? fillOil(plant.oil, oil) : oil,
    fluids: fillsCoolant ? fillCoolant(fluids, plant.coolantL) : fluids,
    heat: fillsCoolant ? mixInCoolant(plant.heat, heat, plant.coolantL) : heat,
  };
}

/** One step of everything: each part sees the others as they were at its beginning. */
function engineStep(plant: Plant, state: EngineState, faults: ReadonlySet<FaultName>): EngineState {
  const { controls, speed, heat, fuel, electrics, fluids } = state;
  const { keyOn, fuelling } = controls;
  const starter = controls.starter && keyOn;
  const { rpm } = speed;
  const heating = keyOn && state.heaterLeftS > 0;
  const hoseOff = faults.has('hoseLetGo') && state.hasRun && !keyOn;
  const after = heatStep(
    plant.heat,
    heat,
    { rpm, firing: speed.firing, coolantL: fluids.coolantL, thermostat: thermostatOf(faults) },
    STEP_S,
  );
  // At the temperature after the step: what the coolant takes along is then exactly what the heat loses.
  const coolantJPerL = plant.heat.coolantJPerKPerL * (after.coolantC - plant.heat.ambientC);
  return {
    ...state,
    speed: speedStep(
      plant.speed,
      speed,
      {
        starter,
        fed: keyOn && fuelling && fuel.railKpa >= FIRES_FROM_KPA,
        demandRpm: controls.demandRpm,
        coolantC: heat.coolantC,
        batteryV: electrics.batteryV,
        hunts: faults.has('huntingIdle'),
      },
      STEP_S,
    ),
    heat: after,
    oil: oilStep(
      plant.oil,
      state.oil,
      { rpm, oilC: heat.oilC, pumpHealth: pumpHealth(faults), drainsBack: faults.has('slowOilPressure') },
      STEP_S,
    ),
    fuel: fuelStep(
      fuel,
      { rpm, keyOn, fuelling, pumpingByHand: controls.pumpingByHand, drawsAir: faults.has('airInFuel') },
      STEP_S,
    ),
    electrics: electricStep(
      plant.electrics,
      electrics,
      { keyOn, starter, heater: heating, rpm, alternator: faults.has('alternatorDead') ? 'dead' : 'works' },
      STEP_S,
    ),
    fluids: fluidStep(
      fluids,
      plant.coolantL,
      coolantJPerL,
      { bleeding: controls.bleeding, hoseOff, steering: controls.steering, rpm },
      STEP_S,
    ),
    keyOnS: keyOn ? state.keyOnS + STEP_S : 0,
    heaterLeftS: keyOn ? (state.keyOnS === 0 ? plant.heaterS : Math.max(0, state.heaterLeftS - STEP_S)) : 0,
    hasRun: state.hasRun || speed.firing,
  };
}

function pumpHealth(faults: ReadonlySet<FaultName>): number {
  if (faults.has('noOilPressure')) return 0;
  return faults.has('slowOilPressure') ? PUMP_HEALTH_WHEN_SLOW : 1;
}

function thermostatOf(faults: ReadonlySet<FaultName>) {
  if (faults.has('thermostatStuckShut')) return 'stuckShut';
  return faults.has('thermostatStuckOpen') ? 'stuckOpen' : 'works';
}
