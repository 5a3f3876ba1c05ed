import { type Claim, Claims } from './claims.ts';
import { Doing, type Happened } from './doing.ts';
import type { Firing } from './firing.ts';
import { longUpToRpm } from './grid.ts';
import { type Hunting, huntingIn, type SpeedAt } from './hunting.ts';
import { Listening, stepS } from './listening.ts';
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

/** So much of an idle is looked at for hunting, s, and so often. */
const IDLE_S = 14;
const LOOKED_AT_S = 2;

/** Hears one engine in sound at 16 kHz: the same in Node and in a browser. */
export class EngineEar {
  readonly #listening: Listening;
  readonly #track = new Track(stepS);
  readonly #claims = new Claims();
  readonly #doing = new Doing();
  #speeds: SpeedAt[] = [];
  #lookedS = 0;
  #hunting: Hunting | null = null;

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
      if (claim && claim.rpm >= longUpToRpm) this.#speeds.push({ atS, rpm: claim.rpm });
      while ((this.#speeds[0]?.atS ?? toldS) < toldS - IDLE_S) this.#speeds.shift();
      if (toldS - this.#lookedS >= LOOKED_AT_S) {
        this.#lookedS = toldS;
        this.#hunting = this.hunting();
      }
      onHeard({ toldS, atS, claim, happened, hunting: this.#hunting, levelsDb });
    });
  }

  /** Whether the speed of the last seconds hunts. */
  hunting(): Hunting | null {
    return huntingIn(this.#speeds);
  }
}
