import type { Profile } from '../../src/profile/schema.ts';
import { switchedOff } from '../controls.ts';
import { beforeKeyOff, runningCoolant } from '../limits/coolant.ts';
import { confirm, hold, inspect, reading } from '../step-makers.ts';
import type { InspectStep, Step } from '../steps.ts';
import { afterChecks } from './07-running-checks.ts';
import { ordinals } from './numbered.ts';

const running = { engine: 'running', needs: afterChecks } as const;

/**
 * Coolant joints at each look, as their pressure rises; fuel joints at the first, as theirs has gone with the key; oil
 * joints at the first and at the last, as oil creeps. Common practice, no published source.
 */
const pointsOf = (first: boolean, last: boolean): InspectStep['points'] => [
  { id: 'coolantJoints', cause: 'coolantLeak' },
  ...(first ? [{ id: 'fuelJoints', cause: 'fuelLeak' } as const] : []),
  ...(first || last ? [{ id: 'oilJoints', cause: 'oilLeak' } as const] : []),
];

/**
 * Coolant after the sweeps, settle, key off, then watch the heat soak: coolant pressure rises when nothing carries heat
 * away. A thermostat that stuck shut is found before the engine is left to idle for minutes more; one that works has the
 * coolant no hotter after them.
 */
export const shutdownSteps = (profile: Profile): readonly Step[] => [
  reading('shutdown.coolant', 'coolantTemperature', beforeKeyOff, {
    ...running,
    // What is too hot to be left is read again once it has cooled at idle.
    patience: 'hunt',
    bounds: { judge: runningCoolant, cause: 'overheating' },
  }),
  hold(
    profile.fixedSpeedRpm === undefined ? 'shutdown.settle' : 'shutdown.settleUnloaded',
    () => profile.shutdown.settleS,
    running,
  ),
  confirm('shutdown.keyOff', 'engineOff', {
    ...running,
    words: { off: switchedOff(profile) },
    patience: 'hunt',
    standing: true,
    trouble: { reply: 'stillRunning', cause: 'overspeed' },
  }),
  ...ordinals.slice(0, profile.shutdown.heatSoakLooksAfterS.length).flatMap((name, index) => [
    hold(`shutdown.${name}Soak`, () => {
      const looks = profile.shutdown.heatSoakLooksAfterS;
      return (looks[index] ?? 0) - (looks[index - 1] ?? 0);
    }),
    inspect(`shutdown.${name}Look`, {
      gate: 'noLeaksAfter',
      points: pointsOf(index === 0, index === profile.shutdown.heatSoakLooksAfterS.length - 1),
    }),
  ]),
];
