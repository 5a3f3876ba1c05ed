import type { InspectPoint } from '../../machines/vocabulary.ts';
import type { Profile } from '../profile/schema.ts';
import type { ActiveCode, ControllerView } from './bus/controller.ts';
import { restVoltage } from './model/electrics.ts';
import type { Engine } from './model/engine.ts';
import { coolantHasAir, steeringHasAir } from './model/fluids.ts';
import { primerIsFirm } from './model/fuel.ts';

/** What a person at the engine can see and hear of it. */
export interface Gauges {
  readonly rpm: number;
  readonly firing: boolean;
  readonly oilPressureKpa: number;
  /** Null where the gauge shows nothing. */
  readonly coolantC: number | null;
  readonly batteryV: number;
  /** The lowest that the voltmeter showed while the starter turned; null before. */
  readonly crankingV: number | null;
  /** What a tester would pull the battery down to, drawing as much as the starter does. */
  readonly underLoadV: number;
  readonly lit: ReadonlySet<string>;
  /** Lamps that lit when the key was turned on; null before it was. */
  readonly litAtKeyOn: ReadonlySet<string> | null;
  readonly codes: readonly ActiveCode[];
  readonly strokes: number;
  readonly primerFirm: boolean;
  readonly coolantAir: boolean;
  readonly steeringAir: boolean;
  readonly coolantShort: boolean;
  /** Felt from outside: the thermostat lets coolant through to the radiator. */
  readonly upperHoseHot: boolean;
  readonly oilFilledL: number;
  /** Where something drips, hisses or smokes. */
  readonly wrongAt: ReadonlySet<InspectPoint>;
  /** Speed has swung beyond what the profile allows in the last seconds. */
  readonly hunting: boolean;
}

/** What flows through a thermostat that is so far open makes the hose behind it hot, from this temperature on. */
const OPEN_SHARE = 0.05;
const HOT_C = 60;
/** A litre of coolant is missed at the mark before this share. */
const SHORT_SHARE = 0.97;
const LOOKS_BACK_S = 8;
const SPEED_EVERY_S = 0.5;
/** A wet line under pressure: the rail is up. */
const WET_FROM_KPA = 5000;

/** Eyes and ears at the engine; they remember what can only be seen for a moment. */
export function createEyes(profile: Profile, engine: Engine) {
  let crankingV: number | null = null;
  let litAtKeyOn: Set<string> | null = null;
  let keyWasOn = false;
  let speeds: { readonly timeS: number; readonly rpm: number }[] = [];

  function remember(view: ControllerView): void {
    const { controls, electrics, speed, timeS } = engine.state;
    if (controls.keyOn && !keyWasOn) litAtKeyOn = new Set();
    keyWasOn = controls.keyOn;
    if (!speed.firing && !controls.starter) for (const id of view.lit) litAtKeyOn?.add(id);
    if (controls.starter) crankingV = Math.min(crankingV ?? electrics.batteryV, electrics.batteryV);
    const settled = speed.firing && controls.demandRpm === null;
    if (settled && timeS - (speeds.at(-1)?.timeS ?? 0) < SPEED_EVERY_S) return;
    speeds = settled
      ? [...speeds.filter(row => row.timeS > timeS - LOOKS_BACK_S), { timeS, rpm: speed.rpm }]
      : [];
  }

  /** Swings, not drifts: it has to be above and below its middle several times. */
  function hunting(): boolean {
    if (speeds.length < 2) return false;
    const rpms = speeds.map(row => row.rpm);
    const middle = (Math.max(...rpms) + Math.min(...rpms)) / 2;
    const swing = Math.max(...rpms) - Math.min(...rpms);
    const crossings = rpms.filter(
      (rpm, index) => index > 0 && rpm > middle !== (rpms[index - 1] ?? rpm) > middle,
    );
    return swing > 2 * profile.idle.spreadMaxRpm && crossings.length >= 2;
  }

  function wrongAt(): Set<InspectPoint> {
    const points = new Set<InspectPoint>();
    const { faults, state } = engine;
    if (faults.has('injectorLineLeak') && state.fuel.railKpa > WET_FROM_KPA) points.add('fuelJoints');
    if (state.fluids.lostL > 0) points.add('coolantJoints');
    return points;
  }

  return {
    /** To be called at every step: some things are seen only for a moment. */
    remember,
    look(view: ControllerView): Gauges {
      const { faults, state, plant } = engine;
      const { speed, oil, heat, electrics, fuel, fluids } = state;
      return {
        rpm: speed.rpm,
        firing: speed.firing,
        oilPressureKpa: oil.pressureKpa,
        coolantC: faults.has('sensorUnplugged') ? null : heat.coolantC,
        batteryV: electrics.batteryV,
        crankingV,
        underLoadV:
          restVoltage(plant.electrics, electrics.charge) -
          plant.electrics.starterA * plant.electrics.resistanceOhm,
        lit: view.lit,
        litAtKeyOn,
        codes: view.codes,
        strokes: Math.round(fuel.strokes),
        primerFirm: primerIsFirm(fuel),
        coolantAir: coolantHasAir(fluids, plant.coolantL),
        steeringAir: steeringHasAir(fluids),
        coolantShort: fluids.coolantL < SHORT_SHARE * plant.coolantL,
        upperHoseHot: speed.rpm > 0 && heat.opening > OPEN_SHARE && heat.coolantC > HOT_C,
        oilFilledL: oil.sumpL + oil.galleryL,
        wrongAt: wrongAt(),
        hunting: hunting(),
      };
    },
  };
}
