import type { PhoneGraph } from './phone-graph.ts';
import { blank } from './phones.ts';
import { noTrace, Traces } from './traces.ts';

/** A word of a hypothesis. */
export interface SpokenWord {
  readonly word: string;
  readonly phones: number;
  /** Moment in which it begins, counted from the first of the search. */
  readonly from: number;
  /** Log likelihood against what is heard without looking for anything: 0 or less. */
  readonly score: number;
}

/** A wording that may have been said, and what it takes to believe it. All scores are natural logarithms. */
export interface Hypothesis {
  readonly text: string;
  readonly words: readonly SpokenWord[];
  /** Of all that was heard, the talk around the wording with it. */
  readonly score: number;
  /** The moment after its last. */
  readonly to: number;
  readonly mayGoOn: boolean;
}

export interface SearchSettings {
  /** Ways less likely than the likeliest by this much are given up. */
  readonly beam: number;
  /** What a moment of other talk costs, before the wording and after it; nothing where it may stand anywhere. */
  readonly talkCost: number;
}

/** Ways of different words that are followed side by side through the same state. */
const ways = 4;
/** Wordings that are followed through talk after them. */
const endings = 8;
const never = Number.NEGATIVE_INFINITY;
/** So many traces, and those that no way needs any more are forgotten. */
const mostTraces = 1 << 16;

/**
 * For each state the likeliest ways of different words, best first: to its phone while it lasts, and when it is over. A
 * way is a score and a trace; both lists have `2 * ways` places a state, of which unused ones score `never`.
 */
class Front {
  readonly scores: Float64Array;
  readonly traces: Int32Array;
  readonly active: Int32Array;
  activeCount = 0;
  private readonly isActive: Uint8Array;

  constructor(stateCount: number) {
    this.scores = new Float64Array(stateCount * 2 * ways).fill(never);
    this.traces = new Int32Array(stateCount * 2 * ways).fill(noTrace);
    this.active = new Int32Array(stateCount);
    this.isActive = new Uint8Array(stateCount);
  }

  clear(): void {
    for (let i = 0; i < this.activeCount; i++) {
      const state = this.active[i] as number;
      this.isActive[state] = 0;
      this.scores.fill(never, state * 2 * ways, (state + 1) * 2 * ways);
      this.traces.fill(noTrace, state * 2 * ways, (state + 1) * 2 * ways);
    }
    this.activeCount = 0;
  }

  activate(state: number): void {
    if (this.isActive[state] === 1) return;
    this.isActive[state] = 1;
    this.active[this.activeCount++] = state;
  }
}

/** A wording that is over, while other talk goes on. */
interface Ending {
  readonly trace: number;
  /** When it was over. */
  readonly scoreThen: number;
  readonly to: number;
  readonly mayGoOn: boolean;
  score: number;
}

/**
 * Follows all ways through a graph, moment by moment: the likeliest alignment by connectionist temporal classification
 * (Graves et al., ICML 2006), each phone for one moment or more, blanks between them where there are any, and one at
 * least between two equal phones. A wording may begin at any moment; what is heard before and after it is silence or
 * other talk.
 */
export class Search {
  private readonly graph: PhoneGraph;
  private readonly settings: SearchSettings;
  private readonly traces = new Traces();
  private now: Front;
  private coming: Front;
  private frame = 0;
  /** Score of silence and other talk alone, up to now. */
  private talk = 0;
  private likeliest = 0;
  private likeliestUnfinished = never;
  private likeliestBetweenWords = never;
  private over: Ending[] = [];

  constructor(graph: PhoneGraph, settings: SearchSettings) {
    this.graph = graph;
    this.settings = settings;
    this.now = new Front(graph.stateCount);
    this.coming = new Front(graph.stateCount);
  }

  /** Forgets everything that was heard. */
  restart(): void {
    this.now.clear();
    this.coming.clear();
    this.traces.clear();
    this.frame = 0;
    this.talk = 0;
    this.likeliest = 0;
    this.likeliestUnfinished = never;
    this.likeliestBetweenWords = never;
    this.over = [];
  }

