import type { Context } from '../../../machines/context.ts';
import { judgePressure } from '../../../machines/limits/oil.ts';
import { warmthOf } from '../../../machines/limits/warmth.ts';
import { isOver, type Moment } from '../../../machines/moment.ts';
import type { Step } from '../../../machines/steps.ts';
import type { Cause } from '../../../machines/vocabulary.ts';
import { stopsFromRpm } from '../../profile/schema.ts';
import type { VehicleLook } from './vehicle.ts';

/** Half way between what the starter does and the slowest idle: from here the engine runs by itself. */
const runsFromRpm = ({ profile: { starter, idle } }: Context) => (starter.crankingRpm + idle.warm.minRpm) / 2;

/** Between the lamp test and key-off, and whenever it turns, a red-stop lamp means what it says. */
const redStopCounts = ({ context }: Moment, turns: boolean) =>
  turns || (context.done.includes('keyOn.lamps') && !context.done.includes('shutdown.keyOff'));

/** Oil pressure under the floor for this speed and temperature; what the floor's table ends at holds beyond it. */
function pressureTooLow(context: Context, step: Step | undefined, look: VehicleLook): boolean {
  const pressureKpa = look.value('oilPressure');
  if (pressureKpa === null) return false;
  const speedRpm = look.value('engineSpeed');
  // With the key just turned off, speed and pressure go together and the controller falls asleep.
  const mayStand = step?.kind === 'confirm' && step.standing === true;
  if (speedRpm === null ? mayStand : speedRpm < runsFromRpm(context)) return false;
  const rows = context.profile.oilPressure.floor;
  const speeds = rows.flatMap(row => [row.points[0]?.rpm ?? 0, row.points.at(-1)?.rpm ?? 0]);
  const [slowest, fastest] = [Math.min(...speeds), Math.max(...speeds)];
  const judgement = judgePressure(context, pressureKpa, {
    speedRpm: Math.min(fastest, Math.max(slowest, speedRpm ?? context.profile.idle.warm.minRpm)),
    oilC: Math.min(
      rows.at(-1)?.oilC ?? 0,
      look.value('coolantTemperature') ?? warmthOf(context)?.coldestC ?? 0,
    ),
  });
  return !judgement.ok || !judgement.value.met;
}

/**
 * Finds what has to stop the session by itself: the red-stop lamp, oil pressure under its floor after the seconds
 * that first fire allows, overspeed. Each is given once, until it has passed or work has gone on after the stop.
 */
export function createStopper(steps: readonly Step[]) {
  let runningSinceMs: number | null = null;
  let called: readonly Cause[] = [];

  function causes(moment: Moment, nowMs: number, look: VehicleLook): Cause[] {
    const { context } = moment;
    const stopped = moment.matches('stopped');
    const step = steps.find(({ id }) => id === context.step);
    const speedRpm = look.value('engineSpeed') ?? 0;
    const cranking = moment.hasTag('cranking');
    const running = step?.engine === 'running' || (cranking && speedRpm >= runsFromRpm(context));
    if (stopped || !running) runningSinceMs = null;
    else runningSinceMs ??= nowMs;
    const found: Cause[] = [];
    if (speedRpm >= (stopsFromRpm(context.profile) ?? Number.POSITIVE_INFINITY)) found.push('overspeed');
    if (stopped) return found;
    const graceMs = context.profile.oilPressure.firstFireWithinS * 1000;
    const graceOver = runningSinceMs !== null && nowMs - runningSinceMs >= graceMs;
    if (graceOver && pressureTooLow(context, step, look)) found.push('noOilPressure');
    if (look.redStop() && redStopCounts(moment, running || cranking)) found.push('faultCode');
    return found;
  }

  return {
    /** The cause of a stop that has to be called out now, or null. */
    check(moment: Moment, nowMs: number, look: VehicleLook): Cause | null {
      if (isOver(moment)) return null;
      const now = causes(moment, nowMs, look);
      const fresh = now.find(cause => !called.includes(cause));
      called = now;
      return fresh ?? null;
    },
  };
}
