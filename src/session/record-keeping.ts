import { isOver } from '../../machines/moment.ts';
import { type Entry, openNewLog, type RecordLog, reopenLog } from '../record/index.ts';
import { type Clock, recordClock } from './clock.ts';
import { headerData, type SessionHeader } from './header.ts';
import { closeAfterAll, type Restored, restore, resumedData } from './resume.ts';

/** The name of a new record: its date and time, which sort. */
export const recordName = (date: Date) =>
  `first-fire-${date.toISOString().slice(0, 19).replaceAll(':', '-')}`;

/**
 * Begins the record of a new session, on the session's clock.
 * @throws RecordError when the file exists or cannot be written
 */
export const beginRecord = (path: string, header: SessionHeader, clock: Clock): Promise<RecordLog> =>
  openNewLog(path, headerData(header), recordClock(clock));

/** A session that broke off, as far as its record goes, with its clock going on from there. */
export interface Reopened {
  readonly record: RecordLog;
  readonly clock: Clock;
  readonly restored: Restored;
  readonly entries: readonly Entry[];
  /** A line that the interruption had cut short, told in words; null where there was none. */
  readonly setAside: string | null;
}

/**
 * Goes on with the record of a session that broke off; nothing is written to one that cannot be gone on with.
 * @param makeClock a clock that begins at this session time
 * @throws RecordError or ResumeError, each one sentence
 */
export async function continueRecord(file: string, makeClock: (beginMs: number) => Clock): Promise<Reopened> {
  const { log, entries, going, resumed } = await reopenLog(file, held => {
    const restored = restore(held, file);
    const clock = makeClock(restored.lastMs);
    // There is nothing to be gone on with in memory where the session is over.
    const needsRoom = isOver(restored.moment);
    return { restored, session: clock, clock: recordClock(clock), data: resumedData(), needsRoom };
  });
  const { restored, session } = going;
  if (isOver(restored.moment)) {
    const over = await closeAfterAll(log, restored.moment, file);
    await log.close();
    throw over;
  }
  const setAside = resumed.kind === 'recovered' ? setAsideIn(resumed.seq) : null;
  return { record: log, clock: session, restored, entries, setAside };
}

const setAsideIn = (seq: number): string =>
  `The last line of the record had been cut short; what there was of it is set aside in entry ${seq}, and the record goes on behind the entry before.`;
