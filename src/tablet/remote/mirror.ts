import { type Entry, entrySchema, NO_PREVIOUS } from '../../record/entry.ts';
import { canonicalLine, checkLine } from '../../record/seal.ts';
import { understand } from '../../record/vocabulary/index.ts';
import type { LogPage } from '../../server/protocol/index.ts';
import { type KeptLine, type KeptRecord, keepCopy, recordOf } from '../record/data-base.ts';

const encoder = new TextEncoder();

interface CopyStore {
  readonly recordOf: typeof recordOf;
  /** Rejects where there is no room, as a rule. */
  readonly keepCopy: typeof keepCopy;
}

/** How far the copy reaches. */
interface Kept {
  readonly prev: string;
  readonly next: number;
  readonly about: KeptRecord | null;
}

/**
 * A copy of the session that runs on the laptop, line by line as it stands there, kept on the device that leads: with
 * it the session can be gone on with here when the laptop is away. What does not fit the chain is not kept.
 */
export class Mirror {
  readonly #store: CopyStore;
  readonly #dataBase: IDBDatabase;
  readonly #session: string;
  readonly #bay: string;
  #kept: Kept = { prev: NO_PREVIOUS, next: 0, about: null };
  /** How far the record was read. */
  #read = 0;
  #couldNotKeep = false;
  /** It was gone on with here: what the laptop writes now belongs to another continuation. */
  #isForked: boolean | null = null;

  /** @param store where copies are kept; the page's own data base, where it is left out */
  constructor(
    dataBase: IDBDatabase,
    session: string,
    bay: string,
    store: CopyStore = { recordOf, keepCopy },
  ) {
    this.#store = store;
    this.#dataBase = dataBase;
    this.#session = session;
    this.#bay = bay;
  }

  /** The copy reaches to the laptop's last entry that was read, and can be gone on with. */
  get isUsable(): boolean {
    return this.#kept.about?.state === 'open' && this.#isForked === false && this.#reachesAll;
  }

  /** From which entry on this device could not keep what it read, for want of room as a rule; null where it could. */
  get lacksFrom(): number | null {
    return this.#couldNotKeep && !this.#reachesAll ? this.#kept.next : null;
  }

  get #reachesAll(): boolean {
    return this.#kept.next >= this.#read;
  }

  /** Takes the entries that follow those before. What could not be kept leaves the copy as it was, and `lacksFrom` there. */
  async take(entries: LogPage['entries']): Promise<void> {
    this.#isForked ??= (await this.#store.recordOf(this.#dataBase, this.#session))?.copyOf === null;
    if (this.#isForked) return;
    this.#read = Math.max(this.#read, (entries.at(-1)?.seq ?? -1) + 1);
    let kept = this.#kept;
    const lines: KeptLine[] = [];
    for (const each of entries) {
      const line = lineAfter(kept, each);
      if (line === null) return;
      lines.push({ record: this.#session, seq: each.seq, line: line.text });
      kept = { prev: each.hash, next: kept.next + 1, about: this.#aboutAfter(kept.about, line.entry) };
    }
    try {
      if (kept.about) await this.#store.keepCopy(this.#dataBase, kept.about, lines);
      this.#kept = kept;
    } catch {
      this.#couldNotKeep = true;
    }
  }

  #aboutAfter(about: KeptRecord | null, { at, kind, data }: Entry): KeptRecord | null {
    const told = understand(kind, data);
    if (told?.kind === 'opened')
      return {
        id: this.#session,
        startedAt: at,
        vehicle: told.data.job.vehicle,
        profile: told.data.profile.name,
        state: 'open',
        sent: false,
        copyOf: this.#bay,
      };
    if (told?.kind === 'closed' && about)
      return { ...about, state: told.data.outcome === 'signedOff' ? 'signedOff' : 'ended' };
    return about;
  }
}

/** The entry that follows as its line, where it fits the chain; else null. */
function lineAfter(
  { prev, next }: Kept,
  { seq, at, monoMs, kind, data, hash }: LogPage['entries'][number],
): { readonly entry: Entry; readonly text: string } | null {
  const entry = entrySchema.safeParse({ v: 1, seq, at, monoMs, kind, data, prev, hash });
  if (!entry.success || seq !== next) return null;
  const text = canonicalLine(entry.data);
  return checkLine(encoder.encode(text)) ? { entry: entry.data, text } : null;
}
