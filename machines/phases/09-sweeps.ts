import type { Profile } from '../../src/profile/schema.ts';
import { sweepPressure } from '../limits/oil.ts';
import { confirm, faults, reading } from '../step-makers.ts';
import type { Step } from '../steps.ts';

const running = { engine: 'running' } as const;
const names = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'] as const;

/** Up through the speeds, gently: pressure follows speed, no new fault. */
export const sweepsSteps = ({ sweeps }: Profile): readonly Step[] => [
  ...names.slice(0, sweeps.length).map((name, index) =>
    reading(`sweeps.${name}`, 'oilPressure', sweepPressure(index, index === sweeps.length - 1), {
      ...running,
      outside: index === sweeps.length - 1 ? 'again' : 'noOilPressure',
      values: () => ({
        speed: { unit: 'rpm', si: sweeps[index]?.rpm ?? 0 },
        unit: { unitOf: 'oilPressure' },
      }),
    }),
  ),
  confirm('sweeps.backToIdle', 'backAtIdle', running),
  faults('sweeps.faults', running),
];
