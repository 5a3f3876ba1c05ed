import type { Moment } from './network.ts';
import type { PhoneState } from './phone-graph.ts';
import { blank } from './phones.ts';

/** Words in the order they were said; every order exists once, so that two are the same when they are one. */
class Words {
  readonly before: Words | undefined;
  readonly word: string;
  private readonly after = new Map<string, Words>();

  constructor(before: Words | undefined, word: string) {
    this.before = before;
    this.word = word;
  }

  followedBy(word: string): Words {
    const known = this.after.get(word) ?? new Words(this, word);
    this.after.set(word, known);
    return known;
  }

  get text(): string {
    const start = this.before?.text ?? '';
    return start === '' ? this.word : `${start} ${this.word}`;
  }
}

/** A way through the grammar and its log likelihood, as a whole and of the word in progress. */
interface Path {
  readonly score: number;
  readonly wordScore: number;
  readonly wordPhones: number;
  /** Likelihood per phone of the least likely word that is complete. */
  readonly worst: number;
}

const nowhere: Path = { score: Number.NEGATIVE_INFINITY, wordScore: 0, wordPhones: 0, worst: 0 };

const better = (a: Path, b: Path): Path => (b.score > a.score ? b : a);

const onward = (path: Path, likelihood: number): Path => ({
  ...path,
  score: path.score + likelihood,
  wordScore: path.wordScore + likelihood,
});

const worstWord = ({ worst, wordScore, wordPhones }: Path): number =>
  wordPhones === 0 ? worst : Math.min(worst, wordScore / wordPhones);

/** The likeliest ways to a phone by the same words: while the phone lasts, and when it is over. */
interface Arrival {
  readonly words: Words;
  over: Path;
  lasts: Path;
}

const likeliest = ({ over, lasts }: Arrival): Path => better(over, lasts);

/** What may have been said, and its log likelihood against what the network hears without any grammar: 0 or less. */
export interface Hypothesis {
  readonly text: string;
  readonly score: number;
  /** The same of its least likely word, per phone of it. */
  readonly worstWord: number;
}

export interface SearchOptions {
  /** Ways less likely than the likeliest by this much are given up. */
  readonly beam: number;
  /** Different wordings that are followed up to the same place of the grammar. */
  readonly wordings: number;
  /** Whether what is looked for may begin at any moment, whatever was said before. */
  readonly anywhere: boolean;
}

const start: Path = { score: 0, wordScore: 0, wordPhones: 0, worst: 0 };

/** Follows all ways through a graph of phones, moment by moment, and gives the likeliest. */
export class Search {
  private readonly first: readonly PhoneState[];
  private readonly options: SearchOptions;
  private readonly silence = new Words(undefined, '');
  private arrivals = new Map<PhoneState, Arrival[]>();
  /** Nothing has been said yet. */
  private before = start;

  constructor(first: readonly PhoneState[], options: SearchOptions) {
    this.first = first;
    this.options = options;
  }

  restart(): void {
    this.arrivals = new Map();
    this.before = start;
  }

  next({ phones }: Moment): void {
    const least = this.best() - this.options.beam;
    const earlier = this.arrivals;
    this.arrivals = new Map();
    const likelihood = (output: number) => phones[output] as number;
    for (const [state, arrivals] of earlier) {
      for (const arrival of arrivals) {
        const path = likeliest(arrival);
        if (path.score < least) continue;
        const { words, over, lasts } = arrival;
        this.arrive(state, words, onward(path, likelihood(blank)), onward(lasts, likelihood(state.output)));
        for (const next of state.next) {
          // The same phone twice is only told from one that lasts by a moment between the two.
          this.enter(next, words, next.output === state.output ? over : path, likelihood(next.output));
        }
      }
    }
    if (this.before.score >= least) {
      for (const next of this.first) this.enter(next, this.silence, this.before, likelihood(next.output));
    }
    if (!this.options.anywhere) this.before = onward(this.before, likelihood(blank));
  }

  private enter(state: PhoneState, words: Words, path: Path, likelihood: number): void {
    const { word } = state;
    if (word === undefined) {
      const within = { ...path, wordPhones: path.wordPhones + 1 };
      this.arrive(state, words, nowhere, onward(within, likelihood));
    } else {
      const begun = { score: path.score, wordScore: 0, wordPhones: 1, worst: worstWord(path) };
      this.arrive(state, words.followedBy(word), nowhere, onward(begun, likelihood));
    }
  }

  private arrive(state: PhoneState, words: Words, over: Path, lasts: Path): void {
    const there = this.arrivals.get(state);
    if (there === undefined) {
      this.arrivals.set(state, [{ words, over, lasts }]);
      return;
    }
    const same = there.find(arrival => arrival.words === words);
    if (same !== undefined) {
      same.over = better(same.over, over);
      same.lasts = better(same.lasts, lasts);
      return;
    }
    const arrival = { words, over, lasts };
    if (there.length < this.options.wordings) {
      there.push(arrival);
      return;
    }
    const worst = there.reduce((a, b) => (likeliest(a).score <= likeliest(b).score ? a : b));
    if (likeliest(worst).score < likeliest(arrival).score) there[there.indexOf(worst)] = arrival;
  }

  private best(): number {
    let best = this.before.score;
    for (const arrivals of this.arrivals.values()) {
      for (const { over, lasts } of arrivals) best = Math.max(best, over.score, lasts.score);
    }
    return best;
  }

  /** What may have been said if this is the end of it, the likeliest first. */
  finished(): readonly Hypothesis[] {
    const byWords = new Map<Words, Path>();
    for (const [state, arrivals] of this.arrivals) {
      if (!state.ends) continue;
      for (const arrival of arrivals) {
        byWords.set(arrival.words, better(byWords.get(arrival.words) ?? nowhere, likeliest(arrival)));
      }
    }
    return [...byWords]
      .map(([words, path]) => ({ text: words.text, score: path.score, worstWord: worstWord(path) }))
      .sort((a, b) => b.score - a.score);
  }
}
