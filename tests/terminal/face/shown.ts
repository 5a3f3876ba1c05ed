import type { View } from '../../../src/session/view.ts';

/** Answers like a `Viewer`, with views set by hand. */
export class ShownViews {
  #view: View;
  readonly #watchers = new Set<() => void>();

  constructor(view: View) {
    this.#view = view;
  }

  view(): View {
    return this.#view;
  }

  watch(changed: () => void): () => void {
    this.#watchers.add(changed);
    return () => this.#watchers.delete(changed);
  }

  get watched(): boolean {
    return this.#watchers.size > 0;
  }

  show(view: View): void {
    this.#view = view;
    for (const changed of this.#watchers) changed();
  }
}
