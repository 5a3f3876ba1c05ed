import { type Entry, openNewLog, type RecordLog, reopenLog } from '../record/index.ts';
import type { Clock } from './clock.ts';
import { headerData, type SessionHeader } from './header.ts';
import { type Restored, restore } from './resume.ts';

/** The name of a new record: its date and time, which sort. */
export const recordName = (date: Date) =>
  `first-fire-${date.toISOString().slice(0, 19).replaceAll(':', '-')}`;

/**
 * Begins the record of a new session, on the session's clock.
 * @throws RecordError when the file exists or cannot be written
 */
export const beginRecord = (path: string, header: SessionHeader, clock: Clock): Promise<RecordLog> =>
  openNewLog(path, headerData(header), { wall: () => clock.wall(), monoMs: () => clock.nowMs() });

/** A session that broke off, as far as its record goes, with its clock going on from there. */
export interface Reopened {
  readonly record: RecordLog;
  readonly clock: Clock;
  readonly restored: Restored;
  readonly entries: readonly Entry[];
}

/**
 * Goes on with the record of a session that broke off; it is closed again when that cannot be done.
 * @param makeClock a clock that begins at this session time
 * @throws RecordError or ResumeError, each one sentence
 */
export async function continueRecord(file: string, makeClock: (beginMs: number) => Clock): Promise<Reopened> {
  // The first entry is written before its session time is known; from then on the session's clock counts.
  let clock = makeClock(0);
  const { log, entries } = await reopenLog(file, {
    wall: () => clock.wall(),
    monoMs: () => clock.nowMs(),
  });
  try {
    const restored = restore(entries, file);
    clock = makeClock(restored.lastMs);
    return { record: log, clock, restored, entries };
  } catch (error) {
    await log.close();
    throw error;
  }
}
