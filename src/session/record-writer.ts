import { RecordError } from '../record/record-error.ts';
import { inJson, type Kind, type RecordKind, type Written } from '../record/vocabulary/index.ts';
import type { Tell } from './happening.ts';
import type { SessionParts } from './parts.ts';

const KEPT_AGAIN = 'The record can be written again: every entry of it is on the disk, in its order.';

/**
 * An entry that the disk has not taken by then is gone on without: nobody at an engine waits for it any longer. Our own
 * choice: a busy machine's disk has taken more than one second, and oil pressure has some eight to come up.
 */
export const DISK_ANSWERS_MS = 3000;

const SLOW =
  'The disk does not answer: the session goes on, and the record is kept in memory until it does. Save it to another place if that lasts.';

/** Puts the facts of a session on its record, and tells when the disk does not take them. */
export class RecordWriter {
  readonly #parts: Pick<SessionParts, 'record' | 'notKept'>;
  readonly #tell: Tell;
  #kept: Promise<void> = Promise.resolve();
  #goOn: () => void = () => {};
  #goneOn: Promise<void>;
  #isGoneOnWithout = false;
  #isClosed = false;
  #isEnded = false;
  /** What stands told of the disk; null while it does what it should. */
  #told: string | null = null;

  constructor(parts: Pick<SessionParts, 'record' | 'notKept'>, tell: Tell) {
    this.#parts = parts;
    this.#tell = tell;
    this.#goneOn = this.#untilGoneOn();
    parts.record.watch(() => this.#lookAtDisk());
  }

  /** Settles when everything kept so far is on the disk, or in memory where that has failed or does not answer. */
  get kept(): Promise<void> {
    return Promise.race([this.#goneOn, this.#kept]);
  }

  #untilGoneOn(): Promise<void> {
    return new Promise(resolve => {
      this.#goOn = resolve;
    });
  }

  /** Tells that the disk does not answer, and when it does again. */
  async #goOnWithout(): Promise<void> {
    if (this.#isGoneOnWithout) return;
    this.#isGoneOnWithout = true;
    this.#goOn();
    this.#told = SLOW;
    this.#tell({ kind: 'notKept', sentence: SLOW });
    this.keep('problem', { sentence: SLOW });
    for (let all = this.#kept; ; all = this.#kept) {
      await all;
      if (all === this.#kept) break;
    }
    this.#isGoneOnWithout = false;
    this.#goneOn = this.#untilGoneOn();
    this.#lookAtDisk();
  }

  /** The record has its last entry: what comes now is told, and moves no hash that somebody has noted. */
  end(): void {
    this.#isEnded = true;
  }

  /** Puts one fact on the record. Where the disk fails the session goes on, with the record in memory. */
  keep<K extends Exclude<Kind, RecordKind>>(kind: K, data: Written<K>): void {
    // Behind `closed` stands the sentence that says so, and nothing else.
    if (this.#isEnded || (this.#isClosed && kind !== 'said')) return;
    this.#isClosed ||= kind === 'closed';
    const late = setTimeout(() => void this.#goOnWithout(), DISK_ANSWERS_MS);
    const written = this.#parts.record.append(kind, inJson(data)).then(
      () => {},
      (error: unknown) => {
        // Told already, as long as it lasts.
        if (error instanceof RecordError && error.code === 'disk') return;
        const sentence = error instanceof RecordError ? error.message : String(error);
        this.#tell({ kind: 'problem', sentence });
      },
    );
    void written.finally(() => clearTimeout(late));
    this.#kept = Promise.all([this.#kept, written]).then(() => {});
  }

  /** A sentence for the people at the engine about something that does not work. */
  report(sentence: string): void {
    this.#tell({ kind: 'problem', sentence });
    this.keep('problem', { sentence });
  }

  /** Tells what a failure of the disk before the session began has left in memory. */
  begin(): void {
    if (this.#parts.record.failure) this.#lookAtDisk();
  }

  /** The record tells of both as well: of its beginning, when it can. */
  #lookAtDisk(): void {
    const { record, notKept } = this.#parts;
    const { failure } = record;
    const sentence = failure ? (notKept?.(failure) ?? failure.message) : null;
    if (sentence === this.#told) return;
    this.#told = sentence;
    this.#tell({ kind: 'notKept', sentence });
    if (sentence === null) this.report(KEPT_AGAIN);
    else this.keep('problem', { sentence });
  }
}
