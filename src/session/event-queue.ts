import type { SessionEvent } from '../../machines/events.ts';

/** What an event leads to once it has been carried out: settles when the next one may be taken. */
type Rest = () => Promise<void>;

/** Whoever the events are for. */
export interface EventTaker {
  /** Nothing is taken any more. */
  isOver(): boolean;
  /** Carries it out at once, all but what waits for the disk. */
  take(event: SessionEvent): Rest;
  /** What carrying one out, or its rest, has thrown: those that come after are taken all the same. */
  failed(error: unknown): void;
}

/**
 * Everything that comes to a session, one event after another: the next when the rest of the one before is done. A stop
 * waits for none of that.
 */
export class EventQueue {
  readonly #taker: EventTaker;
  #waiting: SessionEvent[] = [];
  readonly #stops: SessionEvent[] = [];
  #draining: Promise<void> | null = null;
  #isDraining = false;
  #taking = false;
  #stopped: Promise<void> = Promise.resolve();

  constructor(taker: EventTaker) {
    this.#taker = taker;
  }

  /**
   * Puts an event in its place; a stop has been taken when this returns, but for one that comes within another event.
   * @throws what carrying out a stop has thrown: nobody is told that it counts
   */
  put(event: SessionEvent): void {
    if (event.type === 'stop') {
      this.#stops.push(event);
      try {
        this.#takeStops();
      } catch (error) {
        this.#taker.failed(error);
        throw error;
      }
      return;
    }
    this.#waiting.push(event);
    if (this.#isDraining) return;
    const draining = this.#drain().finally(() => {
      if (this.#draining === draining) this.#draining = null;
    });
    this.#draining = draining;
  }

  /** Settles when everything has been taken that was put in so far, with all that it led to. */
  async settled(): Promise<void> {
    while (this.#draining) await this.#draining;
    await this.#stopped;
  }

  async #drain(): Promise<void> {
    this.#isDraining = true;
    try {
      for (let event = this.#waiting.shift(); event; event = this.#waiting.shift()) {
        if (this.#taker.isOver()) return;
        try {
          const rest = this.#take(event);
          this.#takeStops();
          await rest();
        } catch (error) {
          this.#taker.failed(error);
        }
      }
    } finally {
      // With the look that found nothing waiting, not a turn later: what came between would lie until something else came.
      this.#isDraining = false;
    }
  }

  /** Stops come between two events, never within one: what an event led to stands behind it on the record. */
  #takeStops(): void {
    if (this.#taking) return;
    for (let stop = this.#stops.shift(); stop; stop = this.#stops.shift()) {
      if (this.#taker.isOver()) continue;
      // What waits was said before the stop: it is no answer to what is asked after it.
      this.#waiting = [];
      const rest = this.#take(stop);
      this.#stopped = Promise.all([this.#stopped, this.#rested(rest)]).then(() => {});
    }
  }

  async #rested(rest: Rest): Promise<void> {
    try {
      await rest();
    } catch (error) {
      this.#taker.failed(error);
    }
  }

  #take(event: SessionEvent): Rest {
    this.#taking = true;
    try {
      return this.#taker.take(event);
    } finally {
      this.#taking = false;
    }
  }
}
