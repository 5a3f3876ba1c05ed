import { uniform } from '../audio-fixtures/random.ts';

/** Choices by chance, the same for the same seed. */
export interface Chance {
  /** A number from 0 to 1 (exclusive). */
  readonly random: () => number;
  /** @throws RangeError when there is nothing to choose from. */
  readonly oneOf: <T>(all: readonly T[]) => T;
  readonly sometimes: (probability: number) => boolean;
  /** A whole number, both ends included. */
  readonly wholeBetween: (low: number, high: number) => number;
}

export function chanceOf(seed: number): Chance {
  const random = uniform(seed);
  return {
    random,
    oneOf: <T>(all: readonly T[]): T => {
      const one = all[Math.floor(random() * all.length)];
      if (one === undefined) throw new RangeError('nothing to choose from');
      return one;
    },
    sometimes: probability => random() < probability,
    wholeBetween: (low, high) => low + Math.floor(random() * (high - low + 1)),
  };
}
