import type { Result } from '../../src/engineering/result.ts';

/** One figure of ours held against one figure that somebody else published. */
export interface PublishedCheck {
  readonly subject: string;
  /** Document, table, edition; "(from memory)" or "common practice, no published source" where so. */
  readonly source: string;
  readonly quantity: string;
  readonly unit: string;
  readonly expected: number;
  /** Largest allowed distance from `expected`, in `unit`. */
  readonly tolerance: number;
  readonly compute: () => number;
}

/** The value of a result; NaN, which no check meets, when the calculation refused. */
export const numberOf = (result: Result<number>): number => (result.ok ? result.value : Number.NaN);

/** One number out of a result that holds several; NaN when the calculation refused. */
export const partOf = <T>(result: Result<T>, part: (value: T) => number): number =>
  result.ok ? part(result.value) : Number.NaN;
