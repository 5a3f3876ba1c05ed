import type { ErrorCode, Refusal } from './protocol/index.ts';

/** Something that a client may not do, or that cannot be done: a code and one sentence. Nothing was changed. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly code: ErrorCode;

  constructor(code: ErrorCode, sentence: string) {
    super(sentence);
    this.code = code;
  }

  get refusal(): Refusal {
    return { code: this.code, sentence: this.message };
  }
}

/** What goes to a client about any failure: a refusal as it is, and nothing of the inside of anything else. */
export function refusalOf(error: unknown): Refusal {
  if (error instanceof Refused) return error.refusal;
  return { code: 'failed', sentence: 'The server could not do this; its terminal says why.' };
}
