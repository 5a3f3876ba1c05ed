import type { StopState } from '../face/stop-state.ts';

/** What the laptop said of a stop; `none`: it was none, the microphone had heard the tool say the very word. */
export type StopAnswered = Extract<StopState, 'none' | 'stopped' | 'nothingRuns'>;

/** A stop without an answer. */
interface OpenStop {
  readonly nth: number;
  isLate: boolean;
  /** People were told what to do since it was given. */
  isTold: boolean;
}

/**
 * The stops that were given on this device, and what has become of them. What is shown is of the worst of them: nothing that
 * is answered hides one that is not.
 */
export class GivenStops {
  readonly #open = new Map<string, OpenStop>();
  #given = 0;
  /** The last one that the laptop would not have; 0: none, or a later one was answered. */
  #refused = 0;
  /** The latest one that was answered; 0: none. */
  #answered = 0;
  #answer: StopAnswered = 'none';

  get state(): StopState {
    const open = [...this.#open.values()];
    if (this.#refused > 0 || open.some(({ isLate }) => isLate)) return 'unanswered';
    return open.length > 0 ? 'stopping' : this.#answer;
  }

  /** This one has no answer yet. */
  waits(id: string): boolean {
    return this.#open.has(id);
  }

  /** Any of them has no answer yet. */
  get anyWaits(): boolean {
    return this.#open.size > 0;
  }

  /** Any of them may still be answered in time. */
  get anyIsAwaited(): boolean {
    return [...this.#open.values()].some(({ isLate }) => !isLate);
  }

  give(id: string): void {
    this.#given += 1;
    this.#open.set(id, { nth: this.#given, isLate: false, isTold: false });
  }

  /** It was given in a page before this one, and had no answer there. */
  takeOver(id: string): void {
    this.give(id);
    this.#open.set(id, { nth: this.#given, isLate: true, isTold: false });
  }

  /** What it was to stop is no longer there. */
  drop(id: string): void {
    this.#open.delete(id);
  }

  /**
   * No answer has come in time, or none will.
   * @returns true where people have to be told what to do: that is about all that wait by then
   */
  isLate(id: string): boolean {
    const stop = this.#open.get(id);
    if (!stop) return false;
    stop.isLate = true;
    const isNews = !stop.isTold;
    if (isNews) for (const each of this.#open.values()) each.isTold = true;
    return isNews;
  }

  /** Nobody is left to answer any of them. @returns as of `isLate` */
  allAreLate(): boolean {
    return [...this.#open.keys()].map(id => this.isLate(id)).includes(true);
  }

  /** The laptop has it. */
  answered(id: string, answer: StopAnswered): void {
    const stop = this.#open.get(id);
    if (!stop) return;
    this.#open.delete(id);
    this.#answered = Math.max(this.#answered, stop.nth);
    if (stop.nth > this.#refused) this.#refused = 0;
    this.#answer = answer;
  }

  /** The laptop would not have it: it stopped nothing. @returns as of `isLate` */
  refused(id: string): boolean {
    const isNews = this.isLate(id);
    const nth = this.#open.get(id)?.nth ?? 0;
    // A later one that was answered has made up for it already.
    if (nth > this.#answered) this.#refused = Math.max(this.#refused, nth);
    this.#open.delete(id);
    return isNews;
  }

  /** The session that was stopped is no longer there: nothing of it is shown over what comes. */
  forget(): void {
    this.#answer = 'none';
  }
}
