import { bandCount } from './streams.ts';

const FRAME_MS = 50;
/** 0.8 s: talk has gaps in it, an engine has none. */
const FRAMES = 16;
const QUIET_SHARE = 0.25;

/** How loud each band is where it is quiet: what goes on all the time, without what comes and goes over it. */
export class LevelMeter {
  readonly #frames: number[][] = Array.from({ length: bandCount }, () => []);
  readonly #sums = new Float64Array(bandCount);
  #filled = 0;

  /** @param powers of each band, for the next millisecond */
  push(powers: Float64Array): void {
    powers.forEach((power, band) => {
      this.#sums[band] = (this.#sums[band] as number) + power;
    });
    if (++this.#filled < FRAME_MS) return;
    this.#filled = 0;
    this.#frames.forEach((frames, band) => {
      frames.push((this.#sums[band] as number) / FRAME_MS);
      if (frames.length > FRAMES) frames.shift();
    });
    this.#sums.fill(0);
  }

  /** dB of full scale, a number for each band. */
  quietDb(): readonly number[] {
    return this.#frames.map(frames => {
      const sorted = [...frames].sort((a, b) => a - b);
      return 10 * Math.log10((sorted[Math.floor(sorted.length * QUIET_SHARE)] ?? 0) + 1e-12);
    });
  }
}
