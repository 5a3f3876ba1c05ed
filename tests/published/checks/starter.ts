import { secondsToReach } from '../../../src/engineering/lumped-heat.ts';
import { starterState } from '../../../src/engineering/starter.ts';
import { type PublishedCheck, partOf } from '../check.ts';

const subject = 'starter';

export const starterChecks: readonly PublishedCheck[] = [
  {
    subject,
    source: 'Incropera, Fundamentals of Heat and Mass Transfer, example 5.1: time constant 1 s (from memory)',
    quantity: 'time for a lump at 25 degC to reach 199 degC in a stream of 200 degC',
    unit: 's',
    expected: 5.2,
    tolerance: 0.05,
    compute: () => secondsToReach({ startC: 25, endC: 200, timeConstantS: 1 }, 199),
  },
  {
    subject,
    source:
      'Cengel, Heat Transfer, example 4-1: sphere of 1 mm, 8500 kg/m3, 320 J/(kg K), 210 W/(m2 K), 99 % of the way',
    quantity: 'time to register 99 % of a step',
    unit: 's',
    expected: 10,
    tolerance: 0.5,
    compute: () =>
      secondsToReach({ startC: 0, endC: 100, timeConstantS: (8500 * 320 * (0.001 / 6)) / 210 }, 99),
  },
  {
    subject,
    source: 'common practice, no published source: 30 s at most, then rest',
    quantity: 'next burst straight after the longest one allowed',
    unit: 's',
    expected: 0,
    tolerance: 1e-6,
    compute: () =>
      partOf(
        starterState({ limitC: 150, longestBurstS: 30, ratedAmbientC: 25, timeConstantS: 300 }, 25, [
          { cranking: true, seconds: 30 },
        ]),
        state => state.nextBurstS,
      ),
  },
];
