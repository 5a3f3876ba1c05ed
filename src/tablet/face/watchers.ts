/** Shown changes come no closer than this: a level meter would otherwise keep the page busy. */
const CLOSEST_MS = 80;

/** Tells those who watch that something changed: at once, and then again when more has changed meanwhile. */
export class Watchers {
  readonly #all = new Set<() => void>();
  #waiting = false;
  #again = false;

  add(watcher: () => void): () => void {
    this.#all.add(watcher);
    return () => this.#all.delete(watcher);
  }

  changed(): void {
    if (this.#waiting) {
      this.#again = true;
      return;
    }
    this.#waiting = true;
    setTimeout(() => {
      this.#waiting = false;
      if (this.#again) this.changed();
    }, CLOSEST_MS);
    this.#again = false;
    for (const watcher of this.#all) watcher();
  }
}
