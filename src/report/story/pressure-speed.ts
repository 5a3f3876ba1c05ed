import { sweepRpm } from '../../../machines/phases/numbered.ts';
import type { Profile } from '../../profile/schema.ts';
import type { Reading } from '../model.ts';

interface SpeedPressure {
  readonly rpm: number;
  readonly pressureKpa: number;
  readonly floorKpa?: number;
  readonly met: boolean;
}

/** A speed that came over the bus belongs to a pressure that came with it. */
const SAME_MOMENT_MS = 2000;

/** Oil pressure with the speed at which it was read: of the sweep, of the idle before it, or of the bus. */
export function pressureOverSpeed(readings: readonly Reading[], profile: Profile | null): SpeedPressure[] {
  const points: SpeedPressure[] = [];
  let idle: Reading | undefined;
  let bus: Reading | undefined;
  for (const reading of readings) {
    if (reading.quantity === 'engineSpeed') {
      if (reading.source === 'bus') bus = reading;
      else if (reading.source === 'confirmed') idle = reading;
    }
    if (reading.quantity !== 'oilPressure') continue;
    const rpm =
      reading.source === 'bus'
        ? bus && reading.timeMs - bus.timeMs <= SAME_MOMENT_MS
          ? bus.si
          : undefined
        : ((profile && sweepRpm(reading.step, profile)) ??
          (reading.phase === 'checks' ? idle?.si : undefined));
    if (rpm === undefined) continue;
    const floorKpa = reading.verdict?.min;
    points.push({
      rpm,
      pressureKpa: reading.si,
      met: reading.verdict?.met !== false,
      ...(floorKpa === undefined ? {} : { floorKpa }),
    });
  }
  return points;
}
