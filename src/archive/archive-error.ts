/** What the archive cannot do: one sentence, what was wrong, where, what to do. */
export class ArchiveError extends Error {
  override readonly name = 'ArchiveError';

  constructor(sentence: string, cause?: unknown) {
    super(sentence, cause === undefined ? {} : { cause });
  }
}
