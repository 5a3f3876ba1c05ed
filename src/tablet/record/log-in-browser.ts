import { type Entry, FORMAT, NO_PREVIOUS, OPENED, openingRuleHolds, REOPENED } from '../../record/entry.ts';
import type { Continuation, JsonObject } from '../../record/index.ts';
import { RecordError } from '../../record/record-error.ts';
import { type LogPlace, LogWriter, type MakePlace, type RecordLog } from '../../record/record-log.ts';
import { checkLine, readEntry } from '../../record/seal.ts';
import { type RecordClock, sealNext } from '../../record/seal-next.ts';
import { type KeptLine, type KeptRecord, kept, linesOf } from './data-base.ts';

/** The same record as in a file, line by line; only where the lines are kept is another place. */
const noOtherPlace: MakePlace = async () => {
  throw new RecordError('unwritable', 'A record in a browser has no other place; save it as a file.');
};

/** Until the page goes away nobody else writes this record, in whatever tab or window. */
function takeLock(id: string): Promise<() => void> {
  return new Promise((resolve, reject) => {
    const inUse = () =>
      new RecordError('inUse', `${id} is being written already; close the other tab or window.`);
    navigator.locks
      .request(`record ${id}`, { ifAvailable: true }, lock => {
        if (!lock) return reject(inUse());
        return new Promise<void>(release => resolve(release));
      })
      .catch(reject);
  });
}

function placeIn(dataBase: IDBDatabase, id: string, nextSeq: number, release: () => void): LogPlace {
  let seq = nextSeq;
  return {
    path: id,
    async append(lines) {
      const transaction = dataBase.transaction('lines', 'readwrite', { durability: 'strict' });
      const store = transaction.objectStore('lines');
      // Added, never put: a line that is there already is never written over.
      for (const [i, line] of lines.entries())
        store.add({ record: id, seq: seq + i, line } satisfies KeptLine);
      await kept(transaction);
      seq += lines.length;
    },
    release: async () => release(),
  };
}

/**
 * Begins a record in the browser's data base.
 * @throws RecordError `exists`, `inUse`, `invalid` or `unwritable`
 */
export async function beginRecord(
  dataBase: IDBDatabase,
  about: KeptRecord,
  header: JsonObject,
  clock: RecordClock,
): Promise<RecordLog> {
  const opened = sealNext(undefined, OPENED, { ...header, format: FORMAT }, clock);
  const release = await takeLock(about.id);
  try {
    const transaction = dataBase.transaction(['lines', 'records'], 'readwrite', { durability: 'strict' });
    transaction.objectStore('records').add(about);
    transaction.objectStore('lines').add({ record: about.id, seq: 0, line: opened.line } satisfies KeptLine);
    await kept(transaction);
  } catch (cause) {
    release();
    throw new RecordError(
      'unwritable',
      `The record cannot be kept in this browser (${String(cause)}); free some space, or use another one.`,
      cause,
    );
  }
  const place = placeIn(dataBase, about.id, 1, release);
  return new LogWriter(place, noOtherPlace, clock, [opened.line], opened.entry);
}

/**
 * The entries of kept lines, each checked against its hash and the one before.
 * @throws RecordError `empty` or `broken`, naming the first line that is not sound
 */
function entriesOf(id: string, lines: readonly string[]): Entry[] {
  if (lines.length === 0) throw new RecordError('empty', `${id} is empty; there is no record in it.`);
  const encoder = new TextEncoder();
  let prev = NO_PREVIOUS;
  return lines.map((text, seq) => {
    const line = encoder.encode(text);
    const link = checkLine(line);
    const entry = link && readEntry(link, line);
    if (entry?.seq !== seq || entry.prev !== prev || !openingRuleHolds(entry)) {
      throw new RecordError('broken', `Line ${seq + 1} of ${id} was altered; begin a new record.`);
    }
    prev = entry.hash;
    return entry;
  });
}

export interface ReopenedRecord<Going extends Continuation> {
  readonly log: RecordLog;
  readonly going: Going;
}

/**
 * Goes on with a record after the page was closed or reloaded.
 * @param goOn sees what the record holds, before anything is written; where it throws, nothing is
 * @throws RecordError `empty`, `broken`, `inUse` or `unwritable`
 */
export async function reopenRecord<Going extends Continuation>(
  dataBase: IDBDatabase,
  id: string,
  goOn: (entries: readonly Entry[]) => Going,
): Promise<ReopenedRecord<Going>> {
  const release = await takeLock(id);
  try {
    const lines = (await linesOf(dataBase, id)).map(({ line }) => line);
    const entries = entriesOf(id, lines);
    const going = goOn(entries);
    const { clock, data } = going;
    const resumed = sealNext(entries.at(-1), REOPENED, { ...data }, clock);
    const place = placeIn(dataBase, id, lines.length, release);
    await place.append([resumed.line]);
    const log = new LogWriter(place, noOtherPlace, clock, [...lines, resumed.line], resumed.entry);
    return { log, going };
  } catch (error) {
    release();
    throw error;
  }
}

/** The record as one file, as `npm start -- verify` reads it. */
export const asFile = (lines: readonly string[]): Blob =>
  new Blob([lines.map(line => `${line}\n`).join('')], { type: 'application/jsonl' });
