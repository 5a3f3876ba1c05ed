import type { Cause } from '../../machines/vocabulary.ts';
import type { LineId, StepId } from '../../prompts/types.ts';

/** What can be wrong with the engine that is rehearsed on. */
export const faultNames = [
  'noOilPressure',
  'slowOilPressure',
  'airInFuel',
  'huntingIdle',
  'alternatorDead',
  'thermostatStuckOpen',
  'thermostatStuckShut',
  'hoseLetGo',
  'waterInFuel',
  'sensorUnplugged',
  'lampDriverOpen',
  'injectorLineLeak',
] as const;

export type FaultName = (typeof faultNames)[number];

/** Phases in which a fault may come; those before anything is fitted have none. */
export const faultPhases = [
  'prime',
  'noFuelCrank',
  'keyOn',
  'firstFire',
  'checks',
  'warmUp',
  'sweeps',
  'shutdown',
] as const;

export type FaultPhase = (typeof faultPhases)[number];

/** A fault and the phase with whose beginning it comes. */
export interface PlannedFault {
  readonly name: FaultName;
  readonly phase: FaultPhase;
}

/** By what a session shows that it has caught a fault; one of them is enough. */
export interface CaughtBy {
  /** It stops for this cause. */
  readonly stops?: readonly Cause[];
  /** It says this line. */
  readonly lines?: readonly LineId[];
  /** It does not accept what was read at this step. */
  readonly unmet?: readonly StepId[];
  /** It judges this code. */
  readonly codes?: readonly number[];
}

interface FaultKind {
  /** The phase in which it comes when none is named. */
  readonly phase: FaultPhase;
  /** What is wrong, in one sentence. */
  readonly wrong: string;
  readonly caughtBy: CaughtBy;
}

export const faultKinds: Readonly<Record<FaultName, FaultKind>> = {
  noOilPressure: {
    phase: 'noFuelCrank',
    wrong: 'The oil pump delivers nothing.',
    caughtBy: { stops: ['noOilPressure'] },
  },
  slowOilPressure: {
    phase: 'noFuelCrank',
    wrong: 'The galleries run empty at rest and fill far too slowly.',
    caughtBy: { stops: ['noOilPressure'] },
  },
  airInFuel: {
    phase: 'firstFire',
    wrong: 'The suction side of the fuel system draws air.',
    caughtBy: { stops: ['noStart', 'fuelLeak'] },
  },
  huntingIdle: {
    phase: 'firstFire',
    wrong: 'The idle speed swings up and down.',
    caughtBy: { stops: ['other'], unmet: ['checks.idle'] },
  },
  alternatorDead: {
    phase: 'firstFire',
    wrong: 'The alternator charges nothing.',
    caughtBy: { stops: ['faultCode'], unmet: ['checks.charging'] },
  },
  thermostatStuckOpen: {
    phase: 'warmUp',
    wrong: 'The thermostat stays open.',
    caughtBy: { stops: ['other'], lines: ['warmUpStuckOpen'] },
  },
  thermostatStuckShut: {
    phase: 'warmUp',
    wrong: 'The thermostat stays shut.',
    caughtBy: {
      stops: ['overheating', 'faultCode'],
      lines: ['warmUpStuckShut'],
      unmet: ['shutdown.coolant'],
    },
  },
  hoseLetGo: {
    phase: 'shutdown',
    wrong: 'A coolant hose lets go after key-off.',
    caughtBy: { stops: ['coolantLeak'] },
  },
  waterInFuel: {
    phase: 'keyOn',
    wrong: 'There is water in the fuel filter.',
    caughtBy: { stops: ['faultCode'], lines: ['lampWrong'], codes: [97] },
  },
  sensorUnplugged: {
    phase: 'keyOn',
    wrong: 'The plug of the coolant temperature sensor is off.',
    caughtBy: { stops: ['faultCode'], codes: [110] },
  },
  lampDriverOpen: {
    phase: 'keyOn',
    wrong: 'The driver of the first warning lamp is open: the lamp never lights.',
    caughtBy: { stops: ['faultCode'], lines: ['lampWrong'] },
  },
  injectorLineLeak: {
    phase: 'checks',
    wrong: 'An injector line leaks under pressure.',
    caughtBy: { stops: ['fuelLeak'] },
  },
};

/** A choice for a rehearsal that cannot be used: one sentence. */
export class RehearsalError extends Error {
  override readonly name = 'RehearsalError';
}

/**
 * Reads a fault as it is typed: its name, or its name and the phase in which it comes (`noOilPressure@checks`).
 * @throws RehearsalError when there is no such fault or no such phase
 */
export function parseFault(text: string): PlannedFault {
  const [given = '', at, ...rest] = text.split('@');
  const name = faultNames.find(each => each === given);
  if (!name || rest.length > 0)
    throw new RehearsalError(`Fault "${text}" is not known; choose from ${faultNames.join(', ')}.`);
  if (at === undefined) return { name, phase: faultKinds[name].phase };
  const phase = faultPhases.find(each => each === at);
  if (!phase)
    throw new RehearsalError(
      `Phase "${at}" of fault "${text}" is not known; choose from ${faultPhases.join(', ')}.`,
    );
  return { name, phase };
}
