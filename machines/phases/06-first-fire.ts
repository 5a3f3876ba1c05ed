import type { Profile } from '../../src/profile/schema.ts';
import type { Context } from '../context.ts';
import { watchedFaults } from '../faults.ts';
import { isWarningLamp } from '../kinds/checklist.ts';
import { firstPressure } from '../limits/oil.ts';
import { confirm, crank, inspect, lamps, watch } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import type { Gate } from '../vocabulary.ts';
import { beforeAnyCranking } from './04-no-fuel-crank.ts';
import { rawWaterAnnounced, rawWaterOpen } from './raw-water.ts';

/** What has to be true before fuel may burn. */
export const beforeFirstFire = (profile: Profile): readonly Gate[] => [
  ...beforeAnyCranking(profile),
  'fuelReady',
  'fuelPrimed',
  'oilPrimed',
  'fuellingRestored',
  'batteryReady',
  'lampsRight',
  ...(profile.heater ? (['heaterHoldDone'] as const) : []),
  ...(profile.afterTreatment === 'none' ? [] : (['regenerationOff'] as const)),
  ...(profile.exhaust.kind === 'wet' ? (['rawWaterShut'] as const) : []),
  'noBlockingFault',
];

const watchSeconds = (context: Context) => Math.min(...watchedFaults(context).map(row => row.watchS));

const running = { engine: 'running', needs: ['engineFired'] } as const;

/** The first fire, and oil pressure within seconds of it, or stop. */
export const firstFireSteps = (profile: Profile): readonly Step[] => {
  const warning = profile.lamps.filter(isWarningLamp);
  return [
    crank('firstFire.crank', {
      needs: beforeFirstFire(profile),
      announces: () => [
        ...rawWaterAnnounced(profile),
        { line: 'pressureInTime', values: { time: { unit: 's', si: profile.oilPressure.firstFireWithinS } } },
      ],
      until: 'fired',
      gate: 'engineFired',
      readBack: false,
      burst: () => profile.starter.longestBurstS,
      giveUp: { seconds: () => 3 * profile.starter.longestBurstS, cause: 'noStart' },
    }),
    confirm('firstFire.oilPressure', 'pressureGood', {
      ...running,
      gate: 'oilPressureShown',
      within: {
        seconds: () => profile.oilPressure.firstFireWithinS,
        cause: 'noOilPressure',
        firstSinceMs: ({ runsSinceMs }) => runsSinceMs ?? undefined,
        judge: firstPressure,
      },
      trouble: { reply: 'noOilPressure', cause: 'noOilPressure' },
    }),
    ...rawWaterOpen(profile, 'firstFire.rawWater', 'nothingAmiss', running),
    // The first half minute tells most: eyes and ears before any gauge, clear of the fan, one hand at the cut-off.
    inspect('firstFire.eyes', {
      ...running,
      gate: 'nothingAmiss',
      points: [
        { id: 'anyLeak', cause: null },
        { id: 'noise', cause: 'looseOrNoise' },
        { id: 'smoke', cause: 'smokeOrFire' },
      ],
      together: { from: 'noise', ok: 'soundAndSmoke' },
    }),
    lamps('firstFire.lamps', {
      ...running,
      lamps: profile.lamps,
      expected: 'running',
      wrong: 'faultCode',
      gate: 'oilPressureShown',
    }),
    watch('firstFire.transient', {
      ...running,
      ok: 'faultCleared',
      when: context => watchedFaults(context).length > 0,
      everyS: () => 15,
      atLeastS: () => 0,
      timeUp: { seconds: watchSeconds, cause: 'faultCode' },
      stillShown: (context, codes) =>
        codes.filter(({ spn, fmi }) =>
          watchedFaults(context).some(({ fault }) => fault.spn === spn && fault.fmi === fmi),
        ),
      values: context => ({
        fault: { list: watchedFaults(context).map(({ fault }) => ({ code: fault })) },
      }),
    }),
    // It was let stand while a code was watched; that has cleared.
    ...(warning.length > 0
      ? [
          lamps('firstFire.warningLamp', {
            ...running,
            lamps: warning,
            expected: 'running',
            wrong: 'faultCode',
            gate: 'oilPressureShown',
            when: context => watchedFaults(context).length > 0,
          }),
        ]
      : []),
  ];
};
