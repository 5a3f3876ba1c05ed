import { judgeWarmUpHold } from '../../src/engineering/warm-up.ts';
import type { Profile } from '../../src/profile/schema.ts';
import { runningCoolant } from '../limits/coolant.ts';
import { nearThermostat, thermostatReached, warmUpOutlook } from '../limits/engine.ts';
import { confirm, watch } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import { afterChecks } from './07-running-checks.ts';

const running = { engine: 'running', needs: afterChecks } as const;

/** Coolant up to the thermostat, then the steering from lock to lock. */
export const warmUpSteps = ({ warmUp }: Profile): readonly Step[] => [
  watch('warmUp.watch', {
    ...running,
    ok: 'thermostatOpen',
    everyS: () => warmUp.readEveryS,
    atLeastS: () => warmUp.minS,
    enough: watchedS => judgeWarmUpHold(watchedS, warmUp.minS),
    timeUp: { seconds: () => warmUp.maxS, cause: 'other' },
    reading: {
      quantity: 'coolantTemperature',
      reached: thermostatReached,
      agrees: nearThermostat,
      bounds: runningCoolant,
      cause: 'overheating',
      outlook: warmUpOutlook,
    },
    values: () => ({ unit: { unitOf: 'coolantTemperature' } }),
  }),
  confirm('warmUp.steeringLocks', 'noBubbles', running),
  confirm('warmUp.levels', 'levelsGood', running),
];
