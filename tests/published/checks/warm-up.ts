import { estimateCoolDown } from '../../../src/engineering/cool-down.ts';
import { judgeHeatSoak } from '../../../src/engineering/heat-soak.ts';
import { judgeIdle } from '../../../src/engineering/idle.ts';
import { judgeWarmUpHold, readWarmUp } from '../../../src/engineering/warm-up.ts';
import { type PublishedCheck, partOf } from '../check.ts';

const every = (stepS: number, count: number, value: (timeS: number) => number) =>
  Array.from({ length: count }, (_, i) => ({ timeS: i * stepS, value: value(i * stepS) }));

const CLOSED_FORM = 'closed form';

const soak = (capKpa: number, altitudeM: number) =>
  judgeHeatSoak({ coolantC: 90, soakRiseK: 0, capKpa, altitudeM, marginK: 0 });

export const warmUpChecks: readonly PublishedCheck[] = [
  {
    subject: 'warm-up',
    source: `${CLOSED_FORM}: t = -tau ln((Tinf - T) / (Tinf - T0))`,
    quantity: 'time from 10 to 82 degC towards 95 degC with tau 500 s',
    unit: 's',
    expected: 938.88,
    tolerance: 1,
    compute: () =>
      partOf(
        readWarmUp(
          every(30, 20, t => 95 - 85 * Math.exp(-t / 500)),
          { opensC: 82, fullyOpenC: 95, toleranceK: 4 },
        ),
        warmUp => (warmUp.state === 'warming' ? warmUp.thermostat.bestS : Number.NaN),
      ),
  },
  {
    subject: 'warm-up',
    source: 'common practice, no published source',
    quantity: 'shortest hold at idle before load that a profile may ask for (3 to 5 min)',
    unit: 's',
    expected: 180,
    tolerance: 0,
    compute: () => [60, 120, 179, 180, 240, 300].find(holdS => judgeWarmUpHold(0, holdS).ok) ?? Number.NaN,
  },
  {
    subject: 'cool-down',
    source: `${CLOSED_FORM}, Newton's law of cooling: t = tau ln((T0 - Ta) / (T - Ta))`,
    quantity: 'time from 95 to 50 degC in air of 20 degC with tau 3000 s',
    unit: 's',
    expected: 2748.87,
    tolerance: 1,
    compute: () =>
      partOf(
        estimateCoolDown(
          every(120, 10, t => 20 + 75 * Math.exp(-t / 3000)),
          20,
          50,
        ),
        coolDown => (coolDown.state === 'cooling' ? coolDown.reached.bestS : Number.NaN),
      ),
  },
  {
    subject: 'heat soak',
    source: 'Steam tables (IAPWS-IF97): water boils at 2.01325 bar absolute at 120.4 degC (from memory)',
    quantity: 'boiling point at sea level under a cap of 100 kPa',
    unit: 'degC',
    expected: 120.4,
    tolerance: 0.05,
    compute: () => partOf(soak(100, 0), ({ underCap }) => underCap.max ?? Number.NaN),
  },
  {
    subject: 'heat soak',
    source: 'Common boiling-point-by-altitude tables: about 93.3 degC at 2000 m (from memory)',
    quantity: 'boiling point with the cap off at 2000 m',
    unit: 'degC',
    expected: 93.3,
    tolerance: 0.15,
    compute: () => partOf(soak(100, 2000), ({ capOff }) => capOff.max ?? Number.NaN),
  },
  {
    subject: 'idle',
    source: `${CLOSED_FORM}: a sine of amplitude A has the standard deviation A / sqrt(2)`,
    quantity: 'scatter of a speed that swings by 14.142 rpm, 40 whole swings',
    unit: 'rpm',
    expected: 10,
    tolerance: 0.02,
    compute: () =>
      partOf(
        judgeIdle(
          every(0.01, 4001, t => 700 + 14.142 * Math.cos(2 * Math.PI * t)),
          {
            minRpm: 600,
            maxRpm: 800,
            maxScatterRpm: 50,
            maxDriftRpm: 50,
            windowS: 40,
          },
        ),
        ({ scatterRpm }) => scatterRpm,
      ),
  },
];
