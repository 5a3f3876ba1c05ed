import { starterState, starterWait } from '../../src/engineering/starter.ts';
import type { Context } from '../context.ts';
import { latest } from './readings.ts';

/** After a day the starter is as cold as the air; longer is not reckoned with. */
const WHOLLY_COLD_S = 86_400;

/** Bursts and rests of this session, oldest first, up to now. */
function history(context: Context, nowMs: number) {
  const stretches = context.bursts.flatMap((burst, index) => {
    const restEndMs = context.bursts[index + 1]?.startMs ?? nowMs;
    return [
      { cranking: true, seconds: Math.min(WHOLLY_COLD_S, (burst.endMs - burst.startMs) / 1000) },
      { cranking: false, seconds: Math.min(WHOLLY_COLD_S, Math.max(0, restEndMs - burst.endMs) / 1000) },
    ];
  });
  return stretches;
}

/**
 * Seconds that the next burst may last: what is wanted, or less where the starter's thermal budget
 * says so. Zero when the budget cannot be worked out: then there is no cranking.
 */
export function burstSeconds(context: Context, nowMs: number, wantedS: number): number {
  const state = starterState(
    context.profile.starter,
    latest(context, 'ambientTemperature'),
    history(context, nowMs),
  );
  return state.ok ? Math.min(wantedS, state.value.nextBurstS) : 0;
}

/** Seconds that the engine maker still asks to rest since the last burst; none before the first. */
export function leastRestSeconds(context: Context, nowMs: number): number {
  const last = context.bursts.at(-1);
  return last ? Math.max(0, context.profile.starter.minRestS - (nowMs - last.endMs) / 1000) : 0;
}

/** Seconds to rest before a burst of the wanted length; never less than the engine maker asks for. */
export function restSeconds(context: Context, nowMs: number, wantedS: number): number {
  const { starter } = context.profile;
  const wait = starterWait(starter, latest(context, 'ambientTemperature'), history(context, nowMs), wantedS);
  return Math.max(starter.minRestS, wait.ok ? wait.value : starter.timeConstantS);
}
