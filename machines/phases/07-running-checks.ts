import type { Profile } from '../../src/profile/schema.ts';
import { runningCoolant } from '../limits/coolant.ts';
import { charging } from '../limits/electrics.ts';
import { governed, HUNTING, idleExtremes, idleRun, idleSpeed } from '../limits/engine.ts';
import { pressureAt } from '../limits/oil.ts';
import { latest } from '../limits/readings.ts';
import { inspect, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import type { Gate } from '../vocabulary.ts';
import { beforeLongRun } from './06b-first-run.ts';

/** What has to be true before the engine is left to run, and asked for more than idle. */
export const afterChecks: readonly Gate[] = ['engineFired', 'oilPressureShown', 'noLeaks'];

/** Speed, pressure, charge and coolant by gauge; leaks, boots, hiss, smell and smoke by the second person. */
export function checksSteps(profile: Profile): readonly Step[] {
  const { idle, fixedSpeedRpm } = profile;
  const running = {
    engine: 'running',
    needs: ['engineFired', 'nothingAmiss', ...beforeLongRun(profile)],
  } as const;
  return [
    reading(fixedSpeedRpm === undefined ? 'checks.idle' : 'checks.fixedSpeed', 'engineSpeed', idleSpeed, {
      ...running,
      series: {
        count: 5,
        judge: idleRun,
        extremes: { judge: idleExtremes, trouble: { reply: 'hunting', cause: HUNTING } },
        bounds: { judge: governed, cause: 'overspeed' },
      },
    }),
    reading(
      'checks.oilPressure',
      'oilPressure',
      pressureAt(context => latest(context, 'engineSpeed') ?? idle.cold.minRpm),
      {
        ...running,
        outside: 'noOilPressure',
        gate: 'oilPressureShown',
      },
    ),
    reading('checks.coolant', 'coolantTemperature', runningCoolant, { ...running, outside: 'overheating' }),
    reading('checks.charging', 'chargingVoltage', charging, {
      ...running,
      mayStayOpen: true,
      patience: 'hunt',
    }),
    inspect('checks.leaks', {
      ...running,
      gate: 'noLeaks',
      patience: 'hunt',
      points: [
        { id: 'fuelJoints', cause: 'fuelLeak' },
        { id: 'coolantJoints', cause: 'coolantLeak' },
        { id: 'oilJoints', cause: 'oilLeak' },
        { id: 'boots', cause: 'looseOrNoise' },
        { id: 'hiss', cause: 'looseOrNoise' },
        { id: 'smellAndSmoke', cause: 'smokeOrFire' },
      ],
      together: { from: 'boots', ok: 'bootsSoundSmell' },
    }),
  ];
}
