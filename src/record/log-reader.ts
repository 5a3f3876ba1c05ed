import type { Entry } from './entry.ts';
import { explain, type Fault } from './explain.ts';
import { RecordError } from './record-error.ts';
import { type OpenRecord, recordInMemory, withRecordFile } from './record-file.ts';
import { scan } from './scan.ts';
import { type Link, readEntry } from './seal.ts';

interface Reading {
  /** What is wrong behind the sound entries, if anything. */
  readonly fault?: Fault;
  /** Where the last sound entry ends in the file. */
  readonly soundBytes: number;
}

export interface ReadRecord extends Reading {
  /** From the first up to the last one before any fault. */
  readonly entries: readonly Entry[];
  /** With the fault `tornTail`: the beginning of a line that was left. */
  readonly tornBytes?: Uint8Array;
}

/**
 * Reads a record into memory, up to the first line that is torn, altered or out of place.
 * @throws RecordError `unreadable`, `empty` or `notOurs`, with one sentence
 */
export async function readLog(path: string): Promise<ReadRecord> {
  const entries: Entry[] = [];
  const { fault, soundBytes, tornBytes } = await withRecordFile(path, record =>
    followThrough(record, path, (_, read) => entries.push(read())),
  );
  return { entries, soundBytes, ...(fault && { fault }), ...(tornBytes && { tornBytes }) };
}

export interface SkimmedRecord extends Reading {
  /** Number of sound entries. */
  readonly entries: number;
  /** The last of them, without its data; absent when there is none. */
  readonly last?: Omit<Entry, 'v' | 'data'>;
}

/**
 * Checks a record as `readLog` does, but takes out the data of only those entries that are asked for:
 * half the work, where most are not.
 * @param bytes the whole file
 * @param path what the file is called, for the sentences
 * @param visit sees the kind of each sound entry, and may read it
 * @throws RecordError `notOurs`, with one sentence
 */
export async function skimBytes(
  bytes: Buffer,
  path: string,
  visit: (kind: string, read: () => Entry) => void,
): Promise<SkimmedRecord> {
  const { entries, last, fault, soundBytes } = await followThrough(
    recordInMemory(bytes),
    path,
    ({ kind }, read) => visit(kind, read),
  );
  return { entries, soundBytes, ...(last && { last }), ...(fault && { fault }) };
}

async function followThrough(
  record: OpenRecord,
  path: string,
  visit: (link: Link, read: () => Entry) => void,
) {
  const result = await scan(record, (link, line) => visit(link, () => readEntry(link, line)));
  const { entries, last, soundBytes, stop } = result;
  const read = { entries, last, soundBytes };
  if (stop === undefined) return { ...read, fault: undefined, tornBytes: undefined };
  const fault = await explain(record, result, stop);
  if (fault.problem === 'notOurs')
    throw new RecordError('notOurs', `${path} is not a record of this program.`);
  return { ...read, fault, tornBytes: stop.kind === 'torn' ? stop.bytes : undefined };
}
