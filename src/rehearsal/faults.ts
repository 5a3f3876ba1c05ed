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
  'firstRun',
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
  readonly caughtBy: CaughtBy;
}

export const faultKinds: Readonly<Record<FaultName, FaultKind>> = {
  noOilPressure: {
    phase: 'noFuelCrank',
    caughtBy: { stops: ['noOilPressure'] },
  },
  slowOilPressure: {
    phase: 'noFuelCrank',
    caughtBy: { stops: ['noOilPressure'] },
  },
  airInFuel: {
    phase: 'firstFire',
    caughtBy: { stops: ['noStart', 'fuelLeak'] },
  },
  huntingIdle: {
    phase: 'firstFire',
    caughtBy: { stops: ['other'], unmet: ['checks.idle'] },
  },
  alternatorDead: {
    phase: 'firstFire',
    caughtBy: { stops: ['faultCode'], unmet: ['checks.charging'] },
  },
  thermostatStuckOpen: {
    phase: 'warmUp',
    caughtBy: { stops: ['other'], lines: ['warmUpStuckOpen', 'notOpenedInTime'] },
  },
  thermostatStuckShut: {
    phase: 'warmUp',
    caughtBy: {
      stops: ['overheating', 'faultCode'],
      lines: ['warmUpStuckShut', 'hotAfterRun'],
      unmet: ['shutdown.coolant'],
    },
  },
  hoseLetGo: {
    phase: 'shutdown',
    caughtBy: { stops: ['coolantLeak'] },
  },
  waterInFuel: {
    phase: 'keyOn',
    caughtBy: { stops: ['faultCode'], lines: ['lampWrong'], codes: [97] },
  },
  sensorUnplugged: {
    phase: 'keyOn',
    caughtBy: { stops: ['faultCode'], codes: [110] },
  },
  lampDriverOpen: {
    phase: 'keyOn',
    caughtBy: { stops: ['faultCode'], lines: ['lampWrong'] },
  },
  injectorLineLeak: {
    phase: 'checks',
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
