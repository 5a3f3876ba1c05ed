import type { BayBrief, BoardNews } from '../protocol/index.ts';
import type { Bay } from './bay.ts';

/** Often enough for somebody who looks on, and seldom enough for fifty bays. */
const EVERY_MS = 500;

/** What of a bay does not merely run on: a timer counts down by itself at whoever looks at it. */
const standing = ({ sessionMs, timer, ...rest }: BayBrief) => ({
  ...rest,
  timer: timer && {
    ...timer,
    leftMs: timer.held ? timer.leftMs : null,
    endsS: Math.round((sessionMs + timer.leftMs) / 1000),
  },
});

/** All bays of the shop, for those who look on: told soon after anything has changed, and then whole. */
export class Board {
  readonly #bays: readonly Bay[];
  readonly #watchers = new Set<(text: string) => void>();
  #told = '';
  #soon: NodeJS.Timeout | undefined;

  constructor(bays: readonly Bay[]) {
    this.#bays = bays;
    for (const { stream } of bays) stream.listen(() => this.#changed());
  }

  news(): BoardNews {
    return { type: 'board', bays: this.#bays.map(bay => bay.brief()) };
  }

  /** Called with each message as it is sent; gives back what ends it. */
  watch(watcher: (text: string) => void): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  close(): void {
    clearTimeout(this.#soon);
    this.#watchers.clear();
  }

  #changed(): void {
    if (this.#watchers.size === 0 || this.#soon) return;
    this.#soon = setTimeout(() => {
      this.#soon = undefined;
      const news = this.news();
      const standingNow = JSON.stringify(news.bays.map(standing));
      if (standingNow === this.#told) return;
      this.#told = standingNow;
      const text = JSON.stringify(news);
      for (const watcher of this.#watchers) watcher(text);
    }, EVERY_MS);
  }
}
