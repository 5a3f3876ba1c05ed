import type { Context } from '../../../machines/context.ts';
import { OUTCOME_WITHIN_S } from '../../../machines/kinds/deadline.ts';
import { judgePressure } from '../../../machines/limits/oil.ts';
import { runsFromRpm } from '../../../machines/limits/running.ts';
import { warmthOf } from '../../../machines/limits/warmth.ts';
import { isOver, type Moment } from '../../../machines/moment.ts';
import { KEY_TURNED_MS } from '../../../machines/progress.ts';
import type { Step } from '../../../machines/steps.ts';
import type { Cause } from '../../../machines/vocabulary.ts';
import { stopsFromRpm } from '../../profile/schema.ts';
import type { VehicleLook } from './vehicle.ts';

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
  if (speedRpm === null ? mayStand : speedRpm < runsFromRpm(context.profile)) return false;
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

/** A speed that is there for so long is none of a frame that came late; own choice. */
const SURELY_RUNS_MS = 2000;

/** From giving back its automatic start on, a set may run by itself: everybody was told to stand clear. */
const mayStartItself = (steps: readonly Step[], { profile }: Context, step: Step): boolean => {
  const handBack = steps.findIndex(({ gate }) => gate === 'handedBack');
  return profile.use.kind === 'generator' && handBack >= 0 && steps.indexOf(step) >= handBack;
};

/**
 * Finds what has to stop the session by itself: the red-stop lamp, oil pressure under its floor after the seconds
 * that first fire allows, overspeed, an engine that runs where it is cranked once more, and one that runs where
 * everybody takes it to stand, and may have hands in it. Each is given once, until it has passed or work has gone on after
 * the stop.
 */
export function createStopper(steps: readonly Step[]) {
  let runningSinceMs: number | null = null;
  let unseenSinceMs: number | null = null;
  let offSinceMs: number | null = null;
  let called: readonly Cause[] = [];

  function causes(moment: Moment, nowMs: number, look: VehicleLook): Cause[] {
    const { context } = moment;
    const stopped = moment.matches('stopped');
    const step = steps.find(({ id }) => id === context.step);
    const speedRpm = look.value('engineSpeed') ?? 0;
    const cranking = moment.hasTag('cranking');
    const turnsByItself = speedRpm >= runsFromRpm(context.profile);
    // Whatever is asked: an engine that runs has oil pressure, or is stopped.
    const running = step?.engine === 'running' || turnsByItself;
    if (stopped || !running) runningSinceMs = null;
    else runningSinceMs ??= nowMs;
    const unseen = !stopped && step?.kind === 'crank' && !cranking && turnsByItself ? step : null;
    const off = !stopped && step?.engine === 'off' && !mayStartItself(steps, context, step);
    offSinceMs = off ? (offSinceMs ?? nowMs) : null;
    unseenSinceMs = unseen || (off && turnsByItself) ? (unseenSinceMs ?? nowMs) : null;
    const unseenMs = unseenSinceMs === null ? 0 : nowMs - unseenSinceMs;
    // What was only just switched off has the time of a key to run down.
    const runsOn = offSinceMs !== null && nowMs - offSinceMs >= KEY_TURNED_MS && unseenMs >= SURELY_RUNS_MS;
    const found: Cause[] = [];
    if (speedRpm >= (stopsFromRpm(context.profile) ?? Number.POSITIVE_INFINITY)) found.push('overspeed');
    if (stopped) return found;
    const graceMs = context.profile.oilPressure.firstFireWithinS * 1000;
    const graceOver = runningSinceMs !== null && nowMs - runningSinceMs >= graceMs;
    if (runsOn) found.push('runsUnasked');
    if (graceOver && pressureTooLow(context, step, look)) found.push('noOilPressure');
    if (unseen?.trouble) found.push(unseen.trouble.cause);
    else if (unseen && unseenMs >= OUTCOME_WITHIN_S * 1000) found.push('other');
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
