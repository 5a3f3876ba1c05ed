/**
 * What keeps this device from hearing by itself: `asleep`, the browser lets it neither hear nor speak until it is touched;
 * `noSound`, its microphone is open and nothing comes from it.
 */
export type Deaf = 'no' | 'asleep' | 'noSound';

/** Puts together what is told of it from two sides, and tells when that changes. */
export class DeafHere {
  readonly #onChange: () => void;
  #asleep = false;
  #noSound = false;

  constructor(onChange: () => void) {
    this.#onChange = onChange;
  }

  /** Asleep it has no sound either: it is told of the one that people can do something about. */
  get state(): Deaf {
    if (this.#asleep) return 'asleep';
    return this.#noSound ? 'noSound' : 'no';
  }

  sleeps(isAsleep: boolean): void {
    this.#asleep = isAsleep;
    this.#onChange();
  }

  misses(isMissing: boolean): void {
    this.#noSound = isMissing;
    this.#onChange();
  }
}
