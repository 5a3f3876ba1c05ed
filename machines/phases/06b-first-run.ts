import type { Profile } from '../../src/profile/schema.ts';
import { switchedOff, switchedOn } from '../controls.ts';
import { firstPressure } from '../limits/oil.ts';
import { confirm, crank, hold, inspect } from '../step-makers.ts';
import type { Step } from '../steps.ts';
import type { Gate } from '../vocabulary.ts';
import { beforeFirstFire } from './06-first-fire.ts';
import { rawWaterAnnounced, rawWaterOpen, rawWaterShut } from './raw-water.ts';

const running = { engine: 'running', needs: ['engineFired', 'nothingAmiss'] } as const;

/** What the long run needs beyond the first fire. */
export const beforeLongRun = ({ firstRun }: Profile): readonly Gate[] => (firstRun ? ['restarted'] : []);

/**
 * A short first run, off again, dipstick and a look round, and only then the long run: what leaks or was forgotten
 * shows within the first minutes, and is put right on an engine that stands. Common practice, no published source.
 */
export function firstRunSteps(profile: Profile): readonly Step[] {
  const { firstRun, oilPressure, starter, fixedSpeedRpm } = profile;
  if (!firstRun) return [];
  return [
    hold(fixedSpeedRpm === undefined ? 'firstRun.run' : 'firstRun.runUnloaded', () => firstRun.runS, running),
    confirm('firstRun.keyOff', 'engineOff', {
      ...running,
      words: { off: switchedOff(profile) },
      patience: 'hunt',
      standing: true,
      trouble: { reply: 'stillRunning', cause: 'overspeed' },
    }),
    hold('firstRun.drain', () => firstRun.drainS),
    confirm('firstRun.oilLevel', 'levelGood', { gate: 'firstRunSeen', dipstick: true }),
    inspect('firstRun.look', {
      gate: 'firstRunSeen',
      points: [
        { id: 'fuelJoints', cause: 'fuelLeak' },
        { id: 'coolantJoints', cause: 'coolantLeak' },
        { id: 'oilJoints', cause: 'oilLeak' },
      ],
    }),
    ...rawWaterShut(profile, 'firstRun.rawWater', 'firstRunSeen'),
    crank('firstRun.restart', {
      needs: [...beforeFirstFire(profile), 'firstRunSeen'],
      words: { on: switchedOn(profile) },
      announces: () => [
        ...rawWaterAnnounced(profile),
        { line: 'pressureInTime', values: { time: { unit: 's', si: oilPressure.firstFireWithinS } } },
      ],
      gate: 'restarted',
      until: 'fired',
      readBack: false,
      burst: () => starter.longestBurstS,
      giveUp: { seconds: () => 3 * starter.longestBurstS, cause: 'noStart' },
    }),
    confirm('firstRun.oilPressure', 'pressureGood', {
      engine: 'running',
      needs: ['restarted'],
      gate: 'oilPressureShown',
      within: {
        seconds: () => oilPressure.firstFireWithinS,
        cause: 'noOilPressure',
        firstSinceMs: ({ runsSinceMs }) => runsSinceMs ?? undefined,
        judge: firstPressure,
      },
      trouble: { reply: 'noOilPressure', cause: 'noOilPressure' },
    }),
    ...rawWaterOpen(profile, 'firstRun.rawWaterOpen', 'oilPressureShown', {
      engine: 'running',
      needs: ['restarted'],
    }),
  ];
}
