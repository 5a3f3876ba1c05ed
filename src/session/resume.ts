import { initialTransition, transition } from 'xstate';
import { buildFirstStart } from '../../machines/first-start.ts';
import { type Moment, outcomeOf, stateName } from '../../machines/moment.ts';
import type { Entry, JsonObject, RecordLog } from '../record/index.ts';
import {
  type Data,
  formerVocabulary,
  inJson,
  isRestart,
  newerVocabulary,
  ofKind,
  olderVocabulary,
  readRecorded,
  VOCABULARY,
} from '../record/vocabulary/index.ts';
import { readHeader, type SessionHeader } from './header.ts';

/** A record that cannot be gone on with: one sentence, why and what to do. */
export class ResumeError extends Error {
  override readonly name = 'ResumeError';
  /** The session had come to its end: nobody is missing anything. */
  readonly isOver: boolean;

  constructor(sentence: string, isOver = false) {
    super(sentence);
    this.isOver = isOver;
  }
}

export interface Restored {
  readonly header: SessionHeader;
  readonly moment: Moment;
  /** Session time of the last entry: the resumed clock goes on from here. */
  readonly lastMs: number;
  /** Wall clock of the last entry before it broke off: how long nobody was there is counted from it. */
  readonly leftAt: string | undefined;
  /** What was judged before, with its session time: faces show it on. */
  readonly verdicts: readonly { readonly atMs: number; readonly data: Data<'verdict'> }[];
}

/**
 * Rebuilds the moment at which a session broke off, by replaying its recorded events.
 * @throws ResumeError when the record is of another kind or version, or closed
 */
export function restore(entries: readonly Entry[], source: string): Restored {
  try {
    return restored(entries, source);
  } catch (error) {
    // Whatever else is wrong with it: what is closed was ended by its people.
    if (error instanceof ResumeError && entries.some(({ kind }) => kind === 'closed'))
      throw new ResumeError(error.message, true);
    throw error;
  }
}

function restored(entries: readonly Entry[], source: string): Restored {
  const newer = newerVocabulary(entries);
  if (newer !== null)
    throw new ResumeError(
      `${source} was written by a newer version of this program (vocabulary ${newer}); go on with it there.`,
    );
  const older = olderVocabulary(entries);
  if (older !== null)
    throw new ResumeError(
      `${source} was written by an earlier version of this program (vocabulary ${older}), whose procedure was another; begin a new session.`,
    );
  const header = entries[0] ? readHeader(entries[0].data) : null;
  if (!header)
    throw new ResumeError(
      `${source} does not begin like a start-up session of this version; begin a new one.`,
    );
  const { entries: recorded, notUnderstood } = readRecorded(entries);
  const lost = entries.find(({ seq, kind }) => kind === 'event' && notUnderstood.includes(seq));
  if (lost)
    throw new ResumeError(`${source}, entry ${lost.seq}: not an event of this version; begin a new session.`);
  if (recorded.some(ofKind('closed')))
    throw new ResumeError(`${source} is closed: its session was ended. Begin a new one.`);
  const machine = buildFirstStart(header.profile);
  let [moment] = initialTransition(machine, { profile: header.profile, job: header.job });
  const former = formerVocabulary(entries);
  for (const { data, seq } of recorded.filter(ofKind('event'))) {
    [moment] = transition(machine, moment, data);
    if (former !== null && stateName(moment) !== data.state)
      throw new ResumeError(
        `${source} was written by an earlier version of this program (vocabulary ${former}), whose procedure led elsewhere in entry ${seq}; begin a new session.`,
      );
  }
  const verdicts = recorded.filter(ofKind('verdict')).map(({ timeMs, data }) => ({ atMs: timeMs, data }));
  const leftAt = entries.findLast(({ kind }) => !isRestart(kind))?.at;
  return { header, moment, lastMs: recorded.at(-1)?.timeMs ?? 0, leftAt, verdicts };
}

/** What stands in the first entry of a program that goes on with a record. */
export const resumedData = (): JsonObject => inJson<'resumed'>({ vocabulary: VOCABULARY });

/**
 * Puts the end on the record of a session that was over when its program broke off, before it could say so.
 * @returns why there is nothing to go on with
 */
export async function closeAfterAll(record: RecordLog, moment: Moment, source: string): Promise<ResumeError> {
  await record.append('closed', inJson<'closed'>({ outcome: outcomeOf(moment) }));
  return new ResumeError(
    `${source} broke off as its session was over. That is on the record now; begin a new one.`,
    true,
  );
}
