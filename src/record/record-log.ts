import type { Entry } from './entry.ts';
import type { JsonObject } from './json.ts';
import { type Lock, takeLock } from './lock.ts';
import { LogFile } from './log-file.ts';
import { RecordError, systemCause } from './record-error.ts';
import { type RecordClock, sealEvent } from './seal-next.ts';

/** The record being written. */
export interface RecordLog {
  /** The file it is in now; `saveTo` changes it. */
  readonly path: string;
  /** Number of entries, those in memory included. */
  readonly entries: number;
  readonly lastHash: string;
  /** Set once the disk has failed: from then on entries are kept in memory only. */
  readonly failure: RecordError | undefined;
  readonly unsavedEntries: number;
  /**
   * Records one event. Settles when it is on the disk; entries keep the order of the calls.
   * @throws RecordError `invalid` or `closed`: the event was not recorded;
   *   `disk`, told by one call only: the entry is kept in memory, as all later ones will be, whose calls
   *   then settle without error
   */
  append(kind: string, data: JsonObject): Promise<Entry>;
  /**
   * Writes the whole record, entries in memory included, to a new file and goes on there.
   * @throws RecordError `exists`, `inUse` or `unwritable`; then nothing has changed
   */
  saveTo(otherPath: string): Promise<void>;
  /** @throws RecordError `unsaved` while entries are only in memory; the record then stays open */
  close(): Promise<void>;
}

/** Lines handed to the disk at once; a record of hours is copied in blocks of this many. */
const LINES_PER_BLOCK = 1000;

export class LogWriter implements RecordLog {
  #file: LogFile;
  #lock: Lock;
  readonly #clock: RecordClock;
  /** The whole record: what `saveTo` needs when the disk that holds the file is gone. */
  readonly #lines: string[];
  #last: Entry;
  #savedLines: number;
  #failure: RecordError | undefined;
  #failureUntold = false;
  #closed = false;
  /** What touches the disk waits for what went before. */
  #busy: Promise<void> = Promise.resolve();
  #nextFlush: Promise<void> | undefined;

  /** @param lines the whole record, all of it in the file; the array is kept and added to */
  constructor(file: LogFile, lock: Lock, clock: RecordClock, lines: string[], last: Entry) {
    this.#file = file;
    this.#lock = lock;
    this.#clock = clock;
    this.#lines = lines;
    this.#last = last;
    this.#savedLines = lines.length;
  }

  get path(): string {
    return this.#file.path;
  }

  get entries(): number {
    return this.#lines.length;
  }

  get lastHash(): string {
    return this.#last.hash;
  }

  get failure(): RecordError | undefined {
    return this.#failure;
  }

  get unsavedEntries(): number {
    return this.#lines.length - this.#savedLines;
  }

  async append(kind: string, data: JsonObject): Promise<Entry> {
    this.#refuseIfClosed();
    const { entry, line } = sealEvent(this.#last, kind, data, this.#clock);
    this.#lines.push(line);
    this.#last = entry;
    await this.#flush();
    if (this.#failure !== undefined && this.#failureUntold) {
      this.#failureUntold = false;
      throw this.#failure;
    }
    return entry;
  }

  async saveTo(otherPath: string): Promise<void> {
    this.#refuseIfClosed();
    await this.#exclusively(async () => {
      const lock = await takeLock(otherPath);
      const count = this.#lines.length;
      let file: LogFile;
      try {
        file = await LogFile.create(otherPath, blocksOf(this.#lines.slice(0, count)));
      } catch (error) {
        await lock.release();
        throw error;
      }
      const [oldFile, oldLock] = [this.#file, this.#lock];
      this.#file = file;
      this.#lock = lock;
      this.#savedLines = count;
      this.#failure = undefined;
      this.#failureUntold = false;
      // The old disk may be gone; whether it lets go of its file no longer matters.
      await oldFile.close().catch(() => undefined);
      await oldLock.release().catch(() => undefined);
    });
    await this.#flush();
  }

  async close(): Promise<void> {
    this.#refuseIfClosed();
    await this.#exclusively(async () => {
      await this.#writeOut();
      if (this.unsavedEntries > 0) {
        throw new RecordError(
          'unsaved',
          `${this.unsavedEntries} entries are only in memory; save the record to another place before closing.`,
        );
      }
      this.#closed = true;
      await this.#file.close();
      await this.#lock.release();
    });
  }

  #refuseIfClosed(): void {
    if (this.#closed)
      throw new RecordError('closed', `The record ${this.path} is closed; nothing more is recorded.`);
  }

  /** Events that come while the disk is busy go to it together, with one sync. */
  #flush(): Promise<void> {
    this.#nextFlush ??= this.#exclusively(async () => {
      this.#nextFlush = undefined;
      await this.#writeOut();
    });
    return this.#nextFlush;
  }

  async #writeOut(): Promise<void> {
    if (this.#failure !== undefined) return;
    const count = this.#lines.length;
    if (count === this.#savedLines) return;
    try {
      await this.#file.append(toBlock(this.#lines.slice(this.#savedLines, count)));
      this.#savedLines = count;
    } catch (error) {
      this.#failure = new RecordError(
        'disk',
        `${this.path} can no longer be written: ${systemCause(error)}; the record is kept in memory, save it to another place.`,
        error,
      );
      this.#failureUntold = true;
    }
  }

  async #exclusively(work: () => Promise<void>): Promise<void> {
    const result = this.#busy.then(work);
    this.#busy = result.catch(() => undefined);
    return result;
  }
}

function* blocksOf(lines: readonly string[]): Generator<Buffer> {
  for (let start = 0; start < lines.length; start += LINES_PER_BLOCK) {
    yield toBlock(lines.slice(start, start + LINES_PER_BLOCK));
  }
}

export const toBlock = (lines: readonly string[]): Buffer => Buffer.from(`${lines.join('\n')}\n`);
