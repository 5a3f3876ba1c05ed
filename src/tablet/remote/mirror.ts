import { type Entry, entrySchema, NO_PREVIOUS } from '../../record/entry.ts';
import { canonicalLine, checkLine } from '../../record/seal.ts';
import { understand } from '../../record/vocabulary/index.ts';
import type { LogPage } from '../../server/protocol/index.ts';
import { type KeptLine, type KeptRecord, keepCopy, recordOf } from '../record/data-base.ts';

const encoder = new TextEncoder();

/**
 * A copy of the session that runs on the laptop, line by line as it stands there, kept on the device that leads: with
 * it the session can be gone on with here when the laptop is away. What does not fit the chain is not kept.
 */
export class Mirror {
  readonly #dataBase: IDBDatabase;
  readonly #session: string;
  readonly #bay: string;
  #prev = NO_PREVIOUS;
  #next = 0;
  #about: KeptRecord | null = null;
  /** It was gone on with here: what the laptop writes now belongs to another continuation. */
  #isForked: boolean | null = null;

  constructor(dataBase: IDBDatabase, session: string, bay: string) {
    this.#dataBase = dataBase;
    this.#session = session;
    this.#bay = bay;
  }

  /** The copy reaches to the laptop's last entry that was read, and can be gone on with. */
  get isUsable(): boolean {
    return this.#about?.state === 'open' && this.#isForked === false;
  }

  /** Takes the entries that follow those before. */
  async take(entries: LogPage['entries']): Promise<void> {
    this.#isForked ??= (await recordOf(this.#dataBase, this.#session))?.copyOf === null;
    if (this.#isForked) return;
    const lines: KeptLine[] = [];
    for (const each of entries) {
      const line = this.#line(each);
      if (line === null) return;
      lines.push({ record: this.#session, seq: each.seq, line });
    }
    if (this.#about) await keepCopy(this.#dataBase, this.#about, lines);
  }

  #line({ seq, at, monoMs, kind, data, hash }: LogPage['entries'][number]): string | null {
    const entry = entrySchema.safeParse({ v: 1, seq, at, monoMs, kind, data, prev: this.#prev, hash });
    if (!entry.success || seq !== this.#next) return null;
    const line = canonicalLine(entry.data);
    if (!checkLine(encoder.encode(line))) return null;
    this.#prev = hash;
    this.#next += 1;
    this.#look(entry.data);
    return line;
  }

  #look({ at, kind, data }: Entry): void {
    const told = understand(kind, data);
    if (told?.kind === 'opened')
      this.#about = {
        id: this.#session,
        startedAt: at,
        vehicle: told.data.job.vehicle,
        profile: told.data.profile.name,
        state: 'open',
        sent: false,
        copyOf: this.#bay,
      };
    if (told?.kind === 'closed' && this.#about) {
      const state = told.data.outcome === 'signedOff' ? 'signedOff' : 'ended';
      this.#about = { ...this.#about, state };
    }
  }
}
