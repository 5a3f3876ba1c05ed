export type RecordErrorCode =
  /** The event cannot be written down as it is; nothing was recorded. */
  | 'invalid'
  /** A file of that name is there already. */
  | 'exists'
  /** Another program, or another part of this one, has the record open. */
  | 'inUse'
  /** The file or folder cannot be read or written when a record is opened. */
  | 'unreadable'
  | 'unwritable'
  /** The file holds nothing. */
  | 'empty'
  /** The file is no record of this program. */
  | 'notOurs'
  /** A record, but a line of it was changed, so it must not be continued. */
  | 'broken'
  /** Writing failed in mid-session; the entry and all later ones are kept in memory. */
  | 'disk'
  /** Entries are only in memory, and closing would lose them. */
  | 'unsaved'
  | 'closed';

/** The one error of the record: a code for programs, one sentence for people. */
export class RecordError extends Error {
  override readonly name = 'RecordError';
  readonly code: RecordErrorCode;

  constructor(code: RecordErrorCode, sentence: string, cause?: unknown) {
    super(sentence, cause === undefined ? {} : { cause });
    this.code = code;
  }
}
