import type { Profile } from './schema.ts';

/**
 * What a start's times, volts and speeds hang on. A profile is changed for many reasons; starts by its older versions
 * are starts of the same engine while none of this has changed.
 */
const bearsOnAStart = ({
  name,
  engine,
  systemVoltage,
  turbo,
  fixedSpeedRpm,
  oil,
  priming,
  prelube,
  starter,
  idle,
  charging,
  thermostat,
}: Profile): string =>
  JSON.stringify([
    [name, engine.cylinders, engine.displacementL, systemVoltage, turbo, fixedSpeedRpm ?? null],
    [oil.capacityL, oil.grades.map(({ grade }) => grade), prelube !== null],
    [priming.pumpLitrePerTurn, priming.pumpTurnsPerCrankTurn, priming.fillLitres],
    [starter.crankingRpm, idle.warm.minRpm, idle.warm.maxRpm, idle.cold.minRpm, idle.cold.maxRpm],
    [charging.setpointV, thermostat.opensC],
  ]);

/** Whether starts by these two profiles, or by two versions of one, may be held beside each other. */
export const isSameEngine = (one: Profile, other: Profile): boolean =>
  bearsOnAStart(one) === bearsOnAStart(other);
