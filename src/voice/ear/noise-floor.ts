import { stepMs } from './sound.ts';

/** The floor is the quietest that the last seconds have been: no speaker goes so long without a gap. */
const windowSteps = 3_000 / stepMs;

/** Tracks the noise floor: the lowest smoothed level within the window. */
export class NoiseFloor {
  private readonly recent: number[] = [];
  private smooth: number | undefined;

  /** The level of the next step. */
  update(levelDb: number): void {
    this.smooth = this.smooth === undefined ? levelDb : 0.7 * this.smooth + 0.3 * levelDb;
    this.recent.push(this.smooth);
    if (this.recent.length > windowSteps) this.recent.shift();
  }

  get levelDb(): number {
    return Math.min(...this.recent);
  }
}
