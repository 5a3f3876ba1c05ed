import { languages } from '../../../prompts/index.ts';
import type { Language } from '../../../prompts/types.ts';
import { understand } from '../../record/vocabulary/index.ts';
import { logPageSchema } from '../../server/protocol/index.ts';
import type { UnitSystem } from '../../session/units.ts';
import { PlotBook } from '../face/plots.ts';
import { words } from '../words/index.ts';

/** A phase that has begun, for the time line. */
export interface Milestone {
  readonly atMs: number;
  readonly text: string;
}

/** What the record of a session on the laptop holds, read on page by page. */
export class LogBook {
  readonly session: string;
  readonly #token: string;
  #language: Language = languages.en;
  #plots: PlotBook;
  #milestones: Milestone[] = [];
  #phase = '';
  #next = 0;
  #reading: Promise<void> | null = null;

  constructor(session: string, token: string, units: UnitSystem) {
    this.session = session;
    this.#token = token;
    this.#plots = new PlotBook(this.#language, units);
  }

  get plots() {
    return this.#plots.plots();
  }

  get milestones(): readonly Milestone[] {
    return this.#milestones;
  }

  /** Reads what is new. A laptop that does not answer is asked again the next time. */
  readOn(): Promise<void> {
    this.#reading ??= this.#read()
      .catch(() => {})
      .finally(() => {
        this.#reading = null;
      });
    return this.#reading;
  }

  async #read(): Promise<void> {
    for (;;) {
      const address = `/api/sessions/${encodeURIComponent(this.session)}/log?from=${this.#next}`;
      const response = await fetch(address, { headers: { authorization: `Bearer ${this.#token}` } });
      if (!response.ok) return;
      const page = logPageSchema.parse(await response.json());
      if (page.entries.length === 0) return;
      for (const { kind, monoMs, data } of page.entries) this.#take(kind, monoMs, data);
      this.#next = page.next;
    }
  }

  #take(kind: string, atMs: number, data: unknown): void {
    const told = understand(kind, data);
    switch (told?.kind) {
      case 'opened':
        this.#language = languages[told.data.language];
        this.#plots = new PlotBook(this.#language, told.data.units);
        return;
      case 'verdict':
        this.#plots.take(told.data, atMs);
        return;
      case 'stopped':
        this.#milestones.push({ atMs, text: words.stopped });
        return;
      case 'event':
        this.#cameTo(told.data.state, atMs);
        return;
      case undefined:
      case 'resumed':
      case 'recovered':
      case 'passed':
      case 'inTime':
      case 'reopened':
      case 'skipped':
      case 'faults':
      case 'refused':
      case 'disagreement':
      case 'contradiction':
      case 'doubted':
      case 'vouched':
      case 'barred':
      case 'takenBack':
      case 'found':
      case 'leftOpen':
      case 'settled':
      case 'heard':
      case 'said':
      case 'problem':
      case 'hearing':
      case 'reading':
      case 'command':
      case 'closed':
        return;
      default:
        told satisfies never;
    }
  }

  #cameTo(state: string, atMs: number): void {
    const [phase = ''] = state.split('.');
    const names: Readonly<Record<string, string>> = this.#language.phases;
    const name = names[phase];
    if (!name || phase === this.#phase) return;
    this.#phase = phase;
    this.#milestones.push({ atMs, text: name });
  }
}
