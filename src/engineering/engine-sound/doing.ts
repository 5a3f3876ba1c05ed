import type { Claim } from './claims.ts';
import { longUpToRpm } from './grid.ts';

/** What was heard to happen. */
export type Happened = 'cranking' | 'fired' | 'running' | 'stalled' | 'lost';

/** A claim may be missing so long before anything is made of it, s. */
const MISSING_S = 0.5;
/** Nothing more is made of it after this: whatever sounds there then is not what was heard. */
const GIVEN_UP_S = 3;
/** An engine that fires was cranked so shortly before. */
const CRANKED_WITHIN_S = 3;
/** A cranked engine has fired once it is so sure that it runs, while its speed still climbs. */
const FIRES_FROM = 0.7;
/** An engine that has stopped is so much quieter than it was: in one band, or in two, dB. */
const QUIETER_DB = { one: 7, two: 4 };
/** How fast the level follows, each look. */
const FOLLOWS = 0.2;

/**
 * Tells from claims and levels what happens: cranking, fired, running (heard for the first time), stalled. A speed that
 * is heard no more means nothing by itself: only with the sound gone too it has stalled, else it is lost in noise.
 */
export class Doing {
  #runs = false;
  #cranks = false;
  #lastClaimS = Number.NEGATIVE_INFINITY;
  #lastCrankS = Number.NEGATIVE_INFINITY;
  #smoothDb: number[] | null = null;
  /** As quiet as it ever ran, which is its idle: coming down to that is no stall. */
  #quietestDb: number[] | null = null;

  /**
   * @param atS when the look was taken
   * @param running how likely it runs by itself, at whatever speed
   */
  next(atS: number, claim: Claim | null, running: number, levelsDb: readonly number[]): Happened | null {
    if (!this.#runs && running >= FIRES_FROM && this.#crankedAt(atS)) return this.#begins(atS, levelsDb);
    if (claim) return this.#heard(atS, claim, levelsDb);
    const missingS = atS - this.#lastClaimS;
    if (this.#cranks && missingS > MISSING_S) this.#cranks = false;
    if (!this.#runs || missingS < MISSING_S) return null;
    if (this.#isQuiet(levelsDb)) return this.#ends('stalled');
    return missingS > GIVEN_UP_S ? this.#ends('lost') : null;
  }

  #heard(atS: number, { rpm }: Claim, levelsDb: readonly number[]): Happened | null {
    this.#lastClaimS = atS;
    if (rpm < longUpToRpm) {
      if (this.#runs) return null;
      this.#lastCrankS = atS;
      if (this.#cranks) return null;
      this.#cranks = true;
      return 'cranking';
    }
    this.#smoothDb = levelsDb.map((db, band) => {
      const before = this.#smoothDb?.[band] ?? db;
      return before + FOLLOWS * (db - before);
    });
    this.#quietestDb = this.#smoothDb.map((db, band) => Math.min(db, this.#quietestDb?.[band] ?? db));
    return this.#runs ? null : this.#begins(atS, levelsDb);
  }

  #crankedAt(atS: number): boolean {
    return atS - this.#lastCrankS <= CRANKED_WITHIN_S;
  }

  #begins(atS: number, levelsDb: readonly number[]): Happened {
    this.#runs = true;
    this.#cranks = false;
    this.#lastClaimS = atS;
    this.#quietestDb = [...levelsDb];
    return this.#crankedAt(atS) ? 'fired' : 'running';
  }

  #ends(how: 'stalled' | 'lost'): Happened {
    this.#runs = false;
    this.#smoothDb = null;
    return how;
  }

  #isQuiet(levelsDb: readonly number[]): boolean {
    const drops = levelsDb.map((db, band) => (this.#quietestDb?.[band] ?? db) - db);
    return (
      drops.some(drop => drop >= QUIETER_DB.one) || drops.filter(drop => drop >= QUIETER_DB.two).length >= 2
    );
  }
}
