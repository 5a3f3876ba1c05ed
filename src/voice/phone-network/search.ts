import type { Moment } from './network.ts';
import type { PhoneState } from './phone-graph.ts';
import { blank } from './phones.ts';

/** A way to a phone and its log likelihood, as a whole and of the word in progress. */
interface Path {
  readonly score: number;
  readonly wordScore: number;
  readonly wordPhones: number;
  /** Likelihood per phone of the least likely word that is complete. */
  readonly worst: number;
}

const start: Path = { score: 0, wordScore: 0, wordPhones: 0, worst: 0 };
const nowhere: Path = { ...start, score: Number.NEGATIVE_INFINITY };

const better = (a: Path, b: Path): Path => (b.score > a.score ? b : a);

const onward = (path: Path, likelihood: number): Path => ({
  ...path,
  score: path.score + likelihood,
  wordScore: path.wordScore + likelihood,
});

const worstWord = ({ worst, wordScore, wordPhones }: Path): number =>
  wordPhones === 0 ? worst : Math.min(worst, wordScore / wordPhones);

/** The likeliest ways to a phone: while it lasts, and when it is over. */
interface Arrival {
  readonly over: Path;
  readonly lasts: Path;
}

/** A wording that may just have been said. */
export interface Hypothesis {
  readonly wording: string;
  /** Log likelihood against what the network hears without looking for anything: 0 or less. */
  readonly score: number;
  /** The same of its least likely word, per phone of it. */
  readonly worstWord: number;
}

/** Ways less likely than the likeliest by this much are given up. */
const beam = 30;

/** Follows all ways through the phones of wordings, moment by moment; each may begin at any moment. */
export class Search {
  private readonly first: readonly PhoneState[];
  private arrivals = new Map<PhoneState, Arrival>();

  constructor(first: readonly PhoneState[]) {
    this.first = first;
  }

  restart(): void {
    this.arrivals = new Map();
  }

  next({ phones }: Moment): void {
    const likelihood = (output: number) => phones[output] as number;
    const earlier = this.arrivals;
    this.arrivals = new Map();
    for (const [state, { over, lasts }] of earlier) {
      const path = better(over, lasts);
      if (path.score < -beam) continue;
      this.arrive(state, onward(path, likelihood(blank)), onward(lasts, likelihood(state.output)));
      for (const next of state.next) {
        // The same phone twice is only told from one that lasts by a moment between the two.
        this.enter(next, next.output === state.output ? over : path, likelihood(next.output));
      }
    }
    for (const next of this.first) this.enter(next, start, likelihood(next.output));
  }

  private enter(state: PhoneState, path: Path, likelihood: number): void {
    const entered = state.beginsWord
      ? { score: path.score, wordScore: 0, wordPhones: 1, worst: worstWord(path) }
      : { ...path, wordPhones: path.wordPhones + 1 };
    this.arrive(state, nowhere, onward(entered, likelihood));
  }

  private arrive(state: PhoneState, over: Path, lasts: Path): void {
    const there = this.arrivals.get(state);
    this.arrivals.set(
      state,
      there === undefined
        ? { over, lasts }
        : { over: better(there.over, over), lasts: better(there.lasts, lasts) },
    );
  }

  /** The likeliest wording that may end now. */
  best(): Hypothesis | undefined {
    let best: Hypothesis | undefined;
    for (const [{ ends: wording }, { over, lasts }] of this.arrivals) {
      const path = better(over, lasts);
      if (wording === undefined || (best !== undefined && path.score <= best.score)) continue;
      best = { wording, score: path.score, worstWord: worstWord(path) };
    }
    return best;
  }
}
