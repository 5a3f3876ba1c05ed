/** What the user gave cannot be used. The message is one sentence: what was wrong, where, what to do. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}
