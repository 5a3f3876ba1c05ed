import { type Pronounce, phoneGraphOf } from '../phone-network/phone-graph.ts';
import { Search, type SpokenWord } from '../phone-network/search.ts';
import { WordGraph } from '../phone-network/word-graph.ts';
import { normalizeWording } from '../wording.ts';
import type { Moment } from './moment.ts';

/** Listens for the stop wordings alone, at any moment, whatever is said around them. */
export interface StopSpotter {
  listen(wordings: readonly string[]): void;
  /** The next moment; the stop wording that ends with it, if any. */
  next(moment: Pick<Moment, 'early'>): string | undefined;
}

/**
 * Likelihood that a stop wording needs against whatever else the sound may be, per phone of its least likely word: the
 * logarithm. Chosen by the stops that it misses (`npm run hearing:stop-bound`): of 81 people of the development split who
 * say "stop", 98.8 % are heard clean, 96.3 % at 10 dB and 87.7 % at 0 dB, and 1.2 stops are heard in ten minutes of talk
 * without any, 2.4 at 10 dB. At -1 it would be 92.6 % at 0 dB; but replies such as "thermostat open" then stopped whole
 * starts of the recorded sessions.
 */
export const leastStopPerPhone = -0.6;

/** Moments that a stop wording may last for each of its phones: a shout is long, but not that long. */
const longestPerPhone = 12;

export interface SpotterSettings {
  readonly leastPerPhone?: number;
}

const worstOf = (words: readonly SpokenWord[]) =>
  Math.min(...words.map(({ score, phones }) => score / phones));

/** @param pronounce pronunciations in the phones of the network */
export function createStopSpotter(
  pronounce: Pronounce,
  { leastPerPhone = leastStopPerPhone }: SpotterSettings = {},
): StopSpotter {
  let search: Search | undefined;
  let inForce = '';
  let moments = 0;
  return {
    listen(wordings) {
      const next = wordings.map(normalizeWording);
      if (next.join('\n') === inForce) return;
      inForce = next.join('\n');
      const graph = phoneGraphOf(new WordGraph().wordings(next), pronounce);
      search = new Search(graph, { beam: 20, talkCost: 0 });
      moments = 0;
    },
    next({ early }) {
      if (search === undefined) return undefined;
      search.next(early);
      moments += 1;
      const found = search.endingNow().find(({ words }) => {
        const phones = words.reduce((sum, word) => sum + word.phones, 0);
        const lasted = moments - (words[0]?.from ?? moments);
        return worstOf(words) >= leastPerPhone && lasted <= phones * longestPerPhone;
      });
      if (found === undefined) return undefined;
      search.restart();
      moments = 0;
      return found.text;
    },
  };
}
