/** A source of chance that gives the same numbers for the same seed. */
export interface Random {
  /** Evenly from 0 up to, not including, 1. */
  next(): number;
  between(low: number, high: number): number;
  /** About a normal distribution, deviation 1, never beyond 6. */
  normal(): number;
}

/**
 * Numbers by chance from a seed; `stream` keeps those of one purpose from shifting when another draws more.
 * Source: linear congruential generator with the multiplier and increment of Numerical Recipes (from memory).
 */
export function seeded(seed: number, stream: string): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    // The low bits of such a generator repeat soon: only the high ones are used.
    return (state >>> 8) / 2 ** 24;
  };
  for (const letter of stream) {
    state = (state ^ letter.charCodeAt(0)) >>> 0;
    next();
  }
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    normal() {
      let sum = -6;
      for (let draw = 0; draw < 12; draw += 1) sum += next();
      return sum;
    },
  };
}
