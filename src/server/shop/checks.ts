import { z } from 'zod';
import { readJson, writeWhole } from '../state-file.ts';
import type { Verdict } from '../work/check-record.ts';
import type { Lane } from '../work/lane.ts';

const verdictSchema = z.enum(['confirmed', 'notConfirmed', 'damaged']) satisfies z.ZodType<Verdict>;
const fileSchema = z.record(z.string(), z.object({ mark: z.string(), verdict: verdictSchema }));

/** What is to be looked at, and where. */
export interface ToCheck {
  readonly id: string;
  readonly mark: string;
  /** Null when the record is not there any more. */
  path(): Promise<string | null>;
}

/** Whether the records of the shop can be believed: looked at once each, one after the other, and kept. */
export class Checks {
  readonly #path: string;
  readonly #lane: Lane;
  readonly #tell: (sentence: string) => void;
  readonly #known: Map<string, { readonly mark: string; readonly verdict: Verdict }>;
  readonly #waiting = new Map<string, ToCheck>();
  #working: Promise<void> | null = null;

  private constructor(
    path: string,
    lane: Lane,
    tell: (sentence: string) => void,
    known: Map<string, { readonly mark: string; readonly verdict: Verdict }>,
  ) {
    this.#path = path;
    this.#lane = lane;
    this.#tell = tell;
    this.#known = known;
  }

  static async open(path: string, lane: Lane, tell: (sentence: string) => void): Promise<Checks> {
    return new Checks(path, lane, tell, new Map(Object.entries((await readJson(path, fileSchema)) ?? {})));
  }

  /** What was found of a record as it is marked now; undefined when nobody has looked yet. */
  of(id: string, mark: string): Verdict | undefined {
    const known = this.#known.get(id);
    return known?.mark === mark ? known.verdict : undefined;
  }

  /** Has these looked at. Settles when all of them, and whatever waited before, have been. */
  look(records: readonly ToCheck[]): Promise<void> {
    for (const record of records) this.#waiting.set(record.id, record);
    if (this.#waiting.size > 0)
      this.#working ??= this.#work().finally(() => {
        this.#working = null;
      });
    return this.#working ?? Promise.resolve();
  }

  async note(id: string, mark: string, verdict: Verdict): Promise<void> {
    this.#known.set(id, { mark, verdict });
    await this.#save();
  }

  async #work(): Promise<void> {
    for (let [next] = this.#waiting.values(); next; [next] = this.#waiting.values()) {
      this.#waiting.delete(next.id);
      const path = await next.path();
      if (path === null) continue;
      const check = await this.#lane.do('check', { path }).catch(() => null);
      // What is too large to be looked at is not confirmed; what the end of the server cut short is looked at again.
      if (this.#lane.isClosed) return;
      const verdict = check === null ? 'notConfirmed' : check.isRecord ? check.verdict : 'damaged';
      this.#known.set(next.id, { mark: next.mark, verdict });
    }
    await this.#save();
  }

  async #save(): Promise<void> {
    await writeWhole(this.#path, JSON.stringify(Object.fromEntries(this.#known))).catch((error: Error) =>
      this.#tell(`What was found of records could not be kept (${error.message}); they are looked at again.`),
    );
  }
}
