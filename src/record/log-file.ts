import { type FileHandle, open, unlink } from 'node:fs/promises';
import { dirname } from 'node:path';
import { systemCause, systemCode } from '../files/cause.ts';
import { RecordError } from './record-error.ts';

/** A file that grows by whole, synced blocks and is cut back to the last one when a block fails. */
export class LogFile {
  readonly path: string;
  readonly #file: FileHandle;
  /** Of whole blocks. */
  #sizeBytes: number;
  /** What an interruption left behind them, until the next block takes its place. */
  #tornBytes = 0;
  /** A block that failed could not be cut off yet. */
  #mayBeLonger = false;

  private constructor(path: string, file: FileHandle, sizeBytes: number) {
    this.path = path;
    this.#file = file;
    this.#sizeBytes = sizeBytes;
  }

  /**
   * Makes a new file with its first content; on failure none is left behind.
   * @throws RecordError `exists` or `unwritable`
   */
  static async create(path: string, blocks: Iterable<Buffer>): Promise<LogFile> {
    // What people said and how their engine ran is nobody else's to read.
    const file = await open(path, 'wx', 0o600).catch(error => {
      throw systemCode(error) === 'EEXIST'
        ? new RecordError('exists', `${path} is there already; choose another name, or resume that record.`)
        : new RecordError(
            'unwritable',
            `${path} cannot be made: ${systemCause(error)}; choose another place.`,
            error,
          );
    });
    const log = new LogFile(path, file, 0);
    try {
      for (const block of blocks) await log.append(block);
      await syncFolder(dirname(path));
      return log;
    } catch (error) {
      await log.close();
      await unlink(path);
      throw new RecordError(
        'unwritable',
        `${path} cannot be written: ${systemCause(error)}; choose another place.`,
        error,
      );
    }
  }

  /**
   * Opens a file that is to grow behind its first `soundBytes`, in the place of the `tornBytes` that follow them.
   * Nothing is written yet.
   * @throws RecordError `unwritable`
   */
  static async reopen(path: string, soundBytes: number, tornBytes: number): Promise<LogFile> {
    try {
      const log = new LogFile(path, await open(path, 'r+'), soundBytes);
      log.#tornBytes = tornBytes;
      return log;
    } catch (error) {
      throw new RecordError('unwritable', `${path} cannot be continued: ${systemCause(error)}.`, error);
    }
  }

  /**
   * Settles when the block is on the disk. On failure the file is cut back to what it held before, a torn tail
   * included, and the system's error is thrown; the same block may be tried again.
   * @param block longer than a torn tail that it takes the place of
   */
  async append(block: Buffer): Promise<void> {
    await this.#refuseForeignChange();
    try {
      this.#mayBeLonger = true;
      if (this.#tornBytes > 0) await this.#writeOverTail(block);
      else await this.#write(block, 0, block.length);
      await this.#file.datasync();
    } catch (error) {
      await this.#cutBack().catch(() => undefined);
      throw error;
    }
    this.#sizeBytes += block.length;
    this.#tornBytes = 0;
    this.#mayBeLonger = false;
  }

  async close(): Promise<void> {
    await this.#file.close();
  }

  /**
   * First what lies behind the tail, its last byte no newline: where there is no room, or the power goes, the torn
   * line is as long as it was or longer, and still to be seen as torn. Only then is the tail written over, which
   * takes no room, and last of all the newline makes the line a whole one.
   */
  async #writeOverTail(block: Buffer): Promise<void> {
    const end = block.length - 1;
    const draft = Buffer.from(block);
    draft.write(' ', end);
    await this.#write(draft, this.#tornBytes, block.length);
    await this.#file.datasync();
    await this.#write(draft, 0, this.#tornBytes);
    await this.#file.datasync();
    await this.#write(block, end, block.length);
  }

  async #write(block: Buffer, from: number, to: number): Promise<void> {
    for (let done = from; done < to; ) {
      const { bytesWritten } = await this.#file.write(block, done, to - done, this.#sizeBytes + done);
      done += bytesWritten;
    }
  }

  async #cutBack(): Promise<void> {
    await this.#file.truncate(this.#sizeBytes + this.#tornBytes);
    this.#mayBeLonger = false;
  }

  /** A deleted file takes writes without a murmur, and a second writer would spoil the chain. */
  async #refuseForeignChange(): Promise<void> {
    // What a failed block left, where the disk did not even let it be cut off.
    if (this.#mayBeLonger) await this.#cutBack();
    const { nlink, size } = await this.#file.stat();
    if (nlink === 0) throw new Error('the file was deleted');
    if (size !== this.#sizeBytes + this.#tornBytes) throw new Error('another program changed the file');
  }
}

async function syncFolder(path: string): Promise<void> {
  // Windows has no such thing, and keeps names safe by itself.
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}
