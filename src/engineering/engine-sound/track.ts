import { beginsUpToRpm, gridStep, longUpToRpm, slopes, speeds, steady } from './grid.ts';

/** How a speed may behave from look to look; chosen on synthesized engines (bench/engine-sound, development seeds). */
export interface TrackSettings {
  /** How often in a step a speed comes up from nowhere, is lost, or jumps to another. */
  readonly begins: number;
  readonly ends: number;
  readonly jumps: number;
  /** How often a cranked engine comes up to speed within a step. */
  readonly fires: number;
  /** How often a cranked engine turns at another speed after all. */
  readonly turnsOtherwise: number;
  /** How often its rise goes on as it was. */
  readonly keepsSlope: number;
  /** No single look says more for an engine, or against one, than this. */
  readonly mostFor: number;
  readonly mostAgainst: number;
}

const usualTrack: TrackSettings = {
  begins: 0.00003,
  ends: 0.01,
  jumps: 0.001,
  fires: 0.1,
  turnsOtherwise: 0.004,
  keepsSlope: 0.75,
  mostFor: 4,
  mostAgainst: 2,
};

/** What counts as near: a slow engine is told less sharply, and what lies around is told as its middle. */
const NEAR = { slow: 0.06, fast: 0.025 };

const count = speeds.length;
const states = slopes.length * count;

/** So long after it was heard running it may be heard again at any speed, and it is not cranked. */
const REMEMBERED_S = 30;

/** An engine that fires comes up fast: how often with each slope, against the same for all. */
const rises = slopes.map(slope => (slope > 1 ? 2.5 : slope > 0 ? 1.5 : slope === 0 ? 1 : 0));

const firstFast = speeds.findIndex(rpm => rpm >= longUpToRpm);

const shares = (likely: (rpm: number) => number): Float64Array => {
  const weights = speeds.map(likely);
  const sum = weights.reduce((all, each) => all + each, 0);
  return weights.map(each => each / sum);
};
/** Starters turn a diesel engine as fast as this, seldom slower: common practice, no published source. */
const USUAL_FROM_RPM = 125;
const SELDOM = 0.2;
const mayBegin = shares(rpm => (rpm > beginsUpToRpm ? 0 : rpm < USUAL_FROM_RPM ? SELDOM : 1));
const mayReturn = shares(rpm => (rpm >= longUpToRpm ? 1 : 0));
/** Where it is found once it has fired: on its way up to its idle, or there. */
const mayFire = shares(rpm => (rpm >= longUpToRpm && rpm <= beginsUpToRpm ? 1 : 0));
const mayBeTurned = shares(rpm => (rpm >= longUpToRpm ? 0 : rpm < USUAL_FROM_RPM ? SELDOM : 1));

/** From here on it is taken to be known what is heard. */
export const SURE = 0.9;

/** What is believed after a step. */
export interface Belief {
  /** The likeliest speed, rpm, and how fast it rises, as a share of itself per second. */
  readonly rpm: number;
  readonly slope: number;
  /** That the speed is near it: 0 to 1. */
  readonly confidence: number;
  /** That it runs by itself, at whatever speed: 0 to 1. */
  readonly running: number;
}

/**
 * Follows one speed through time by all that was heard so far (a hidden Markov model, forward only): each state is a
 * speed with its rise, and one more is "no engine is heard".
 */
export class Track {
  #now = new Float64Array(states);
  #next = new Float64Array(states);
  #none = 1;
  #behind = 0;
  #sinceRunningS = Number.POSITIVE_INFINITY;
  readonly #stepS: number;
  readonly #mixed = new Float64Array(states);
  readonly #slopeTo: Float64Array;
  readonly #shift: readonly number[];
  readonly #blur: readonly number[];

  readonly #settings: TrackSettings;

