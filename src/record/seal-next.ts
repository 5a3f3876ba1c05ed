import {
  type Entry,
  MAX_ENTRY_BYTES,
  MAX_LINE_BYTES,
  NO_PREVIOUS,
  OPENED,
  RECOVERED,
  REOPENED,
} from './entry.ts';
import type { JsonObject } from './json.ts';
import { RecordError } from './record-error.ts';
import { type Sealed, sealEntry } from './seal.ts';

export interface RecordClock {
  wall(): Date;
  /** Milliseconds that never run backwards, from any starting point of this run of the program. */
  monoMs(): number;
}

const RESERVED = [OPENED, REOPENED, RECOVERED];

/**
 * Chains an event of the session to the entry before it.
 * @throws RecordError `invalid`, also for a kind that the record writes by itself
 */
export function sealEvent(before: Entry, kind: string, data: JsonObject, clock: RecordClock): Sealed {
  if (RESERVED.includes(kind)) {
    throw new RecordError('invalid', `This event cannot be recorded: the kind ${kind} is the record's own.`);
  }
  return sealNext(before, kind, data, clock);
}

/**
 * Chains an event to the entry before it, with the times of this moment.
 * @throws RecordError `invalid`
 */
export function sealNext(
  before: Entry | undefined,
  kind: string,
  data: JsonObject,
  clock: RecordClock,
): Sealed {
  // Microseconds are finer than any of these clocks can be trusted, and keep lines short.
  const monoMs = Math.round(clock.monoMs() * 1000) / 1000;
  if (before !== undefined && monoMs < before.monoMs && !RESERVED.includes(kind)) {
    throw new RecordError('invalid', 'This event cannot be recorded: the steady clock ran backwards.');
  }
  const seq = before === undefined ? 0 : before.seq + 1;
  const prev = before?.hash ?? NO_PREVIOUS;
  const limit = kind === RECOVERED ? MAX_LINE_BYTES : MAX_ENTRY_BYTES;
  return sealEntry({ seq, at: clock.wall(), monoMs, kind, data, prev }, limit);
}
