import { cycleHz, type Firing, linesOf } from './firing.ts';
import { slopes, speeds } from './grid.ts';
import { Spectra, type SpectrumShape } from './spectra.ts';

/** Kinds of lines, by how sure it is that an engine at this speed shows them. */
const FIRST = 0;
const SECOND = 1;
const FURTHER = 2;
const UNEVEN = 3;
const KINDS = 4;

/** What a stream says beyond the most that counts in full, counts so much: by it speeds that are near one another are told apart. */
const BEYOND = 0.15;

/**
 * How often a line is there, and how far it then stands above the noise around it (power). Chosen on synthesized engines
 * (bench/engine-sound, development seeds).
 */
export interface ExpectedLine {
  readonly there: number;
  readonly above: number;
}

/** Powers are looked up by their logarithm. Loud ones hardly count more: one loud line is no engine. */
const LEAST_LOG = -3;
const MOST_LOG = Math.log(2_000);
const LOUD = 12;
const STEPS = 40;
/**
 * Where an engine is new, one line never says more than this many times what the others say together: a tone, as of a fan, is
 * no engine. Of one that is followed to higher speeds few lines are left.
 */
const ALONE = 2;
const places = Math.ceil((MOST_LOG - LEAST_LOG) * STEPS) + 1;

/**
 * What a power says for a line against none: the logarithm of the likelihood ratio of two exponential distributions, of
 * which the line is one only as often as it is there (closed form).
 */
const tableOf = ({ there, above }: ExpectedLine) =>
  Float64Array.from({ length: places }, (_, i) => {
    const whole = Math.exp(LEAST_LOG + i / STEPS);
    const power = Math.min(whole, LOUD) + Math.log(Math.max(1, whole / LOUD));
    return Math.log(1 - there + (there / (1 + above)) * Math.exp((power * above) / (1 + above)));
  });

export interface EvidenceShape extends SpectrumShape {
  /** Speeds that this stretch is long enough for, rpm. */
  readonly fromRpm: number;
  readonly toRpm: number;
  /** Highest frequency at which a line is looked for; the first of the firings may lie higher. */
  readonly upToHz: number;
  /** Highest multiple of the firing frequency. */
  readonly harmonics: number;
  /** Uneven lines are looked for where they lie at least so far apart. */
  readonly unevenFromHz: number;
  readonly slopes: readonly number[];
  /** As how many bands the wave counts: it shows lines where loudness does not beat, as inside a cab. */
  readonly waveCounts: number;
  /** How often a stream tells anything of an engine that is there, and the most that one of them says; null: all of them do. */
  readonly usable: { readonly share: number; readonly most: number } | null;
  /** Further lines never say more than the first: of a turned engine it is the loudest. */
  readonly firstLeads: boolean;
  /** How many streams there are, the wave first. */
  readonly streams: number;
  /** Of the first line, the second, further ones, and what only uneven cylinders show. */
  readonly expected: readonly [ExpectedLine, ExpectedLine, ExpectedLine, ExpectedLine];
}

/** For each speed and slope: what the sound of a stretch says for an engine at this speed, against none. */
export class Evidence {
  /** Index of the first speed, and behind the last. */
  readonly from: number;
  readonly to: number;
  /** No engine was heard running lately. */
  isNew = true;
  readonly #spectra: Spectra;
  readonly #places: readonly (Float64Array | null)[];
  readonly #powers: readonly Float64Array[];
  readonly #said: readonly Float64Array[];
  readonly #starts: Int32Array;
  readonly #bins: Int32Array;
  readonly #shares: Float64Array;
  readonly #kinds: Uint8Array;
  readonly #waveCounts: number;
  readonly #tables: readonly Float64Array[];
  readonly #usable: EvidenceShape['usable'];
  readonly #firstLeads: boolean;
  readonly #ofStream = new Float64Array(speeds.length);

