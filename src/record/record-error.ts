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

const causes: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the disk quota is used up',
  EFBIG: 'the file has reached the largest size allowed here',
  EIO: 'the disk reports a fault',
  ENXIO: 'the disk is gone',
  ENODEV: 'the disk is gone',
  EROFS: 'the disk is read-only',
  EACCES: 'permission is denied',
  EPERM: 'permission is denied',
  ENOENT: 'there is no such file or folder',
  ENOTDIR: 'part of the path is not a folder',
  EISDIR: 'it is a folder',
  ENAMETOOLONG: 'the name is too long',
  ELOOP: 'the links in the path lead in a circle',
  EMFILE: 'too many files are open',
};

/** The system's code of an error (`ENOSPC`), or an empty string. */
export function systemCode(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/** A disk that takes no more now, and may do so again when there is room. */
export const isNoRoom = (error: unknown): boolean => ['ENOSPC', 'EDQUOT'].includes(systemCode(error));

/** The cause of a failed file operation, as the middle part of a sentence. */
export function systemCause(error: unknown): string {
  const code = systemCode(error);
  if (code !== '') return causes[code] ?? `the system reports ${code}`;
  return error instanceof Error ? error.message : String(error);
}
