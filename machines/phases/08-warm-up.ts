import { judgeWarmUpHold } from '../../src/engineering/warm-up.ts';
import type { Profile } from '../../src/profile/schema.ts';
import type { Context } from '../context.ts';
import { runningCoolant } from '../limits/coolant.ts';
import {
  isFarFromThermostat,
  nearThermostat,
  nextWarmUpLookS,
  thermostatReached,
  warmUpOutlook,
} from '../limits/engine.ts';
import { isOpenItem } from '../open-items.ts';
import { confirm, watch } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import { afterChecks } from './07-running-checks.ts';

const running = { engine: 'running', needs: afterChecks } as const;

/** A hose that is waited for, locks and bottles take walking. */
const roundIt = { ...running, patience: 'hunt' } as const;

const coolant = {
  quantity: 'coolantTemperature',
  reached: thermostatReached,
  agrees: nearThermostat,
  bounds: runningCoolant,
  cause: 'overheating',
  farFrom: isFarFromThermostat,
  outlook: warmUpOutlook,
} as const;

/**
 * By the gauge alone the coolant has come to where the thermostat opens: that it has opened is felt at the upper hose,
 * and one that stuck shut has it cold. Common practice, no published source.
 */
function isFeltYet(context: Context): boolean {
  const last = context.readings.findLast(({ step }) => step === 'warmUp.watch' || step === 'warmUp.fastIdle');
  return !last || last.si < context.profile.thermostat.opensC;
}

/** Coolant up to the thermostat, then the steering from lock to lock. */
export function warmUpSteps({ warmUp, steering }: Profile): readonly Step[] {
  const { idleMaxS = warmUp.maxS, fastIdleRpm } = warmUp;
  return [
    watch('warmUp.watch', {
      ...running,
      ok: 'thermostatOpen',
      everyS: () => warmUp.readEveryS,
      peopleEveryS: nextWarmUpLookS,
      follows: { step: 'checks.coolant', line: 'warmUpBegins' },
      atLeastS: () => warmUp.minS,
      enough: watchedS => judgeWarmUpHold(watchedS, warmUp.minS),
      // New rings glaze and fuel washes the bores at light idle: then fast idle, or load on the first drive.
      timeUp: {
        seconds: () => idleMaxS,
        open: fastIdleRpm === undefined ? 'notOpenedInTime' : 'idledLongEnough',
      },
      reading: coolant,
      values: () => ({ unit: { unitOf: 'coolantTemperature' } }),
    }),
    ...(fastIdleRpm === undefined
      ? []
      : [
          watch('warmUp.fastIdle', {
            ...running,
            ok: 'thermostatOpen',
            when: context => isOpenItem(context, 'warmUp.watch') || context.step === 'warmUp.fastIdle',
            everyS: () => warmUp.readEveryS,
            peopleEveryS: nextWarmUpLookS,
            atLeastS: () => 0,
            timeUp: { seconds: () => Math.max(1, warmUp.maxS - idleMaxS), open: 'notOpenedInTime' },
            settles: 'warmUp.watch',
            reading: coolant,
            values: () => ({
              speed: { unit: 'rpm', si: fastIdleRpm },
              unit: { unitOf: 'coolantTemperature' },
            }),
          }),
        ]),
    confirm('warmUp.hose', 'thermostatOpen', { ...roundIt, when: context => !isFeltYet(context) }),
    ...(steering
      ? [
          confirm('warmUp.steeringLocks', 'noBubbles', roundIt),
          // Never in one breath with a cap that is off: the coolant is hot, and its own stays shut.
          confirm('warmUp.levels', 'levelsGood', roundIt),
        ]
      : [confirm('warmUp.bottle', 'levelsGood', roundIt)]),
  ];
}
