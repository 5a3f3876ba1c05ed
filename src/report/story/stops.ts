import type { Recorded } from '../../record/vocabulary/index.ts';
import type { StopStory } from '../model.ts';

const isStopped = (state: string) => state.startsWith('stopped');

/** Every stop: who called it and how, what caused it, what had to be done again, when work went on. */
export function stopsOf(entries: readonly Recorded[]): StopStory[] {
  const stops: StopStory[] = [];
  entries.forEach((entry, index) => {
    if (entry.kind === 'stopped') stops.push(stopAt(entries, entry, index));
  });
  return stops;
}

function stopAt(entries: readonly Recorded[], stopped: Recorded<'stopped'>, index: number): StopStory {
  const event = eventBefore(entries, index);
  const after = afterStop(entries, index);
  return {
    timeMs: stopped.timeMs,
    step: stopped.data.step,
    by: event?.data.by ?? stopped.data.by ?? '',
    via: event?.data.via ?? '',
    trigger: readingBefore(entries, index) ? 'reading' : (event?.data.type ?? ''),
    drill: after.drill,
    cause: after.drill ? 'drill' : (after.cause ?? stopped.data.cause ?? null),
    again: after.again,
    ...(after.wentOnMs === undefined ? {} : { wentOnMs: after.wentOnMs }),
  };
}

function eventBefore(entries: readonly Recorded[], index: number): Recorded<'event'> | undefined {
  for (let at = index - 1; at >= 0; at -= 1) {
    const entry = entries[at];
    if (entry?.kind === 'event') return entry;
  }
  return undefined;
}

/** Whether the event that led to the stop was a reading outside its limits. */
function readingBefore(entries: readonly Recorded[], index: number): boolean {
  const before = entries[index - 1];
  return before?.kind === 'verdict' && !before.data.met;
}

/** What followed, until work went on or the next stop was called. */
function afterStop(entries: readonly Recorded[], index: number) {
  let cause: string | undefined;
  let again: readonly string[] = [];
  for (let at = index + 1; at < entries.length; at += 1) {
    const entry = entries[at];
    if (entry?.kind === 'stopped') break;
    if (entry?.kind === 'reopened') {
      cause = entry.data.cause ?? undefined;
      again = entry.data.steps;
    }
    if (entry?.kind === 'event' && !isStopped(entry.data.state)) {
      const drill = entry.data.type === 'reply' && entry.data.id === 'thatWasTheDrill';
      const ended = entry.data.state === 'ended';
      return { cause, again, drill, wentOnMs: ended ? undefined : entry.timeMs };
    }
  }
  return { cause, again, drill: false, wentOnMs: undefined };
}
