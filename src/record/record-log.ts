import { systemCause } from '../files/cause.ts';
import type { Entry } from './entry.ts';
import type { JsonObject } from './json.ts';
import { RecordError } from './record-error.ts';
import { type RecordClock, sealEvent } from './seal-next.ts';

/** The record being written. */
export interface RecordLog {
  /** The file it is in now; `saveTo` changes it. */
  readonly path: string;
  /** Number of entries, those in memory included. */
  readonly entries: number;
  readonly lastHash: string;
  /**
   * Set while the disk does not take what is recorded: entries are kept in memory only, and all of them are tried
   * again, in their order, once a second.
   */
  readonly failure: RecordError | undefined;
  readonly unsavedEntries: number;
  /** Calls back each time that `failure` is set, and when it is over. */
  watch(watcher: () => void): () => void;
  /** At most so many lines from this entry on, those in memory included. */
  linesFrom(seq: number, most: number): readonly string[];
  /**
   * Records one event. Settles when it is on the disk; entries keep the order of the calls.
   * @throws RecordError `invalid` or `closed`: the event was not recorded;
   *   `disk`, told by one call only for each failure: the entry is kept in memory, as all later ones will be
   *   until the disk takes them, whose calls settle without error
   */
  append(kind: string, data: JsonObject): Promise<Entry>;
  /**
   * Writes the whole record, entries in memory included, to a new file and goes on there.
   * @throws RecordError `exists`, `inUse` or `unwritable`; then nothing has changed
   */
  saveTo(otherPath: string): Promise<void>;
  /**
   * @throws RecordError `unsaved` where entries are only in memory and the disk does not take them now either; the
   *   record then stays open, and is not tried again by itself
   */
  close(): Promise<void>;
}

/** Where a record is written, by one writer alone: a file, or a browser's data base. */
export interface LogPlace {
  /** The file's path, or whatever else people find it by. */
  readonly path: string;
  /** Settles when the lines are kept for good, and then all of them are; otherwise rejects and none is. */
  append(lines: readonly string[]): Promise<void>;
  /** Lets go of it, for another writer. */
  release(): Promise<void>;
}

/** Makes another place with these lines already in it. */
export type MakePlace = (path: string, lines: readonly string[]) => Promise<LogPlace>;

/** So long the disk is left alone after a failure. */
export const TRIED_AGAIN_AFTER_MS = 1000;

/** Lines at the end of a record that its place did not take yet, and the system's error. */
export interface Untaken {
  readonly lines: number;
  readonly why: unknown;
}

export class LogWriter implements RecordLog {
  #place: LogPlace;
  readonly #makePlace: MakePlace;
  readonly #clock: RecordClock;
  /** The whole record: what `saveTo` needs when the disk that holds the file is gone. */
  readonly #lines: string[];
  #last: Entry;
  #savedLines: number;
  #failure: RecordError | undefined;
  #failureUntold = false;
  #again: ReturnType<typeof setTimeout> | undefined;
  readonly #watchers = new Set<() => void>();
  #closed = false;
  /** What touches the disk waits for what went before. */
  #busy: Promise<void> = Promise.resolve();
  #nextFlush: Promise<void> | undefined;

  /**
   * @param lines the whole record; the array is kept and added to
   * @param untaken where not all of it is in its place
   */
  constructor(
    place: LogPlace,
    makePlace: MakePlace,
    clock: RecordClock,
    lines: string[],
    last: Entry,
    untaken?: Untaken,
  ) {
    this.#place = place;
    this.#makePlace = makePlace;
    this.#clock = clock;
    this.#lines = lines;
    this.#last = last;
    this.#savedLines = lines.length - (untaken?.lines ?? 0);
    if (untaken) this.#fails(untaken.why);
  }

  get path(): string {
    return this.#place.path;
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

  watch(watcher: () => void): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  linesFrom(seq: number, most: number): readonly string[] {
    return this.#lines.slice(seq, seq + most);
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
      const count = this.#lines.length;
      const place = await this.#makePlace(otherPath, this.#lines.slice(0, count));
      const old = this.#place;
      this.#place = place;
      this.#savedLines = count;
      this.#isOver();
      // The old disk may be gone; whether it lets go of its file no longer matters.
      await old.release().catch(() => undefined);
    });
    await this.#flush();
  }

  async close(): Promise<void> {
    this.#refuseIfClosed();
    await this.#exclusively(async () => {
      clearTimeout(this.#again);
      await this.#writeOut();
      clearTimeout(this.#again);
      if (this.unsavedEntries > 0) {
        throw new RecordError(
          'unsaved',
          `${this.unsavedEntries} entries are only in memory; save the record to another place before closing.`,
        );
      }
      this.#closed = true;
      await this.#place.release();
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
      // A disk that has failed is not tried with each event: it may be slow to say no.
      if (this.#failure === undefined) await this.#writeOut();
    });
    return this.#nextFlush;
  }

  async #writeOut(): Promise<void> {
    const count = this.#lines.length;
    if (count === this.#savedLines) return;
    try {
      await this.#place.append(this.#lines.slice(this.#savedLines, count));
      this.#savedLines = count;
      this.#isOver();
    } catch (error) {
      this.#fails(error);
    }
  }

  #fails(why: unknown): void {
    this.#again = setTimeout(() => void this.#exclusively(() => this.#writeOut()), TRIED_AGAIN_AFTER_MS);
    if (this.#failure !== undefined) return;
    this.#failure = new RecordError(
      'disk',
      `${this.path} can no longer be written: ${systemCause(why)}; the record is kept in memory and tried again, make room or save it to another place.`,
      why,
    );
    this.#failureUntold = true;
    this.#tell();
  }

  #isOver(): void {
    clearTimeout(this.#again);
    this.#failureUntold = false;
    if (this.#failure === undefined) return;
    this.#failure = undefined;
    this.#tell();
  }

  #tell(): void {
    for (const watcher of this.#watchers) watcher();
  }

  async #exclusively(work: () => Promise<void>): Promise<void> {
    const result = this.#busy.then(work);
    this.#busy = result.catch(() => undefined);
    return result;
  }
}
