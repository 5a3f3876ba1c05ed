import { isNoRoom, systemCause } from '../files/cause.ts';
import { type Entry, FORMAT, OPENED, RECOVERED, REOPENED } from './entry.ts';
import type { JsonObject } from './json.ts';
import { LogFile } from './log-file.ts';
import { asOnlyWriter, newFile } from './log-place.ts';
import { readLog } from './log-reader.ts';
import { RecordError } from './record-error.ts';
import { type LogPlace, LogWriter, type RecordLog, type Untaken } from './record-log.ts';
import { canonicalLine } from './seal.ts';
import { type RecordClock, sealNext } from './seal-next.ts';

/**
 * Begins a record in a new file, with the entry `opened`.
 * @param header goes into the data of `opened`, beside `format`
 * @throws RecordError `exists`, `inUse`, `unwritable` or `invalid`
 */
export async function openNewLog(path: string, header: JsonObject, clock: RecordClock): Promise<RecordLog> {
  const opened = sealNext(undefined, OPENED, { ...header, format: FORMAT }, clock);
  const place = await newFile(path, [opened.line]);
  return new LogWriter(place, newFile, clock, [opened.line], opened.entry);
}

export interface ReopenedLog<Going extends Continuation = Continuation> {
  readonly log: RecordLog;
  /** All entries up to the interruption. */
  readonly entries: readonly Entry[];
  /** `resumed`, or `recovered` with the torn bytes (base64) when the last line had been cut off. */
  readonly resumed: Entry;
  /** What `goOn` made of the entries. */
  readonly going: Going;
}

/** How a record is gone on with. */
export interface Continuation {
  /** Of the entry `resumed` or `recovered` and of all behind it. */
  readonly clock: RecordClock;
  /** Goes into the data of that entry. */
  readonly data?: JsonObject;
  /** Not gone on with where that entry finds no room now; else it waits in memory, as all behind it. */
  readonly needsRoom?: boolean;
}

/**
 * Goes on with a record after an interruption. A torn last line is replaced by the entry `recovered`, which
 * keeps its bytes (as base64, hence always longer than what it replaces); an undamaged record gets the entry
 * `resumed`. Either may restart `monoMs`. On a full disk the record goes on in memory (`failure` is set), its file as
 * it was, until there is room.
 * @param goOn sees what the record holds, before anything is written; where it throws, nothing is
 * @throws RecordError `inUse`, `unreadable`, `unwritable`, `empty`, `notOurs`, or `broken` when a line was altered
 */
export async function reopenLog<Going extends Continuation>(
  path: string,
  goOn: (entries: readonly Entry[]) => Going,
): Promise<ReopenedLog<Going>> {
  return asOnlyWriter(path, async placeOf => {
    const { entries, soundBytes, fault, tornBytes } = await readLog(path);
    const last = entries.at(-1);
    if (last === undefined || (fault !== undefined && tornBytes === undefined)) {
      const why = last === undefined ? 'It holds no whole entry.' : fault?.sentence;
      throw new RecordError('broken', `${path} cannot be continued; begin a new record. ${why}`);
    }
    const going = goOn(entries);
    const { clock, data } = going;
    const resumed =
      tornBytes === undefined
        ? sealNext(last, REOPENED, { ...data }, clock)
        : sealNext(
            last,
            RECOVERED,
            { ...data, tornBase64: Buffer.from(tornBytes).toString('base64') },
            clock,
          );
    const file = await LogFile.reopen(path, soundBytes, tornBytes?.length ?? 0);
    try {
      const place = placeOf(file);
      const untaken = await untakenOf(place, resumed.line, going.needsRoom ?? false);
      const lines = [...entries.map(canonicalLine), resumed.line];
      const log = new LogWriter(place, newFile, clock, lines, resumed.entry, untaken);
      return { log, entries, resumed: resumed.entry, going };
    } catch (error) {
      await file.close();
      throw error;
    }
  });
}

/** @returns undefined when the place has taken the line */
async function untakenOf(place: LogPlace, line: string, needsRoom: boolean): Promise<Untaken | undefined> {
  try {
    await place.append([line]);
    return undefined;
  } catch (why) {
    if (isNoRoom(why) && !needsRoom) return { lines: 1, why };
    throw new RecordError('unwritable', `${place.path} cannot be continued: ${systemCause(why)}.`, why);
  }
}
