import type { Deed } from '../../server/protocol/index.ts';

/** A stop that has no answer yet. */
export interface KeptStop {
  readonly id: string;
  readonly deed: Extract<Deed, { do: 'stop' }>;
  /** In which it was given; null where there was none, left out where that was not known. */
  readonly session?: string | null | undefined;
}

/** Where stops outlive a page that is loaded anew. */
export interface StopStore {
  read(): readonly KeptStop[];
  write(stops: readonly KeptStop[]): void;
}

/** The stops of a device that have no answer, as long as they have none. */
export class KeptStops {
  readonly #store: StopStore;
  readonly #all: Map<string, KeptStop>;
  /** Given in a page before this one, and not held against the session that is there now. */
  readonly #before: Set<string>;

  constructor(store: StopStore) {
    this.#store = store;
    this.#all = new Map(store.read().map(stop => [stop.id, stop]));
    this.#before = new Set(this.#all.keys());
  }

  get all(): readonly KeptStop[] {
    return [...this.#all.values()];
  }

  /** It is not known yet whether its session is still there. */
  isDoubtful(id: string): boolean {
    return this.#before.has(id);
  }

  add(stop: KeptStop): void {
    this.#all.set(stop.id, stop);
    this.#store.write(this.all);
  }

  remove(id: string): void {
    this.#before.delete(id);
    if (this.#all.delete(id)) this.#store.write(this.all);
  }

  /**
   * Holds the stops of a page before this one against the session that is there now; undefined: nobody says which.
   * @returns those that go to it, and those whose session is gone: these are kept no longer. In doubt a stop is sent.
   */
  judge(session: string | null | undefined): {
    readonly good: readonly KeptStop[];
    readonly gone: readonly KeptStop[];
  } {
    const before = this.all.filter(({ id }) => this.#before.has(id));
    this.#before.clear();
    const isGone = ({ session: own }: KeptStop) =>
      session !== undefined && typeof own === 'string' && own !== session;
    const gone = before.filter(isGone);
    for (const { id } of gone) this.remove(id);
    return { good: before.filter(stop => !isGone(stop)), gone };
  }

  clear(): void {
    this.#all.clear();
    this.#before.clear();
    this.#store.write([]);
  }
}
