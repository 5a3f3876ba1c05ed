import { type PhoneGraph, type Pronounce, phoneGraphOf } from '../phone-network/phone-graph.ts';
import { Search, type SpokenWord } from '../phone-network/search.ts';
import { WordGraph } from '../phone-network/word-graph.ts';
import { normalizeWording } from '../wording.ts';
import type { Moment } from './moment.ts';

/** Listens for the stop wordings alone, at any moment, whatever is said around them. */
export interface StopSpotter {
  listen(wordings: readonly string[]): void;
  /** The next moment; the stop wording that ends with it, if any. */
  next(moment: Pick<Moment, 'early' | 'phones'>): string | undefined;
}

/**
 * Likelihood that a stop wording needs against whatever else the sound may be, per phone of its least likely word: the
 * logarithm. It is listened for twice: in the early outputs, which are there sooner and have to be surer, and in those
 * that look further ahead, which miss less in the midst of talk and in noise. Chosen together, by the stops that are
 * missed (`npm run hearing:stop-bound`): of 81 people of the development split who say "stop" alone 98.8 % are heard clean,
 * 97.5 % at 10 dB and 96.3 % at 0 dB, of 34 in talk 91.2, 91.2 and 85.3 %; 1.9 stops are heard in ten minutes of talk
 * without any, 1.3 at 10 dB. With -1.3 in place of the second -0.8 it is 98.8 % alone and 91.2 % in talk at 0 dB, but of
 * made voices' replies 4 to 8 in 100 stop the session that do not otherwise.
 */
export const leastEarlyStopPerPhone = -0.8;
export const leastStopPerPhone = -0.8;

/** Moments that a stop wording may last for each of its phones: a shout is long, but not that long. */
const longestPerPhone = 12;

export interface SpotterSettings {
  readonly leastEarlyPerPhone?: number;
  readonly leastPerPhone?: number;
}

const worstOf = (words: readonly SpokenWord[]) =>
  Math.min(...words.map(({ score, phones }) => score / phones));

type Listener = ReturnType<typeof listener>;

/** Hears wordings in one of the outputs. */
function listener(graph: PhoneGraph, leastPerPhone: number) {
  const search = new Search(graph, { beam: 20, talkCost: 0 });
  let moments = 0;
  return {
    restart() {
      search.restart();
      moments = 0;
    },
    next(phones: Float32Array): string | undefined {
      search.next(phones);
      moments += 1;
      return search.endingNow().find(({ words }) => {
        const count = words.reduce((sum, word) => sum + word.phones, 0);
        const lasted = moments - (words[0]?.from ?? moments);
        return worstOf(words) >= leastPerPhone && lasted <= count * longestPerPhone;
      })?.text;
    },
  };
}

/** @param pronounce pronunciations in the phones of the network */
export function createStopSpotter(
  pronounce: Pronounce,
  { leastEarlyPerPhone = leastEarlyStopPerPhone, leastPerPhone = leastStopPerPhone }: SpotterSettings = {},
): StopSpotter {
  let listeners: { readonly early: Listener; readonly surer: Listener } | undefined;
  let inForce = '';
  return {
    listen(wordings) {
      const next = wordings.map(normalizeWording);
      if (next.join('\n') === inForce) return;
      inForce = next.join('\n');
      const graph = phoneGraphOf(new WordGraph().wordings(next), pronounce);
      listeners = { early: listener(graph, leastEarlyPerPhone), surer: listener(graph, leastPerPhone) };
    },
    next({ early, phones }) {
      if (listeners === undefined) return undefined;
      const heard = [listeners.early.next(early), listeners.surer.next(phones)];
      const text = heard.find(each => each !== undefined);
      if (text === undefined) return undefined;
      listeners.early.restart();
      listeners.surer.restart();
      return text;
    },
  };
}
