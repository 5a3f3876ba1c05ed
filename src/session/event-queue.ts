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

/** An event, and whether it still means what it meant when it came. */
interface Waiting {
  readonly event: SessionEvent;
  readonly counts: () => boolean;
}

/** What waits for nothing: a stop, and time that has run out beside an engine. */
const isUrgent = ({ type }: SessionEvent) => type === 'stop' || type === 'clock';

/**
 * Everything that comes to a session, one event after another: the next when the rest of the one before is done. A stop
 * and the clock wait for none of that.
 */
export class EventQueue {
  readonly #taker: EventTaker;
  #waiting: Waiting[] = [];
  readonly #urgent: SessionEvent[] = [];
  #draining: Promise<void> | null = null;
  #isDraining = false;
  #taking = false;
  /** What urgent events have led to and is not done; null where all of it is. */
  #leftOfUrgent: Promise<void> | null = null;

  constructor(taker: EventTaker) {
    this.#taker = taker;
  }

  /**
   * Puts an event in its place; a stop has been taken when this returns, but for one that comes within another event.
   * @param counts asked when its turn comes: an event that means something else by then is left out
   * @throws what carrying out a stop has thrown: nobody is told that it counts
   */
  put(event: SessionEvent, counts: () => boolean = () => true): void {
    if (isUrgent(event)) {
      this.#urgent.push(event);
      this.#takeUrgent();
      return;
    }
    this.#waiting.push({ event, counts });
    if (this.#isDraining) return;
    const draining = this.#drain().finally(() => {
      if (this.#draining === draining) this.#draining = null;
    });
    this.#draining = draining;
  }

  /** Settles when everything has been taken that was put in so far, with all that it led to. */
  async settled(): Promise<void> {
    while (this.#draining || this.#leftOfUrgent) await (this.#draining ?? this.#leftOfUrgent);
  }

  async #drain(): Promise<void> {
    this.#isDraining = true;
    try {
      for (;;) {
        // What a stop asks stands before what was said after it.
        while (this.#leftOfUrgent) await this.#leftOfUrgent;
        const next = this.#waiting.shift();
        if (!next || this.#taker.isOver()) return;
        if (!next.counts()) continue;
        try {
          const rest = this.#take(next.event);
          this.#takeUrgent();
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

  /** They come between two events, never within one: what an event led to stands behind it on the record. */
  #takeUrgent(): void {
    if (this.#taking) return;
    for (let event = this.#urgent.shift(); event; event = this.#urgent.shift()) {
      if (this.#taker.isOver()) continue;
      // What waits was said before the stop: it is no answer to what is asked after it.
      if (event.type === 'stop') this.#waiting = [];
      else this.#takeThoseBefore(event.atMs);
      if (this.#taker.isOver()) return;
      try {
        this.#leave(this.#take(event));
      } catch (error) {
        this.#taker.failed(error);
        if (event.type === 'stop') throw error;
      }
    }
  }

  /** What came before that time had run out was in time, and is carried out first. */
  #takeThoseBefore(atMs: number): void {
    const inTime = this.#waiting.filter(({ event }) => event.atMs <= atMs);
    this.#waiting = this.#waiting.filter(({ event }) => event.atMs > atMs);
    for (const { event, counts } of inTime) {
      if (this.#taker.isOver() || !counts()) continue;
      try {
        this.#leave(this.#take(event));
      } catch (error) {
        this.#taker.failed(error);
      }
    }
  }

  #leave(rest: Rest): void {
    const all = Promise.all([this.#leftOfUrgent, this.#rested(rest)]).then(() => {
      if (this.#leftOfUrgent === all) this.#leftOfUrgent = null;
    });
    this.#leftOfUrgent = all;
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
