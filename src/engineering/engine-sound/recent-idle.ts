import { longUpToRpm } from './grid.ts';
import { type Hunting, huntingIn, type SpeedAt } from './hunting.ts';

/** So much of an idle is looked at for hunting, s, and so often. */
const IDLE_S = 14;
const LOOKED_AT_S = 2;

/** Keeps the last speeds of a running engine, and looks every other second whether they hunt. */
export class RecentIdle {
  #speeds: SpeedAt[] = [];
  #lookedS = 0;
  #hunting: Hunting | null = null;

  /**
   * Whether the speed of the last seconds hunts, as of the last look.
   * @param toldS the time now, s
   * @param heard a speed that is told now, with the moment it belongs to; of a cranked engine it is left out
   */
  next(toldS: number, heard: SpeedAt | null): Hunting | null {
    if (heard && heard.rpm >= longUpToRpm) this.#speeds.push(heard);
    if (toldS - this.#lookedS >= LOOKED_AT_S) {
      this.#lookedS = toldS;
      this.#speeds = this.#speeds.filter(({ atS }) => atS >= toldS - IDLE_S);
      this.#hunting = huntingIn(this.#speeds);
    }
    return this.#hunting;
  }
}
