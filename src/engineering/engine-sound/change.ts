import { bandsHz } from './streams.ts';

/** How the sound of an engine differs from how it sounded first. */
export interface SoundChange {
  readonly fromHz: number;
  readonly toHz: number;
  /** Louder (or fainter) than in the first minute, beyond what all bands together are. */
  readonly db: number;
}

const FIRST_S = 60;
/** Only speeds as near as this are alike enough to compare. */
const ALIKE = 0.1;
/** How fast what is heard now follows, each look. */
const FOLLOWS = 0.03;
/** Less is not worth showing: a step of one's own in front of the microphone does it. */
const WORTH_DB = 5;
const LEAST_LOOKS = 60;

/**
 * Holds the colour of an engine's sound against its own first minute at about this speed: knocks, leaks and squeals show
 * as a band that has become louder than the others have. It is shown, and nothing is judged by it.
 */
export class SoundOfFirstMinute {
  #fromS: number | null = null;
  #rpm = 0;
  #first: number[] = bandsHz.map(() => 0);
  #looks = 0;
  #now: readonly number[] = [];

  next(atS: number, rpm: number, levelsDb: readonly number[]): void {
    this.#fromS ??= atS;
    if (atS - this.#fromS <= FIRST_S) {
      this.#looks += 1;
      this.#rpm += (rpm - this.#rpm) / this.#looks;
      this.#first = this.#first.map((mean, band) => mean + ((levelsDb[band] ?? mean) - mean) / this.#looks);
    }
    if (Math.abs(rpm / this.#rpm - 1) > ALIKE) return;
    this.#now = levelsDb.map((db, band) => {
      const before = this.#now[band] ?? db;
      return before + FOLLOWS * (db - before);
    });
  }

  /** The band that has changed most; null where none has, or the first minute was too short to say. */
  change(): SoundChange | null {
    if (this.#looks < LEAST_LOOKS) return null;
    const differences = this.#now.map((db, band) => db - (this.#first[band] ?? db));
    const middle = [...differences].sort((a, b) => a - b)[Math.floor(differences.length / 2)] ?? 0;
    const beyond = differences.map(db => db - middle);
    const most = Math.max(...beyond.map(Math.abs));
    if (most < WORTH_DB) return null;
    const band = beyond.findIndex(db => Math.abs(db) === most);
    const [fromHz, toHz] = bandsHz[band] as (typeof bandsHz)[number];
    return { fromHz, toHz, db: beyond[band] as number };
  }
}
