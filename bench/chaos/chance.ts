import { uniform } from '../../audio-fixtures/random.ts';

/** What the seed decides: whom, what and when. How fast people and machines are it does not. */
export class Chance {
  readonly next: () => number;

  constructor(seed: number) {
    this.next = uniform(seed);
    // The first few numbers of neighbouring seeds are alike.
    for (let skipped = 0; skipped < 8; skipped += 1) this.next();
  }

  one<T>(list: readonly T[]): T {
    const chosen = list[Math.floor(this.next() * list.length)];
    if (chosen === undefined) throw new Error('Nothing to choose from.');
    return chosen;
  }

  between(min: number, max: number): number {
    return min + (max - min) * this.next();
  }

  happens(share: number): boolean {
    return this.next() < share;
  }

  /** All of them in another order. */
  shuffled<T>(list: readonly T[]): T[] {
    const rest = [...list];
    return list.map(() => rest.splice(Math.floor(this.next() * rest.length), 1)[0] as T);
  }
}
