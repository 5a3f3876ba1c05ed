import type { Profile } from '../../src/profile/schema.ts';
import { pressureAt, sweepPressure } from '../limits/oil.ts';
import { faults, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import { afterChecks } from './07-running-checks.ts';
import { sweepStepIds } from './numbered.ts';

const running = { engine: 'running', needs: afterChecks } as const;
/** How long each speed of a sweep is held; common practice, no published source. */
const HELD_S = 15;

/** Up through the speeds, gently: pressure follows speed, no new fault. */
export function sweepsSteps({ sweeps, fixedSpeedRpm }: Profile): readonly Step[] {
  // What runs at one speed has nothing to sweep: warm, it is read once more there.
  if (fixedSpeedRpm !== undefined)
    return [
      reading(
        'sweeps.fixedPressure',
        'oilPressure',
        pressureAt(() => fixedSpeedRpm),
        {
          ...running,
          outside: 'noOilPressure',
        },
      ),
      faults('sweeps.newFaults', running),
    ];
  const speed = (index: number) => sweeps[index]?.rpm ?? 0;
  const ids = sweepStepIds.slice(0, sweeps.length);
  return [
    ...ids.map((id, index) => {
      const last = index === sweeps.length - 1;
      // The needle is followed all the way up and told at both ends; a bus tells it everywhere.
      const between = index > 0 && !last;
      return reading(id, 'oilPressure', sweepPressure(index, last ? ids.slice(0, index) : null), {
        ...running,
        atRpm: speed(index),
        ...(between ? { passesAfterS: HELD_S } : {}),
        // Below its floor it stops at every speed; only a pressure that does not rise with the speed is looked at again.
        ...(last
          ? { bounds: { judge: pressureAt(() => speed(index)), cause: 'noOilPressure' } }
          : { outside: 'noOilPressure' }),
        values: () => ({
          speed: { brief: 'engineSpeed', si: speed(index) },
          ask: between
            ? { line: index === 1 ? 'sweepFollow' : 'sweepFollowOn', values: {} }
            : { line: 'sweepAsk', values: { unit: { unitOf: 'oilPressure' } } },
        }),
      });
    }),
    faults('sweeps.faults', running),
  ];
}
