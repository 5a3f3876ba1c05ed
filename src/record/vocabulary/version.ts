import { z } from 'zod';
import type { Entry } from '../entry.ts';
import { vocabulary } from './opened.ts';
import { isRestart } from './read.ts';

/**
 * The vocabulary that this program writes. It stands in the first entry of each run of the program (`opened`,
 * `resumed`, `recovered`) and holds for the entries behind it:
 *
 * 1. Not named. The entry `resumed` stands on a clock of its own that begins anew.
 * 2. The entry `resumed` stands on the session's clock, like those behind it.
 *
 * A new kind, or a change in what a kind or one of its members means, takes the next number; what older records hold
 * is read on as it was written.
 */
export const VOCABULARY = 2;

const named = z.object({ vocabulary });

/** The vocabulary of a record, where it is newer than this program; else null. */
export function newerVocabulary(entries: readonly Pick<Entry, 'kind' | 'data'>[]): number | null {
  const newest = entries.reduce((most, { kind, data }) => {
    const parsed = isRestart(kind) || kind === 'opened' ? named.safeParse(data) : undefined;
    return parsed?.success ? Math.max(most, parsed.data.vocabulary) : most;
  }, 1);
  return newest > VOCABULARY ? newest : null;
}
