import { chargingWindow, stateOfCharge } from '../engineering/battery.ts';
import { heaterWait } from '../engineering/intake-heater.ts';
import { oilPressureFloor } from '../engineering/oil-pressure.ts';
import { judgeSweep } from '../engineering/oil-pressure-sweep.ts';
import { describeIssue } from '../engineering/result.ts';
import { starterState } from '../engineering/starter.ts';
import type { Contradiction } from './consistency.ts';
import type { Profile } from './shape.ts';
import { fastestRpm } from './speeds.ts';

type Rule = (profile: Profile) => readonly Contradiction[];

const when = (isSo: boolean, path: Contradiction['path'], message: string): readonly Contradiction[] =>
  isSo ? [{ path, message }] : [];

/** Between these the air is taken at a first start, degC; as `job.ambient` does. */
const COLDEST_AIR_C = -40;
const WARMEST_AIR_C = 50;

const floorTable = ({ oilPressure: { floor } }: Profile) =>
  floor.map(({ oilC, points }) => ({
    oilC,
    floorKpa: points.map(({ rpm, minKpa }): readonly [number, number] => [rpm, minKpa]),
  }));

/** Every speed at which oil pressure is judged: from the slowest idle to the fastest that it is asked for. */
const speedsOf = (profile: Profile): readonly number[] => {
  const { idle, sweeps, fixedSpeedRpm } = profile;
  return [
    Math.min(idle.cold.minRpm, idle.warm.minRpm),
    fixedSpeedRpm ?? idle.warm.maxRpm,
    ...sweeps.map(({ rpm }) => rpm),
    fastestRpm(profile),
  ];
};

/** The floor at every speed, of oil from the coldest air to the hottest coolant: with an answer, and one that can be met. */
const oilPressure: Rule = profile => {
  const path = ['oilPressure', 'floor'];
  const { reliefKpa, gaugeMaxKpa } = profile.oilPressure;
  const table = floorTable(profile);
  const floors = speedsOf(profile).flatMap(rpm =>
    [COLDEST_AIR_C, profile.thermostat.coolantMaxC].map(oilC => oilPressureFloor(rpm, oilC, table)),
  );
  const unanswered = floors.find(floor => !floor.ok);
  if (unanswered && !unanswered.ok)
    return when(
      true,
      path,
      `cannot judge the oil pressure of a sound engine (${describeIssue(unanswered.issue).replace(/\.$/, '')}): list floors that never fall with speed, from the slowest idle to ${fastestRpm(profile)} rpm, up to coolantMaxC or hotter`,
    );
  const highest = Math.max(...floors.map(floor => (floor.ok ? floor.value : Number.POSITIVE_INFINITY)));
  return [
    ...when(
      reliefKpa <= highest,
      ['oilPressure', 'reliefKpa'],
      `has to be above every floor that is asked for, ${Math.round(highest)}`,
    ),
    ...when(
      gaugeMaxKpa <= highest,
      ['oilPressure', 'gaugeMaxKpa'],
      `has to be above every floor that is asked for, ${Math.round(highest)}`,
    ),
  ];
};

/** A pump whose pressure follows the speed is seen to do so over the sweeps. */
const sweeps: Rule = ({ sweeps: rows }) => {
  if (rows.length === 0) return [];
  const judged = judgeSweep(rows.map(({ rpm }, index) => ({ speedRpm: rpm, pressureKpa: 100 + index })));
  return when(
    !judged.ok,
    ['sweeps'],
    'are too close together to tell that the pressure follows: the fastest has to be a third above the slowest',
  );
};

const idleRanges: Rule = ({ idle }) =>
  (['cold', 'warm'] as const).flatMap(key =>
    when(idle[key].minRpm >= idle[key].maxRpm, ['idle', key], 'minRpm has to be below maxRpm'),
  );

const heater: Rule = ({ heater: fitted }) => {
  if (!fitted) return [];
  const rows = fitted.waits.map(({ atC, waitS }) => ({ temperatureC: atC, seconds: waitS }));
  const grows = rows.some(({ seconds }, index) => index > 0 && seconds > (rows[index - 1]?.seconds ?? 0));
  const first = rows[0]?.temperatureC;
  const known = first === undefined || grows || heaterWait(rows, first).ok;
  return when(grows || !known, ['heater', 'waits'], 'have to get shorter, never longer, as it gets warmer');
};

/** A battery that is charged stands above one that rests full, or nothing is told from the voltage. */
const charging: Rule = ({ systemVoltage, charging: { setpointV, toleranceV, minStateOfCharge } }) => {
  const full = (systemVoltage / 12) * 12.65;
  const windows = [COLDEST_AIR_C, WARMEST_AIR_C].map(batteryC =>
    chargingWindow(systemVoltage, { setpointV, toleranceV, batteryC }),
  );
  const rest = stateOfCharge(systemVoltage, {
    restVoltageV: (systemVoltage / 12) * 13,
    batteryC: WARMEST_AIR_C,
  });
  return [
    ...when(
      windows.some(window => !window.ok || window.value.minV <= full),
      ['charging'],
      'reaches down to a battery at rest: raise setpointV or narrow toleranceV',
    ),
    ...when(
      !rest.ok || rest.value < minStateOfCharge,
      ['charging', 'minStateOfCharge'],
      'is more than any battery at rest shows',
    ),
  ];
};

const starter: Rule = ({ starter: row }) => {
  const cranks = [COLDEST_AIR_C, WARMEST_AIR_C].every(airC => {
    const state = starterState(row, airC, []);
    return state.ok && state.value.nextBurstS > 0;
  });
  return when(
    !cranks,
    ['starter', 'limitC'],
    'allows no burst at all: it has to be well above ratedAmbientC and the warmest air',
  );
};

const rules: readonly Rule[] = [oilPressure, sweeps, idleRanges, heater, charging, starter];

/**
 * Where a profile that is well formed would have a sound engine stopped, or never let through: by limits that have no
 * answer somewhere in the range they are asked in, or that nothing can meet. Held against it as it is loaded, not as an
 * old record with it is read.
 */
export const unjudgeableIn: Rule = profile => rules.flatMap(rule => rule(profile));
