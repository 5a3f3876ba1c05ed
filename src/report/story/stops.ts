import type { Recorded } from '../../record/vocabulary/index.ts';
import type { StopReading, StopStory } from '../model.ts';
import { deviceBefore } from './devices.ts';

interface After {
  readonly cause: string | undefined;
  readonly again: readonly string[];
  readonly drill: boolean;
  readonly wentOnMs?: number;
}

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
  const at = eventBefore(entries, index);
  const found = entries[at];
  const event = found?.kind === 'event' ? found : undefined;
  const after = afterStop(entries, index, stopped.data.step);
  const reading = readingBefore(entries, index);
  const device = event ? deviceBefore(entries, at) : undefined;
  return {
    timeMs: stopped.timeMs,
    step: stopped.data.step,
    by: event?.data.by ?? stopped.data.by ?? '',
    via: event?.data.via ?? '',
    ...(device === undefined ? {} : { device: device.name }),
    trigger: reading ? 'reading' : (event?.data.type ?? ''),
    ...(stopped.data.cause == null ? {} : { found: stopped.data.cause }),
    ...(reading ? { reading } : {}),
    drill: after.drill,
    cause: after.drill ? 'drill' : (after.cause ?? stopped.data.cause ?? null),
    again: after.again,
    ...(after.wentOnMs === undefined ? {} : { wentOnMs: after.wentOnMs }),
  };
}

/** Where the event stands that led to the stop; -1 where none does. */
const eventBefore = (entries: readonly Recorded[], index: number): number =>
  entries.slice(0, index).findLastIndex(({ kind }) => kind === 'event');

/** The reading outside its limits that led to the stop, if one did. */
function readingBefore(entries: readonly Recorded[], index: number): StopReading | undefined {
  const before = entries[index - 1];
  if (before?.kind !== 'verdict' || before.data.met) return undefined;
  const { quantity, value, unit, min, max } = before.data;
  return {
    quantity: quantity ?? '',
    si: value ?? Number.NaN,
    unit: unit ?? '',
    ...(min == null ? {} : { min }),
    ...(max == null ? {} : { max }),
  };
}

/** What followed, until work went on or the next stop was called; what is drilled together is confirmed together. */
function afterStop(entries: readonly Recorded[], index: number, step: string): After {
  let cause: string | undefined;
  let again: readonly string[] = [];
  for (let at = index + 1; at < entries.length; at += 1) {
    const entry = entries[at];
    // A stop within a stop keeps its place, but for the word that is tried out next.
    if (entry?.kind === 'stopped')
      return entry.data.step === step
        ? { cause, again, drill: false }
        : afterStop(entries, at, entry.data.step);
    if (entry?.kind === 'reopened') {
      cause = entry.data.cause ?? undefined;
      again = entry.data.steps;
    }
    if (entry?.kind === 'event' && !isStopped(entry.data.state)) {
      const drill = entry.data.type === 'reply' && entry.data.id === 'thatWasTheDrill';
      const ended = entry.data.state === 'ended';
      return { cause, again, drill, ...(ended ? {} : { wentOnMs: entry.timeMs }) };
    }
  }
  return { cause, again, drill: false };
}
