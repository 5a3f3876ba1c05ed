import { wasTriedOut } from '../../../machines/drills.ts';
import { languages } from '../../../prompts/index.ts';
import { type Data, understand } from '../../record/vocabulary/index.ts';
import { type LogPage, logPageSchema } from '../../server/protocol/index.ts';
import { PlotBook } from '../face/plots.ts';
import { words } from '../words/index.ts';
import type { Mirror } from './mirror.ts';

/** A phase that has begun, for the time line. */
export interface Milestone {
  readonly atMs: number;
  readonly text: string;
}

/** What the record of a session on the laptop holds, read on page by page. */
export class LogBook {
  readonly session: string;
  readonly #token: string;
  readonly #mirror: Mirror | null;
  /** As the record says that it was begun; until then in what nobody will see. */
  #language = languages.en;
  #plots = new PlotBook(languages.en, 'us');
  /** A stop word was tried out last, as far as anybody has said. */
  #drill: Milestone | null = null;
  #milestones: Milestone[] = [];
  #phase = '';
  #next = 0;
  #reading: Promise<void> | null = null;

  /** @param mirror takes the same entries, where a copy is kept */
  constructor(session: string, token: string, mirror: Mirror | null) {
    this.session = session;
    this.#token = token;
    this.#mirror = mirror;
  }

  /** A copy is here with which the session can be gone on with. */
  get hasCopy(): boolean {
    return this.#mirror?.isUsable ?? false;
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
    await this.#mendCopy();
    for (;;) {
      const page = await this.#page(this.#next);
      if (!page || page.entries.length === 0) return;
      await this.#mirror?.take(page.entries);
      for (const { kind, monoMs, data } of page.entries) this.#take(kind, monoMs, data);
      this.#next = page.next;
    }
  }

  /** What could not be kept is asked for again. */
  async #mendCopy(): Promise<void> {
    const mirror = this.#mirror;
    for (let from = mirror?.lacksFrom ?? null; mirror && from !== null; ) {
      const page = await this.#page(from);
      if (page) await mirror.take(page.entries.filter(({ seq }) => seq < this.#next));
      if (mirror.lacksFrom === from) return;
      from = mirror.lacksFrom;
    }
  }

  async #page(from: number): Promise<LogPage | null> {
    const address = `/api/sessions/${encodeURIComponent(this.session)}/log?from=${from}`;
    const response = await fetch(address, { headers: { authorization: `Bearer ${this.#token}` } });
    return response.ok ? logPageSchema.parse(await response.json()) : null;
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
        this.#stopped({ atMs, text: words.board.states.stopped }, told.data);
        return;
      case 'reopened':
        // It was taken for the trying out of a stop word, and was none.
        this.#milestones = this.#milestones.map(each =>
          each === this.#drill ? { ...each, text: words.board.states.stopped } : each,
        );
        this.#drill = null;
        return;
      case 'event':
        this.#cameTo(told.data.state, atMs);
        return;
      case undefined:
      case 'resumed':
      case 'recovered':
      case 'passed':
      case 'inTime':
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
      case 'engineHeard':
      case 'besideOthers':
      case 'otherVoice':
      case 'voiceLearned':
      case 'command':
      case 'notCarriedOut':
      case 'closed':
        return;
      default:
        told satisfies never;
    }
  }

  /** Where a stop word is asked for, a stop without a cause is its trying out, until a cause is named after all. */
  #stopped(stop: Milestone, { step, cause }: Data<'stopped'>): void {
    const isDrill = wasTriedOut(step, cause);
    const milestone = isDrill ? { ...stop, text: words.board.states.drill } : stop;
    this.#drill = isDrill ? milestone : null;
    this.#milestones.push(milestone);
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
