import type { Entry } from './entry.ts';
import { explain, type Fault } from './explain.ts';
import { RecordError } from './record-error.ts';
import { withRecordFile } from './record-file.ts';
import { scan } from './scan.ts';
import { readEntry } from './seal.ts';

export interface ReadRecord {
  /** From the first up to the last one before any fault. */
  readonly entries: readonly Entry[];
  /** What is wrong behind them, if anything. */
  readonly fault?: Fault;
  /** Where the last of them ends in the file. */
  readonly soundBytes: number;
  /** With the fault `tornTail`: the beginning of a line that was left. */
  readonly tornBytes?: Uint8Array;
}

/**
 * Reads a record into memory, up to the first line that is torn, altered or out of place.
 * @throws RecordError `unreadable`, `empty` or `notOurs`, with one sentence
 */
export async function readLog(path: string): Promise<ReadRecord> {
  return withRecordFile(path, async record => {
    const entries: Entry[] = [];
    const result = await scan(record, (link, text) => entries.push(readEntry(link, text)));
    const { soundBytes, stop } = result;
    if (stop === undefined) return { entries, soundBytes };
    const fault = await explain(record, result, stop);
    if (fault.problem === 'notOurs')
      throw new RecordError('notOurs', `${path} is not a record of this program.`);
    return { entries, soundBytes, fault, ...(stop.kind === 'torn' ? { tornBytes: stop.bytes } : {}) };
  });
}