  /** @param phones natural logarithms of the probability of blank and each phone, in this moment */
  next(phones: Float32Array): void {
    let best = never;
    for (const each of phones) if (each > best) best = each;
    const blankScore = (phones[blank] as number) - best;
    const talkScore = Math.max(blankScore, -this.settings.talkCost);
    this.endAll(talkScore);
    this.advance(phones, best, blankScore);
    this.talk += talkScore;
    this.frame += 1;
    this.likeliest = Math.max(this.likeliest, this.talk, this.over[0]?.score ?? never);
    if (this.traces.size > mostTraces) this.forget();
  }

  private advance(phones: Float32Array, best: number, blankScore: number): void {
    const { graph, now, coming } = this;
    const { output, nextFrom, nextTo, next } = graph;
    const least = this.likeliest - this.settings.beam;
    this.likeliest = never;
    this.likeliestUnfinished = never;
    this.likeliestBetweenWords = never;
    for (let i = 0; i < now.activeCount; i++) {
      const state = now.active[i] as number;
      const phone = output[state] as number;
      const stay = (phones[phone] as number) - best;
      const from = nextFrom[state] as number;
      const to = nextTo[state] as number;
      const base = state * 2 * ways;
      for (let w = 0; w < 2 * ways; w++) {
        const score = now.scores[base + w] as number;
        if (!(score >= least)) continue;
        const trace = now.traces[base + w] as number;
        const lasts = w < ways;
        if (lasts) this.arrive(state, 0, score + stay, trace);
        this.arrive(state, ways, score + blankScore, trace);
        for (let n = from; n < to; n++) {
          const other = next[n] as number;
          const entered = output[other] as number;
          if (lasts && entered === phone && !this.flowsInto(other)) continue;
          this.enter(other, score, (phones[entered] as number) - best, trace);
        }
      }
    }
    for (const state of graph.first) {
      this.enter(state, this.talk, (phones[output[state] as number] as number) - best, noTrace);
    }
    now.clear();
    this.now = coming;
    this.coming = now;
  }

  /**
   * The same phone twice is only told from one that lasts by a blank between the two; but where one word ends with what
   * the next begins with, people say it once ("eight two", "six seven"). A word that is nothing else has to be told.
   */
  private flowsInto(state: number): boolean {
    return (this.graph.wordBegun[state] as number) >= 0 && (this.graph.wordLength[state] as number) > 1;
  }

  private enter(state: number, scoreBefore: number, phoneScore: number, trace: number): void {
    const { coming, traces, graph } = this;
    const score = scoreBefore + phoneScore;
    const word = graph.wordBegun[state] as number;
    if (word < 0) {
      this.arrive(state, 0, score, trace);
      return;
    }
    const base = state * 2 * ways;
    const place = this.placeFor(base, score, traces.hashWith(trace, word));
    if (place < 0) return;
    coming.activate(state);
    coming.scores[place] = score;
    coming.traces[place] = traces.add(trace, state, word, this.frame, scoreBefore);
    this.noteScore(state, score);
  }

  private arrive(state: number, kind: number, score: number, trace: number): void {
    const { coming, traces } = this;
    const place = this.placeFor(state * 2 * ways + kind, score, traces.hashOf(trace));
    if (place < 0) return;
    coming.activate(state);
    coming.scores[place] = score;
    coming.traces[place] = trace;
    this.noteScore(state, score);
  }

  private noteScore(state: number, score: number): void {
    if (score > this.likeliest) this.likeliest = score;
    if (this.graph.mayEnd[state] === 1) return;
    if (score > this.likeliestUnfinished) this.likeliestUnfinished = score;
    if (this.graph.wordOver[state] === 1 && score > this.likeliestBetweenWords)
      this.likeliestBetweenWords = score;
  }

