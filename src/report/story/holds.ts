import type { HoldStory } from '../model.ts';
import type { Moment, Replay } from '../replay.ts';

/** What a timed state is, by the last part of its name. */
const kinds: Readonly<Record<string, HoldStory['kind']>> = {
  counting: 'hold',
  resting: 'rest',
  cooling: 'hold',
  cranking: 'burst',
};

const kindOf = ({ state }: Moment): HoldStory['kind'] => kinds[state.split('.').at(-1) ?? ''] ?? 'watch';

interface Open {
  readonly step: string;
  readonly kind: HoldStory['kind'];
  readonly plannedMs: number;
  readonly fromMs: number;
  pausedMs: number;
  pausedSinceMs: number | null;
}

/** Every timed stretch of the session: how long it was to be, how long it was, and how long it was paused. */
export function holdsOf({ moments }: Replay, endMs: number): HoldStory[] {
  const stories: HoldStory[] = [];
  let open: Open | null = null;
  const close = (toMs: number) => {
    if (!open) return;
    const pausedMs = open.pausedMs + (open.pausedSinceMs === null ? 0 : toMs - open.pausedSinceMs);
    const { step, kind, plannedMs, fromMs } = open;
    const ranMs = toMs - fromMs - pausedMs;
    const atLeast = kind === 'hold' || kind === 'rest';
    // Wall-clock alarms are met to the millisecond at best.
    const kept = atLeast ? ranMs >= plannedMs - 1 : ranMs <= plannedMs + 1000;
    stories.push({ step, kind, plannedMs, fromMs, toMs, pausedMs, kept });
    open = null;
  };
  for (const moment of moments) {
    const { timeMs, timer, state, context } = moment;
    if (state === 'held') {
      if (open) open.pausedSinceMs ??= timeMs;
      continue;
    }
    if (open?.pausedSinceMs != null) {
      open.pausedMs += timeMs - open.pausedSinceMs;
      open.pausedSinceMs = null;
    }
    const kind = kindOf(moment);
    if (timer && open?.step === context.step && open.kind === kind && open.plannedMs === timer.totalMs)
      continue;
    close(timeMs);
    // A burst's own timer is left standing until the starter is released; that is no watch.
    if (timer && !(kind === 'watch' && state.includes('.outcome')))
      open = {
        step: context.step,
        kind,
        plannedMs: timer.totalMs,
        fromMs: timeMs,
        pausedMs: 0,
        pausedSinceMs: null,
      };
  }
  close(endMs);
  return stories;
}
