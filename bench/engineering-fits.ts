import { estimateCoolDown } from '../src/engineering/cool-down.ts';
import { readFaultCode } from '../src/engineering/fault-codes.ts';
import { judgeFault } from '../src/engineering/fault-rules.ts';
import { judgeHeatSoak } from '../src/engineering/heat-soak.ts';
import { judgeIdle } from '../src/engineering/idle.ts';
import { judgeFirstPressure, judgeOilPressure } from '../src/engineering/oil-pressure.ts';
import { judgeSweep } from '../src/engineering/oil-pressure-sweep.ts';
import type { Reading } from '../src/engineering/readings.ts';
import type { Result } from '../src/engineering/result.ts';
import { readWarmUp } from '../src/engineering/warm-up.ts';
import { noise } from '../tests/helpers/noise.ts';

const FIT_TARGET_MS = 50;
const CALCULATION_TARGET_MS = 1;

const THERMOSTAT = { opensC: 82, fullyOpenC: 95, toleranceK: 4 };
const IDLE = { minRpm: 650, maxRpm: 750, maxScatterRpm: 15, maxDriftRpm: 40, windowS: 60 };

/** Readings of a curve with noise, rounded to whole units as a gauge is read. */
function readings(count: number, spanS: number, curve: (timeS: number) => number): Reading[] {
  const normal = noise(count);
  return Array.from({ length: count }, (_, i) => {
    const timeS = (spanS * i) / (count - 1);
    return { timeS, value: Math.round(curve(timeS) + 0.4 * normal()) };
  });
}

const heating = (timeS: number): number => 110 - 100 * Math.exp(-timeS / 500);
const opening = (timeS: number): number => Math.min(heating(timeS), 82);
const cooling = (timeS: number): number => 20 + 75 * Math.exp(-timeS / 3000);

const fits = (count: number): Readonly<Record<string, () => Result<unknown>>> => {
  const warming = readings(count, 450, heating);
  const opened = readings(count, 800, opening);
  const cooled = readings(count, 1500, cooling);
  const speeds = readings(count, 60, () => 700);
  return {
    'warm-up, time left': () => readWarmUp(warming, THERMOSTAT),
    'warm-up, opening': () => readWarmUp(opened, THERMOSTAT),
    'cool-down': () => estimateCoolDown(cooled, 20, 50),
    idle: () => judgeIdle(speeds, IDLE),
  };
};

const FLOOR = [
  {
    oilC: 20,
    floorKpa: [
      [700, 200],
      [1500, 320],
      [2500, 400],
    ],
  },
  {
    oilC: 100,
    floorKpa: [
      [700, 80],
      [1500, 180],
      [2500, 280],
    ],
  },
] as const;
const SWEEP = [700, 1000, 1300, 1600, 1900, 2200].map(speedRpm => ({ speedRpm, pressureKpa: speedRpm / 7 }));
const FIRST = readings(10, 8, timeS => 40 * timeS);

const calculations: Readonly<Record<string, () => Result<unknown>>> = {
  'heat soak': () => judgeHeatSoak({ coolantC: 92, soakRiseK: 10, capKpa: 100, altitudeM: 800, marginK: 5 }),
  'oil pressure floor': () => judgeOilPressure(250, { speedRpm: 1100, oilC: 70 }, FLOOR),
  'first oil pressure': () => judgeFirstPressure(FIRST, 9, { leastKpa: 100, withinS: 10 }),
  'oil pressure sweep': () => judgeSweep(SWEEP, 500),
  'fault code': () => readFaultCode('SPN 157 FMI 18'),
  'fault rules': () => {
    const code = readFaultCode('157/18');
    return code.ok
      ? judgeFault(code.value, 5, [{ spn: 157, action: { kind: 'watchUntil', seconds: 30 } }])
      : code;
  },
};

/**
 * Times the fits over 20 and 10,000 readings and every other calculation of the running engine, and prints a
 * line for each: median milliseconds of a call, and whether the target is met.
 */
export function benchEngineeringFits(rounds = 51): void {
  for (const count of [20, 10_000]) {
    for (const [name, calculate] of Object.entries(fits(count))) {
      report(`${name}, ${count} readings`, calculate, rounds, FIT_TARGET_MS);
    }
  }
  for (const [name, calculate] of Object.entries(calculations)) {
    report(name, calculate, rounds * 20, CALCULATION_TARGET_MS);
  }
}

function report(name: string, calculate: () => Result<unknown>, rounds: number, targetMs: number): void {
  const result = calculate();
  if (!result.ok) throw new Error(`${name} was refused: ${JSON.stringify(result.issue)}`);
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    calculate();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const median = times[Math.floor(rounds / 2)] ?? Number.NaN;
  const longest = times.at(-1) ?? Number.NaN;
  const met = median < targetMs ? 'met' : 'NOT met';
  console.log(
    `${name.padEnd(36)} median ${median.toFixed(3)} ms, longest ${longest.toFixed(2)} ms; target ${targetMs} ms: ${met}`,
  );
}