  /**
   * Makes room for a way among those of a state, which stay in order and different in their words.
   * @returns the place, or -1 where the way is not among the likeliest
   */
  private placeFor(base: number, score: number, hash: number): number {
    const { scores, traces } = this.coming;
    const last = base + ways - 1;
    if (!(score > (scores[last] as number))) return -1;
    let gap = last;
    for (let at = base; at < last; at++) {
      if (scores[at] === never) {
        gap = at;
        break;
      }
      if (this.traces.hashOf(traces[at] as number) === hash) {
        if (!(score > (scores[at] as number))) return -1;
        gap = at;
        break;
      }
    }
    while (gap > base && (scores[gap - 1] as number) < score) {
      scores[gap] = scores[gap - 1] as number;
      traces[gap] = traces[gap - 1] as number;
      gap -= 1;
    }
    return gap;
  }

  /** What was over already goes on in other talk, and so does what may just have been said. */
  private endAll(talkScore: number): void {
    const { traces } = this;
    const least = this.likeliest - this.settings.beam;
    const byWords = new Map<number, Ending>();
    const note = (ending: Ending) => {
      const hash = traces.hashOf(ending.trace);
      const known = byWords.get(hash);
      if (ending.score >= least && (known === undefined || ending.score > known.score))
        byWords.set(hash, ending);
    };
    for (const ending of this.over) note(ending);
    for (const ending of this.justEnded()) note(ending);
    this.over = [...byWords.values()].sort((a, b) => b.score - a.score).slice(0, endings);
    for (const ending of this.over) ending.score += talkScore;
  }

  private endingsIn(state: number): Ending[] {
    const { now, graph } = this;
    const found: Ending[] = [];
    const base = state * 2 * ways;
    for (let w = 0; w < 2 * ways; w++) {
      const score = now.scores[base + w] as number;
      if (score === never) continue;
      const trace = now.traces[base + w] as number;
      found.push({ trace, scoreThen: score, to: this.frame, mayGoOn: graph.mayGoOn[state] === 1, score });
    }
    return found;
  }

  private justEnded(): readonly Ending[] {
    const { now, graph } = this;
    const found: Ending[] = [];
    for (let i = 0; i < now.activeCount; i++) {
      const state = now.active[i] as number;
      if (graph.mayEnd[state] === 1) found.push(...this.endingsIn(state));
    }
    return found;
  }

  /** The wordings that may have been said with the last moment, in no order. */
  endingNow(): readonly Hypothesis[] {
    return this.justEnded().map(ending => this.hypothesis(ending));
  }

  /** The likeliest wordings that may have been said up to now, different in their words, the likeliest first. */
  hypotheses(): readonly Hypothesis[] {
    const seen = new Set<number>();
    return [...this.over, ...this.justEnded()]
      .sort((a, b) => b.score - a.score)
      .filter(({ trace }) => {
        const hash = this.traces.hashOf(trace);
        return !seen.has(hash) && seen.add(hash);
      })
      .slice(0, endings)
      .map(ending => this.hypothesis(ending));
  }

  private hypothesis({ trace, scoreThen, score, to, mayGoOn }: Ending): Hypothesis {
    const { graph } = this;
    const marks = this.traces.upTo(trace);
    const words = marks.map(
      ({ state, frame, score: before }, i): SpokenWord => ({
        word: graph.words[graph.wordBegun[state] as number] ?? '',
        phones: graph.wordLength[state] as number,
        from: frame,
        score: (marks[i + 1]?.score ?? scoreThen) - before,
      }),
    );
    return { text: words.map(({ word }) => word).join(' '), words, score, to, mayGoOn };
  }

  /** Log likelihood of the likeliest way that is in the middle of something. */
  get unfinishedScore(): number {
    return this.likeliestUnfinished;
  }

  /** The same, between two words: nobody pauses within one. */
  get betweenWordsScore(): number {
    return this.likeliestBetweenWords;
  }

  /** Keeps a search that is never begun anew from growing. */
  private forget(): void {
    const { now, over } = this;
    const live = new Int32Array(now.traces.length + over.length);
    live.set(now.traces);
    over.forEach(({ trace }, i) => {
      live[now.traces.length + i] = trace;
    });
    this.traces.keepOnly(live);
    now.traces.set(live.subarray(0, now.traces.length));
    this.over = over.map((ending, i) => ({ ...ending, trace: live[now.traces.length + i] as number }));
  }
}
