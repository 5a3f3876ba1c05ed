import { normalizeWording } from '../wording.ts';
import type { Moment } from './network.ts';
import { type Pronounce, phoneGraphOf } from './phone-graph.ts';
import { Search } from './search.ts';

/** Listens for the stop wordings alone, at any moment, whatever is said around them. */
export interface MomentSpotter {
  listen(wordings: readonly string[]): void;
  /** The next moment; the stop wording that ends with it, if any. */
  next(moment: Moment): string | undefined;
}

/**
 * Likelihood that a stop wording needs against whatever else the sound may be, per phone of its least likely word: the
 * logarithm. Chosen on the development set of `npm run hearing`.
 */
export const leastStopPerPhone = -0.15;

/** @param pronounce pronunciations in the phones of the network */
export function createMomentSpotter(pronounce: Pronounce): MomentSpotter {
  let search: Search | undefined;
  let inForce = '';
  return {
    listen(wordings) {
      const next = wordings.map(normalizeWording);
      if (next.join('\n') === inForce) return;
      search = next.length === 0 ? undefined : new Search(phoneGraphOf(next, pronounce));
      inForce = next.join('\n');
    },
    next(moment) {
      search?.next(moment);
      const best = search?.best();
      if (best === undefined || !(best.worstWord >= leastStopPerPhone)) return undefined;
      search?.restart();
      return best.wording;
    },
  };
}
