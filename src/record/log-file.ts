import { type FileHandle, open, unlink } from 'node:fs/promises';
import { dirname } from 'node:path';
import { RecordError, systemCause, systemCode } from './record-error.ts';

/** A file that grows by whole, synced blocks and is cut back to the last one when a block fails. */
export class LogFile {
  readonly path: string;
  readonly #file: FileHandle;
  #sizeBytes: number;

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
   * Opens a file and writes `block` behind its first `soundBytes`, over a torn tail that is no longer than
   * the block: written over rather than cut first, so that no moment loses both.
   */
  static async resume(path: string, soundBytes: number, block: Buffer): Promise<LogFile> {
    try {
      const file = await open(path, 'r+');
      const log = new LogFile(path, file, soundBytes);
      try {
        await log.#write(block);
        await file.datasync();
      } catch (error) {
        await log.close();
        throw error;
      }
      log.#sizeBytes += block.length;
      return log;
    } catch (error) {
      throw new RecordError('unwritable', `${path} cannot be continued: ${systemCause(error)}.`, error);
    }
  }

  /**
   * Settles when the block is on the disk. On failure the file is cut back to what it held before, as far
   * as the disk still lets that happen, and the system's error is thrown.
   */
  async append(block: Buffer): Promise<void> {
    await this.#refuseForeignChange();
    try {
      await this.#write(block);
      await this.#file.datasync();
    } catch (error) {
      // A second failure leaves a torn tail, which reading recovers; the first one is what to report.
      await this.#file.truncate(this.#sizeBytes).catch(() => undefined);
      throw error;
    }
    this.#sizeBytes += block.length;
  }

  async close(): Promise<void> {
    await this.#file.close();
  }

  async #write(block: Buffer): Promise<void> {
    for (let done = 0; done < block.length; ) {
      const { bytesWritten } = await this.#file.write(
        block,
        done,
        block.length - done,
        this.#sizeBytes + done,
      );
      done += bytesWritten;
    }
  }

  /** A deleted file takes writes without a murmur, and a second writer would spoil the chain. */
  async #refuseForeignChange(): Promise<void> {
    const { nlink, size } = await this.#file.stat();
    if (nlink === 0) throw new Error('the file was deleted');
    if (size !== this.#sizeBytes) throw new Error('another program changed the file');
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
