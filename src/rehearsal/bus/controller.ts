import { fastestRpm, type Profile } from '../../profile/schema.ts';
import type { FaultName } from '../faults.ts';
import type { EngineState } from '../model/engine.ts';

/** A fault code that the controller has found. */
export interface ActiveCode {
  readonly spn: number;
  readonly fmi: number;
  readonly lamp: 'redStop' | 'amberWarning';
}

/** What the engine's controller makes of the engine: codes for the bus, lamps for the panel. */
export interface ControllerView {
  readonly codes: readonly ActiveCode[];
  /** Lit lamps by their ids in the profile. */
  readonly lit: ReadonlySet<string>;
}

interface Controller {
  /** Looks at the engine once; to be called in the order of time. */
  look(state: EngineState, faults: ReadonlySet<FaultName>): ControllerView;
}

/** Lamps that are tried when the key is turned on burn so long. */
const LAMP_TEST_S = 3;
/** Oil pressure is believed to be missing only this long after the engine has fired, and only for so long. */
const PRESSURE_AFTER_S = 12;
const PRESSURE_MISSING_S = 1;
const OVERSPEED_SHARE = 1.1;
const LOW_RAIL_KPA = 15_000;
const RAIL_AFTER_S = 2;

/** Numbers of SAE J1939-71 and failure modes of J1939-73 (from memory). */
const codes = {
  oilPressureLow: { spn: 100, fmi: 1, lamp: 'redStop' },
  coolantHot: { spn: 110, fmi: 0, lamp: 'redStop' },
  overspeed: { spn: 190, fmi: 0, lamp: 'redStop' },
  coolantSensor: { spn: 110, fmi: 3, lamp: 'amberWarning' },
  waterInFuel: { spn: 97, fmi: 15, lamp: 'amberWarning' },
  railLow: { spn: 157, fmi: 18, lamp: 'amberWarning' },
} as const satisfies Record<string, ActiveCode>;

/** The controller of the engine that the profile describes. */
export function createController(profile: Profile): Controller {
  let missingSinceS: number | null = null;

  function activeCodes(
    { timeS, oil, heat, speed, fuel, fluids }: EngineState,
    faults: ReadonlySet<FaultName>,
  ) {
    const missing = speed.ranS > PRESSURE_AFTER_S && oil.pressureKpa < profile.oilPressure.showsKpa;
    missingSinceS = missing ? (missingSinceS ?? timeS) : null;
    const sensorOff = faults.has('sensorUnplugged');
    const highestRpm = OVERSPEED_SHARE * fastestRpm(profile);
    return [
      ...(missingSinceS !== null && timeS - missingSinceS >= PRESSURE_MISSING_S
        ? [codes.oilPressureLow]
        : []),
      ...(!sensorOff && fluids.coolantL > 0 && heat.coolantC > profile.thermostat.coolantMaxC
        ? [codes.coolantHot]
        : []),
      ...(speed.rpm > highestRpm + profile.idle.spreadMaxRpm ? [codes.overspeed] : []),
      ...(sensorOff ? [codes.coolantSensor] : []),
      ...(faults.has('waterInFuel') ? [codes.waterInFuel] : []),
      ...(speed.ranS > RAIL_AFTER_S && fuel.railKpa < LOW_RAIL_KPA ? [codes.railLow] : []),
    ];
  }

  return {
    look(state, faults) {
      const { controls, keyOnS, speed, electrics, heaterLeftS, oil } = state;
      if (!controls.keyOn) {
        missingSinceS = null;
        return { codes: [], lit: new Set() };
      }
      const active = activeCodes(state, faults);
      const testing = keyOnS <= LAMP_TEST_S && !speed.firing;
      const wanted: Readonly<Record<string, boolean>> = {
        redStop: active.some(code => code.lamp === 'redStop'),
        amberWarning: active.some(code => code.lamp === 'amberWarning'),
        oilPressure: oil.pressureKpa < profile.oilPressure.showsKpa,
        charging: electrics.alternatorA <= 0,
        waterInFuel: faults.has('waterInFuel'),
        ...(profile.heater ? { [profile.heater.lampId]: heaterLeftS > 0 } : {}),
      };
      const open = faults.has('lampDriverOpen') ? openLamp(profile) : undefined;
      const lit = profile.lamps.filter(
        ({ id, keyOn, running }) =>
          id !== open &&
          ((testing && keyOn === 'on') || (wanted[id] ?? (speed.firing ? running : keyOn) === 'on')),
      );
      return { codes: active, lit: new Set(lit.map(lamp => lamp.id)) };
    },
  };
}

/** The first lamp that ought to light with the key on. */
const openLamp = ({ lamps }: Profile) => lamps.find(lamp => lamp.keyOn === 'on')?.id;
