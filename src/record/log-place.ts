import { takeLock } from './lock.ts';
import { LogFile } from './log-file.ts';
import type { LogPlace } from './record-log.ts';

/** Lines handed to the disk at once; a record of hours is copied in blocks of this many. */
const LINES_PER_BLOCK = 1000;

const toBlock = (lines: readonly string[]): Buffer => Buffer.from(`${lines.join('\n')}\n`);

function* blocksOf(lines: readonly string[]): Generator<Buffer> {
  for (let start = 0; start < lines.length; start += LINES_PER_BLOCK) {
    yield toBlock(lines.slice(start, start + LINES_PER_BLOCK));
  }
}

/**
 * Runs `work` as the only writer of `path`; when it fails, the right to write is given back.
 * @param work gets what makes a place of the file that it has opened
 * @throws RecordError `inUse` or `unwritable`, and what `work` throws
 */
export async function asOnlyWriter<T>(
  path: string,
  work: (placeOf: (file: LogFile) => LogPlace) => Promise<T>,
): Promise<T> {
  const lock = await takeLock(path);
  try {
    return await work(file => ({
      path,
      append: lines => file.append(toBlock(lines)),
      async release() {
        try {
          await file.close();
        } finally {
          await lock.release();
        }
      },
    }));
  } catch (error) {
    await lock.release();
    throw error;
  }
}

/**
 * A new file with these lines.
 * @throws RecordError `exists`, `inUse` or `unwritable`; then no file is left behind
 */
export const newFile = (path: string, lines: readonly string[]): Promise<LogPlace> =>
  asOnlyWriter(path, async placeOf => placeOf(await LogFile.create(path, blocksOf(lines))));