  constructor(firing: Firing, shape: EvidenceShape) {
    this.#waveCounts = shape.waveCounts;
    this.#tables = shape.expected.map(tableOf);
    this.#usable = shape.usable;
    this.#firstLeads = shape.firstLeads;
    this.#spectra = new Spectra(shape);
    this.#places = slopes.map(slope => (shape.slopes.includes(slope) ? this.#spectra.places(slope) : null));
    const even = shape.streams + (shape.streams % 2);
    this.#powers = Array.from({ length: even }, () => new Float64Array(shape.bins));
    this.#said = Array.from({ length: KINDS }, () => new Float64Array(shape.bins));
    this.from = speeds.findIndex(rpm => rpm >= shape.fromRpm);
    const beyond = speeds.findIndex(rpm => rpm >= shape.toRpm);
    this.to = beyond < 0 ? speeds.length : beyond;
    const lines = linesOf(firing);
    const [starts, bins, shares, kinds]: [number[], number[], number[], number[]] = [[], [], [], []];
    for (let i = this.from; i < this.to; i++) {
      starts.push(bins.length);
      const f0 = cycleHz(firing, speeds[i] as number);
      for (const { order, harmonic } of lines) {
        const hz = order * f0;
        const bin = (hz * shape.size) / shape.rateHz;
        if (bin >= shape.bins - 1 || (hz > shape.upToHz && harmonic !== 1)) continue;
        if (
          harmonic === null
            ? f0 < shape.unevenFromHz || order > 3 * firing.cylinders
            : harmonic > shape.harmonics
        )
          continue;
        bins.push(Math.floor(bin));
        shares.push(bin - Math.floor(bin));
        kinds.push(harmonic === null ? UNEVEN : harmonic === 1 ? FIRST : harmonic === 2 ? SECOND : FURTHER);
      }
    }
    starts.push(bins.length);
    this.#starts = Int32Array.from(starts);
    this.#bins = Int32Array.from(bins);
    this.#shares = Float64Array.from(shares);
    this.#kinds = Uint8Array.from(kinds);
  }

  get length(): number {
    return this.#spectra.shape.length;
  }

  /**
   * @param streams the last `length` samples of each stream
   * @param counts what all lines and streams together count, as a share of their sum
   * @param found for each slope an array over all speeds, written from `from` to `to`
   */
  weigh(streams: readonly Float64Array[], counts: number, found: readonly Float64Array[]): void {
    this.#places.forEach((places, slope) => {
      if (!places) return;
      for (let s = 0; s < streams.length; s += 2) {
        const one = streams[s] as Float64Array;
        this.#spectra.pair(one, streams[s + 1] ?? one, places, [
          this.#powers[s] as Float64Array,
          this.#powers[s + 1] as Float64Array,
        ]);
      }
      const into = found[slope] as Float64Array;
      if (this.#usable === null) {
        this.#hear(0, streams.length);
        this.#comb(into, says => counts * says);
      } else {
        into.fill(0, this.from, this.to);
        for (let s = 0; s < streams.length; s++) {
          this.#hear(s, s + 1);
          this.#comb(this.#ofStream, says => says);
          for (let i = this.from; i < this.to; i++)
            into[i] = (into[i] as number) + counts * this.#mixed(this.#ofStream[i] as number);
        }
      }
    });
  }

  /** What a stream says that may tell nothing at all, drowned by something else. */
  #mixed(says: number): number {
    const { share, most } = this.#usable ?? { share: 1, most: 0 };
    const counted = Math.min(most, says) + BEYOND * Math.max(0, says - most);
    return Math.log(1 - share + share * Math.exp(counted));
  }

  #hear(from: number, to: number): void {
    for (let kind = 0; kind < KINDS; kind++) {
      const said = this.#said[kind] as Float64Array;
      said.fill(0);
      for (let s = from; s < to; s++) {
        // Of the wave itself a high-pass may have taken the first line.
        const table = this.#tables[s === 0 && kind === FIRST ? SECOND : kind] as Float64Array;
        const weight = s === 0 ? this.#waveCounts : 1;
        const powers = this.#powers[s] as Float64Array;
        for (let k = 1; k < said.length; k++) {
          const place = Math.max(0, Math.min(places - 1, (((powers[k] as number) - LEAST_LOG) * STEPS) | 0));
          said[k] = (said[k] as number) + weight * (table[place] as number);
        }
      }
    }
  }

  #comb(found: Float64Array, asCounted: (says: number) => number): void {
    const starts = this.#starts;
    for (let i = this.from; i < this.to; i++) {
      let [strong, best, first, uneven] = [0, 0, 0, 0];
      const end = starts[i - this.from + 1] as number;
      for (let line = starts[i - this.from] as number; line < end; line++) {
        const kind = this.#kinds[line] as number;
        const said = this.#said[kind] as Float64Array;
        const bin = this.#bins[line] as number;
        const share = this.#shares[line] as number;
        const says = (1 - share) * (said[bin] as number) + share * (said[bin + 1] as number);
        if (kind === UNEVEN) {
          uneven += says;
          continue;
        }
        strong += says;
        if (kind === FIRST) first += says;
        if (says > best) best = says;
      }
      if (this.#firstLeads) strong = Math.min(strong, first + Math.max(0, first));
      else if (this.isNew)
        strong = Math.min(strong, ALONE * Math.max(0, strong - best + Math.max(0, uneven)));
      // What cylinders do differently never says more than what they do together: else any slower engine would do.
      found[i] = asCounted(strong + Math.min(uneven, Math.max(0, strong)));
    }
  }
}
