import { createHash } from 'node:crypto';
import { RecordError, readRecordBytes, skimBytes } from '../record/index.ts';
import { type Card, CardReader } from './card.ts';
import { pack } from './packed-log.ts';

/** `torn`: the last line breaks off, all before it is as written. `broken`: a line was altered, lost or moved. */
export const recordStates = ['sound', 'torn', 'broken'] as const;
type RecordState = (typeof recordStates)[number];

/** A record read and checked, ready to be archived. */
export interface Intake {
  readonly source: string;
  /** SHA-256 of the file's bytes. */
  readonly digest: string;
  readonly state: RecordState;
  /** What does not verify; empty for a sound record. */
  readonly fault: string;
  /** Hash of the first entry, which all versions of one record share; empty when not even that one is sound. */
  readonly chain: string;
  /** Hash of the last sound entry. */
  readonly head: string;
  /** Number of sound entries. */
  readonly entries: number;
  /** Wall clock, UTC; empty when no entry is sound. */
  readonly started: string;
  readonly ended: string;
  /** Session time. */
  readonly seconds: number | null;
  readonly card: Card;
  /** The file itself, compressed (`packed-log.ts`). */
  readonly packed: Uint8Array;
}

export type IntakeResult =
  | { readonly ok: true; readonly intake: Intake }
  | { readonly ok: false; readonly source: string; readonly sentence: string };

/** More than a week of readings; a database takes no larger value than about twice this. */
const LARGEST_BYTES = 500e6;

/** A steady clock that says more than thirty years is none. */
const LONGEST_S = 1e9;

/** Reads and checks one record. Never throws: what is no record at all comes back as one sentence. */
export async function takeIn(path: string): Promise<IntakeResult> {
  try {
    // In threads of its own, so that to wait for the disk here costs nobody anything.
    const whole = readRecordBytes(path, LARGEST_BYTES);
    const reader = new CardReader();
    const opened = { chain: '', at: '' };
    const skimmed = await skimBytes(whole, path, (kind, read) => {
      if (kind === 'opened') {
        const { hash, at } = read();
        Object.assign(opened, { chain: hash, at });
      }
      reader.visit(kind, read);
    });
    const { entries, fault, last, soundBytes } = skimmed;
    // What a running session has written since is left for the next time.
    const bytes = fault ? whole : whole.subarray(0, soundBytes);
    const card = reader.card();
    // The clock of a program that has just gone on with a record stands at its beginning.
    const seconds = Math.max(card.seconds, (last?.monoMs ?? 0) / 1000);
    return {
      ok: true,
      intake: {
        source: path,
        digest: createHash('sha256').update(bytes).digest('hex'),
        state:
          fault === undefined ? 'sound' : fault.problem === 'tornTail' && entries > 0 ? 'torn' : 'broken',
        fault: fault?.sentence ?? '',
        chain: opened.chain,
        head: last?.hash ?? '',
        entries,
        started: opened.at,
        ended: last?.at ?? '',
        seconds: seconds <= LONGEST_S ? seconds : null,
        card,
        packed: pack(bytes),
      },
    };
  } catch (error) {
    const sentence =
      error instanceof RecordError
        ? error.message
        : `${path} cannot be read: ${error instanceof Error ? error.message : String(error)}.`;
    return { ok: false, source: path, sentence };
  }
}