  constructor(stepS: number, settings: TrackSettings = usualTrack) {
    this.#settings = settings;
    this.#stepS = stepS;
    const many = slopes.length;
    this.#slopeTo = new Float64Array(many * many);
    for (let a = 0; a < many; a++) {
      let sum = 0;
      const weight = (b: number) =>
        a === b ? settings.keepsSlope : Math.abs(a - b) === 1 ? 0.1 : b === steady ? 0.03 : 0.01;
      for (let b = 0; b < many; b++) sum += weight(b);
      for (let b = 0; b < many; b++) this.#slopeTo[a * many + b] = weight(b) / sum;
    }
    this.#shift = slopes.map(slope => (slope * stepS) / gridStep);
    // What lies between two slopes is reached from either.
    this.#blur = slopes.map((slope, i) => {
      const gap = Math.max(...[i - 1, i + 1].map(j => Math.abs((slopes[j] ?? slope) - slope)));
      return Math.ceil(((gap / 2) * stepS) / gridStep);
    });
  }

  /** @param said for each slope over all speeds: the logarithm of how much likelier the sound is with that engine than with none */
  next(said: readonly Float64Array[]): Belief | null {
    this.#shiftTo(said);
    this.#mixSlopes();
    this.#move();
    this.#weigh(said);
    const belief = this.#read();
    const running = belief !== null && belief.confidence >= SURE && belief.rpm >= longUpToRpm;
    this.#sinceRunningS = running ? 0 : this.#sinceRunningS + this.#stepS;
    return belief;
  }

  /** None was heard running lately. */
  get isNew(): boolean {
    return this.#sinceRunningS >= REMEMBERED_S;
  }

  /** It has stopped: from now on it would have to be started again. */
  forget(): void {
    this.#now.fill(0);
    this.#none = 1;
    this.#sinceRunningS = Number.POSITIVE_INFINITY;
  }

  /** The best speed counts at most so much, the others as far behind it as they are. */
  #shiftTo(said: readonly Float64Array[]): void {
    let best = 0;
    for (const of of said) for (const each of of) if (each > best) best = each;
    this.#behind = Math.max(0, best - this.#settings.mostFor);
  }

  #mixSlopes(): void {
    const many = slopes.length;
    this.#mixed.fill(0);
    for (let a = 0; a < many; a++)
      for (let b = 0; b < many; b++) {
        const share = this.#slopeTo[a * many + b] as number;
        const [from, to] = [a * count, b * count];
        for (let i = 0; i < count; i++)
          this.#mixed[to + i] = (this.#mixed[to + i] as number) + share * (this.#now[from + i] as number);
      }
  }

  #move(): void {
    const { begins, ends, jumps, fires, turnsOtherwise } = this.#settings;
    let [slow, fast] = [0, 0];
    for (let s = 0; s < states; s++)
      if (s % count < firstFast) slow += this.#mixed[s] as number;
      else fast += this.#mixed[s] as number;
    const fromStanding = begins * this.#none;
    const fired = fires * slow;
    const turned = turnsOtherwise * slow;
    const whereFrom = this.isNew ? mayBegin : mayReturn;
    for (let s = 0; s < states; s++) {
      const i = s % count;
      this.#next[s] =
        (fromStanding * (whereFrom[i] as number) +
          fired * (mayFire[i] as number) * (rises[Math.floor(s / count)] as number) +
          turned * (mayBeTurned[i] as number) +
          jumps * fast * (mayReturn[i] as number)) /
        slopes.length;
    }
    slopes.forEach((_, slope) => {
      const shift = Math.round(this.#shift[slope] as number);
      const blur = this.#blur[slope] as number;
      const sum = (blur + 1) * (blur + 1);
      for (let i = 0; i < count; i++) {
        const share =
          (this.#mixed[slope * count + i] as number) *
          (1 - ends - (i < firstFast ? fires + turnsOtherwise : jumps));
        if (share < 1e-12) continue;
        for (let d = -blur; d <= blur; d++) {
          const to = i + shift + d;
          if (to < 0 || to >= count) continue;
          const at = slope * count + to;
          this.#next[at] = (this.#next[at] as number) + (share * (blur + 1 - Math.abs(d))) / sum;
        }
      }
    });
    this.#none = this.#none * (1 - begins) + (slow + fast) * ends;
  }

  #weigh(said: readonly Float64Array[]): void {
    const { mostAgainst } = this.#settings;
    let sum = this.#none;
    slopes.forEach((_, slope) => {
      const of = said[slope] as Float64Array;
      for (let i = 0; i < count; i++) {
        const at = slope * count + i;
        const counted = Math.max(-mostAgainst, (of[i] as number) - this.#behind);
        const weighed = (this.#next[at] as number) * Math.exp(counted);
        this.#next[at] = weighed;
        sum += weighed;
      }
    });
    for (let s = 0; s < states; s++) this.#next[s] = (this.#next[s] as number) / sum;
    this.#none /= sum;
    [this.#now, this.#next] = [this.#next, this.#now];
  }

  #read(): Belief | null {
    const all = new Float64Array(count);
    for (let s = 0; s < states; s++) all[s % count] = (all[s % count] as number) + (this.#now[s] as number);
    let best = 0;
    for (let i = 1; i < count; i++) if ((all[i] as number) > (all[best] as number)) best = i;
    const near = (speeds[best] as number) < longUpToRpm ? NEAR.slow : NEAR.fast;
    const reach = Math.round(Math.log(1 + near) / gridStep);
    let [sum, mean, slopeMean] = [0, 0, 0];
    for (let i = Math.max(0, best - reach); i <= Math.min(count - 1, best + reach); i++) {
      sum += all[i] as number;
      mean += i * (all[i] as number);
      slopes.forEach((slope, s) => {
        slopeMean += slope * (this.#now[s * count + i] as number);
      });
    }
    if (sum <= 0) return null;
    return {
      rpm: (speeds[0] as number) * Math.exp((mean / sum) * gridStep),
      slope: slopeMean / sum,
      confidence: Math.min(1, sum),
      running: Math.min(
        1,
        all.subarray(firstFast).reduce((total, each) => total + each, 0),
      ),
    };
  }
}
