import { type Claim, Claims } from './claims.ts';
import { Doing, type Happened } from './doing.ts';
import type { Firing } from './firing.ts';
import type { Hunting } from './hunting.ts';
import { Listening, stepS } from './listening.ts';
import { RecentIdle } from './recent-idle.ts';
import { Track } from './track.ts';

/** What is heard of an engine at a moment. */
export interface EngineHeard {
  /** When it was told, s of the sound so far. */
  readonly toldS: number;
  /** The moment that the speed belongs to, s of the sound; never more than a second before. */
  readonly atS: number;
  /** Null is honest silence: it says nothing about whether an engine turns. */
  readonly claim: Claim | null;
  readonly happened: Happened | null;
  /** Whether the speed of the last seconds hunts. */
  readonly hunting: Hunting | null;
  /** Level of what goes on all the time, by band, dB of full scale. */
  readonly levelsDb: readonly number[];
}

/** Hears one engine in sound at 16 kHz: the same in Node and in a browser. */
export class EngineEar {
  readonly #listening: Listening;
  readonly #track = new Track(stepS);
  readonly #claims = new Claims();
  readonly #doing = new Doing();
  readonly #idle = new RecentIdle();

  constructor(firing: Firing) {
    this.#listening = new Listening(firing);
  }

  /** @param samples mono at 16 kHz, -1 to 1, any number of them; calls back every 0.14 s of sound */
  push(samples: Float32Array, onHeard: (heard: EngineHeard) => void): void {
    this.#listening.push(samples, ({ atS: toldS, said, levelsDb }) => {
      const belief = this.#track.next(said);
      this.#listening.isNew = this.#track.isNew;
      const claim = this.#claims.next(toldS, belief);
      const happened = this.#doing.next(toldS, claim, belief?.running ?? 0, levelsDb);
      if (happened === 'stalled') {
        this.#track.forget();
        this.#claims.forget();
      }
      const atS = toldS - (claim ? this.#listening.lagS(claim.rpm) : 0);
      const hunting = this.#idle.next(toldS, claim && { atS, rpm: claim.rpm });
      onHeard({ toldS, atS, claim, happened, hunting, levelsDb });
    });
  }
}
