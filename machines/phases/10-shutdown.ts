import type { Profile } from '../../src/profile/schema.ts';
import { soakLimit } from '../limits/coolant.ts';
import { confirm, hold, inspect, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import { afterChecks } from './07-running-checks.ts';

const running = { engine: 'running', needs: afterChecks } as const;
const names = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'] as const;

/** Settle, key off, then watch the heat soak: coolant pressure rises when nothing carries heat away. */
export const shutdownSteps = ({ shutdown, fixedSpeedRpm }: Profile): readonly Step[] => [
  hold(
    fixedSpeedRpm === undefined ? 'shutdown.settle' : 'shutdown.settleUnloaded',
    () => shutdown.settleS,
    running,
  ),
  reading('shutdown.coolant', 'coolantTemperature', soakLimit, running),
  confirm('shutdown.keyOff', 'engineOff', {
    ...running,
    standing: true,
    trouble: { reply: 'stillRunning', cause: 'overspeed' },
  }),
  ...names.slice(0, shutdown.heatSoakLooksAfterS.length).flatMap((name, index) => [
    hold(`shutdown.${name}Soak`, () => {
      const looks = shutdown.heatSoakLooksAfterS;
      return (looks[index] ?? 0) - (looks[index - 1] ?? 0);
    }),
    inspect(`shutdown.${name}Look`, {
      gate: 'noLeaksAfter',
      points: [
        { id: 'coolantJoints', cause: 'coolantLeak' },
        { id: 'fuelJoints', cause: 'fuelLeak' },
        { id: 'oilJoints', cause: 'oilLeak' },
      ],
    }),
  ]),
];
