import { Bank, bankBands, bankHop, bankRateHz } from './bank.ts';
import { Evidence, type EvidenceShape } from './evidence.ts';
import { type Firing, firingHz } from './firing.ts';
import { longUpToRpm, slopes, speeds } from './grid.ts';
import { LevelMeter } from './levels.ts';
import { Ring } from './ring.ts';
import { Streams, streamCount, streamRateHz } from './streams.ts';

/** A look at the sound is taken so often, s. */
export const stepS = 0.14;
const STEP = Math.round(stepS * streamRateHz);

const SLOW_DECIMATION = streamRateHz / bankRateHz;
/** The wave, and each band of the bank. */
const slowCount = 1 + bankBands;

const short: EvidenceShape = {
  length: 640,
  size: 1024,
  rateHz: streamRateHz,
  bins: 450,
  reach: { share: 0.6, least: 6, most: 28 },
  fromRpm: longUpToRpm,
  toRpm: Number.POSITIVE_INFINITY,
  upToHz: 400,
  harmonics: 10,
  unevenFromHz: 3.5,
  slopes,
  waveCounts: 2,
  usable: null,
  firstLeads: false,
  streams: streamCount,
  expected: [
    { there: 0.92, above: 6 },
    { there: 0.6, above: 5 },
    { there: 0.4, above: 4 },
    { there: 0.2, above: 3 },
  ],
};

/** A stretch for cranking is as long as so many compressions at this speed, within bounds. */
const LONG_FOR = { rpm: 150, firings: 12, leastS: 1, mostS: 1.86 };

function longFor(firing: Firing): EvidenceShape {
  const { rpm, firings, leastS, mostS } = LONG_FOR;
  const rateHz = streamRateHz / SLOW_DECIMATION;
  const lengthS = Math.min(mostS, Math.max(leastS, firings / firingHz(firing, rpm)));
  return {
    length: Math.round(lengthS * rateHz),
    size: 512,
    rateHz,
    bins: 220,
    reach: { share: 1, least: 12, most: 40 },
    fromRpm: 0,
    toRpm: longUpToRpm,
    upToHz: 50,
    harmonics: 5,
    unevenFromHz: Number.POSITIVE_INFINITY,
    slopes: [0],
    waveCounts: 1,
    usable: { share: 0.6, most: 4 },
    firstLeads: true,
    streams: slowCount,
    expected: [
      { there: 0.9, above: 8 },
      { there: 0.2, above: 2.5 },
      { there: 0.15, above: 2 },
      { there: 0.2, above: 3 },
    ],
  };
}

/** Looks overlap and streams are alike: what they say together is less than its sum. */
const COUNTS = { short: 0.09, long: 0.5 };

/** Said where a speed is not looked for, and of all of them where there is no sound at all. */
const NOTHING = -1e3;
const SILENT_DB = -92;

/** What one look at the sound says. */
interface Hearsay {
  /** When it was taken, s of the sound. */
  readonly atS: number;
  /**
   * For each slope over all speeds: the logarithm of how much likelier the sound is with an engine at that speed than
   * without. Used again for the next look.
   */
  readonly said: readonly Float64Array[];
  /** Level of each band in the quiet parts of the last stretch, dB of full scale. */
  readonly levelsDb: readonly number[];
}

/** Takes sound at 16 kHz and says every 0.14 s what it tells of the speed of an engine that fires so. */
export class Listening {
  readonly #streams = new Streams();
  readonly #levels = new LevelMeter();
  readonly #fast = Array.from({ length: streamCount }, () => new Ring(short.length));
  readonly #slow: readonly Ring[];
  readonly #bank = new Bank();
  #waveSum = 0;
  readonly #short: Evidence;
  readonly #long: Evidence;
  readonly #shortIn = Array.from({ length: streamCount }, () => new Float64Array(short.length));
  readonly #longIn: readonly Float64Array[];
  readonly #said = slopes.map(() => new Float64Array(speeds.length));
  /** Samples taken, and milliseconds of them that were listened to. */
  #taken = 0;
  #samples = 0;

  /** How old a speed is when it is told, s: the middle of the stretch that it was heard in. */
  readonly lagS: (rpm: number) => number;

  constructor(firing: Firing) {
    const long = longFor(firing);
    this.lagS = rpm => {
      const { length, rateHz } = rpm < longUpToRpm ? long : short;
      return length / rateHz / 2;
    };
    this.#short = new Evidence(firing, short);
    this.#long = new Evidence(firing, long);
    this.#slow = Array.from({ length: slowCount }, () => new Ring(long.length));
    this.#longIn = Array.from({ length: slowCount }, () => new Float64Array(long.length));
  }

  /** Whether no engine was heard running lately. */
  set isNew(isNew: boolean) {
    this.#short.isNew = isNew;
  }

  /** @param samples mono at 16 kHz, any number of them */
  push(samples: Float32Array, onLook: (look: Hearsay) => void): void {
    for (let at = 0; at < samples.length; ) {
      const part = samples.subarray(at, at + bankHop - (this.#taken % bankHop));
      this.#stream(part, onLook);
      this.#bank.push(part, values => {
        for (let band = 0; band < bankBands; band++)
          (this.#slow[1 + band] as Ring).push(values[band] as number);
      });
      this.#taken += part.length;
      at += part.length;
    }
  }

  #stream(samples: Float32Array, onLook: (look: Hearsay) => void): void {
    this.#streams.push(samples, (values, powers) => {
      this.#levels.push(powers);
      this.#samples++;
      for (let s = 0; s < streamCount; s++) (this.#fast[s] as Ring).push(values[s] as number);
      this.#waveSum += values[0] as number;
      if (this.#samples % SLOW_DECIMATION === 0) {
        (this.#slow[0] as Ring).push(this.#waveSum);
        this.#waveSum = 0;
      }
      if (this.#samples % STEP === 0) onLook(this.#look());
    });
  }

  #look(): Hearsay {
    const levelsDb = this.#levels.quietDb();
    for (const said of this.#said) said.fill(NOTHING);
    if (levelsDb.every(db => db < SILENT_DB))
      return { atS: this.#samples / streamRateHz, said: this.#said, levelsDb };
    this.#short.weigh(
      this.#fast.map((ring, s) => ring.read(this.#shortIn[s] as Float64Array)),
      COUNTS.short,
      this.#said,
    );
    this.#long.weigh(
      this.#slow.map((ring, s) => ring.read(this.#longIn[s] as Float64Array)),
      COUNTS.long,
      this.#said,
    );
    return { atS: this.#samples / streamRateHz, said: this.#said, levelsDb };
  }
}
