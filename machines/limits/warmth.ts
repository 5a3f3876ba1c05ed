import { coldestAfter } from '../../src/engineering/heat-bounds.ts';
import type { Context } from '../context.ts';
import { firedMs, heatBoundsOf } from './plausible.ts';
import { latest } from './readings.ts';

/** Between what the coolant of the running engine may be, degC; the oil is taken to be as warm. */
export interface Warmth {
  readonly coldestC: number;
  readonly warmestC: number;
}

/** Seconds between two moments of the session, with what its clock does not count; without end where nobody knows. */
function goneByS({ absences }: Context, fromMs: number, toMs: number): number {
  const away = absences
    .filter(({ atMs }) => atMs >= fromMs && atMs <= toMs)
    .reduce((sum, { seconds }) => sum + (seconds ?? Number.POSITIVE_INFINITY), 0);
  return (toMs - fromMs) / 1000 + away;
}

/**
 * How warm the engine is by what was read of its coolant. Read before it was fired last, it has cooled since, no faster
 * than it can; never read, it is as cold as the air. Undefined where neither is known.
 */
export function warmthOf(context: Context): Warmth | undefined {
  const airC = latest(context, 'ambientTemperature');
  const read = context.readings.findLast(({ quantity }) => quantity === 'coolantTemperature');
  if (!read) return airC === undefined ? undefined : { coldestC: airC, warmestC: airC };
  const sinceMs = firedMs(context);
  if (sinceMs === null || read.atMs >= sinceMs) return { coldestC: read.si, warmestC: read.si };
  const bounds = heatBoundsOf(context.profile);
  const coldestC =
    airC === undefined || !bounds.ok
      ? Math.min(read.si, airC ?? read.si)
      : coldestAfter(read.si, airC, goneByS(context, read.atMs, sinceMs), bounds.value.coolingS);
  return { coldestC, warmestC: read.si };
}
