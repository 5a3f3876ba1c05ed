import { constants, type FileHandle, open, stat } from 'node:fs/promises';
import { RecordError, systemCause } from './record-error.ts';

export interface OpenRecord {
  readonly file: FileHandle;
  readonly sizeBytes: number;
}

/**
 * Opens a record for reading and runs `use` on it; the file is closed whatever happens.
 * @throws RecordError `unreadable` or `empty`
 */
export async function withRecordFile<T>(path: string, use: (record: OpenRecord) => Promise<T>): Promise<T> {
  try {
    // Asked before opening, because opening a pipe would wait for ever.
    if (!(await stat(path)).isFile()) {
      throw new RecordError('unreadable', `${path} is not a file; give the record's own file.`);
    }
    const file = await open(path, constants.O_RDONLY);
    try {
      const sizeBytes = (await file.stat()).size;
      if (sizeBytes === 0) throw new RecordError('empty', `${path} is empty; there is no record in it.`);
      return await use({ file, sizeBytes });
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof RecordError) throw error;
    throw new RecordError('unreadable', `${path} cannot be read: ${systemCause(error)}.`, error);
  }
}
