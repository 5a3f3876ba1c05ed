import type { ParameterContent } from '../../bus/parameter-codec.ts';
import type { FaultName } from '../faults.ts';
import type { EngineState } from '../model/engine.ts';
import type { Random } from '../random.ts';

/** Noise of each sensor, one deviation, in the unit of its parameter: common practice, no published source. */
const NOISE = { rpm: 2, oilKpa: 2, coolantK: 0.1, volt: 0.02, railKpa: 150 } as const;

const STARTER_ENGAGED = 2;
const STARTER_IDLE = 0;

/**
 * What the sensors tell the bus, by parameter number (SAE J1939-71, from memory). A sensor whose plug is off is
 * an error; what has no sensor is left out, and so is not available.
 */
export function sensorReadings(
  { speed, oil, heat, fuel, electrics, controls, heaterLeftS }: EngineState,
  faults: ReadonlySet<FaultName>,
  ambientC: number,
  noise: Random,
): ReadonlyMap<number, ParameterContent> {
  const turning = speed.rpm > 0;
  const noisy = (value: number, deviation: number) => value + deviation * noise.normal();
  return new Map<number, ParameterContent>([
    [190, turning ? Math.max(0, noisy(speed.rpm, NOISE.rpm)) : 0],
    [1675, controls.starter ? STARTER_ENGAGED : STARTER_IDLE],
    [110, faults.has('sensorUnplugged') ? 'error' : noisy(heat.coolantC, NOISE.coolantK)],
    [175, noisy(heat.oilC, NOISE.coolantK)],
    [100, oil.pressureKpa > 1 ? noisy(oil.pressureKpa, NOISE.oilKpa) : 0],
    [157, fuel.railKpa > 100 ? noisy(fuel.railKpa, NOISE.railKpa) : 0],
    [105, noisy(ambientC, NOISE.coolantK)],
    [171, ambientC],
    [172, ambientC],
    [168, noisy(electrics.batteryV, NOISE.volt)],
    [158, noisy(electrics.batteryV, NOISE.volt)],
    [114, electrics.batteryA],
    [115, electrics.alternatorA],
    [1081, heaterLeftS > 0 ? 1 : 0],
    [97, faults.has('waterInFuel') ? 1 : 0],
    [91, controls.demandRpm === null ? 0 : 40],
  ]);
}
