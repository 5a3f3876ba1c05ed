import { readFileSync, statSync } from 'node:fs';
import { constants, open, stat } from 'node:fs/promises';
import { systemCause } from '../files/cause.ts';
import { linesIn, type RawLine, readLines } from './lines.ts';
import { RecordError } from './record-error.ts';

/** A record that can be read from its beginning, more than once. */
export interface OpenRecord {
  lines(): AsyncIterable<readonly RawLine[]>;
}

/** Asked before opening, because opening a pipe would wait for ever. */
function mustBeFile(path: string, found: { isFile(): boolean }): void {
  if (!found.isFile())
    throw new RecordError('unreadable', `${path} is not a file; give the record's own file.`);
}

const emptyAt = (path: string): RecordError =>
  new RecordError('empty', `${path} is empty; there is no record in it.`);

const asRecordError = (path: string, error: unknown): RecordError =>
  error instanceof RecordError
    ? error
    : new RecordError('unreadable', `${path} cannot be read: ${systemCause(error)}.`, error);

/**
 * Opens a record for reading and runs `use` on it; the file is closed whatever happens.
 * @throws RecordError `unreadable` or `empty`
 */
export async function withRecordFile<T>(path: string, use: (record: OpenRecord) => Promise<T>): Promise<T> {
  try {
    mustBeFile(path, await stat(path));
    const file = await open(path, constants.O_RDONLY);
    try {
      const sizeBytes = (await file.stat()).size;
      if (sizeBytes === 0) throw emptyAt(path);
      return await use({ lines: () => readLines(file, sizeBytes) });
    } finally {
      await file.close();
    }
  } catch (error) {
    throw asRecordError(path, error);
  }
}

/**
 * The bytes of a whole record, read while everything else waits.
 * @param largestBytes a larger one is not read
 * @throws RecordError `unreadable` or `empty`
 */
export function readRecordBytes(path: string, largestBytes: number): Buffer {
  try {
    const found = statSync(path);
    mustBeFile(path, found);
    if (found.size > largestBytes)
      throw new RecordError('unreadable', `${path} is larger than ${largestBytes / 1e6} MB; keep it apart.`);
    const bytes = readFileSync(path);
    if (bytes.length === 0) throw emptyAt(path);
    return bytes;
  } catch (error) {
    throw asRecordError(path, error);
  }
}

/** A record whose bytes are in memory. */
export const recordInMemory = (bytes: Buffer): OpenRecord => ({ lines: () => linesIn(bytes) });
