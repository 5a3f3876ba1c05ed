/** How an engine fires: what its sound repeats by. */
export interface Firing {
  /** 1 to 24. */
  readonly cylinders: number;
  /** A cycle takes as many strokes; a crankshaft turns once in two of them. */
  readonly strokes: 2 | 4;
  /** Crank angle of each firing within a cycle, degrees from the first, where they are not evenly spread. */
  readonly unevenDeg?: readonly number[] | undefined;
}

/** Crank angle of a whole cycle, degrees. */
export const cycleDeg = ({ strokes }: Pick<Firing, 'strokes'>): number => strokes * 180;

/** Turns of the crankshaft in a cycle. */
const turnsPerCycle = ({ strokes }: Firing): number => strokes / 2;

/** Crank angles of all firings of a cycle, degrees, rising from 0. */
export const firingAnglesDeg = (firing: Firing): readonly number[] =>
  firing.unevenDeg ??
  Array.from({ length: firing.cylinders }, (_, i) => (cycleDeg(firing) * i) / firing.cylinders);

/** Cycles in a second at a speed: the lowest frequency that a steadily running engine has in it. */
export const cycleHz = (firing: Firing, rpm: number): number => rpm / 60 / turnsPerCycle(firing);

/** Firings in a second at a speed. */
export const firingHz = (firing: Firing, rpm: number): number => cycleHz(firing, rpm) * firing.cylinders;

/** Beyond this many firings a cycle nothing is looked for. */
const FURTHEST_HARMONIC = 10;
/** A multiple of the cycle that at least this share of all firings agrees on carries their sum. */
const CARRIES_FROM = 0.5;

/** A multiple of the cycle frequency. */
interface Line {
  readonly order: number;
  /** Firings add up in it (as which harmonic of them); in the others only what one cylinder does otherwise shows. */
  readonly harmonic: number | null;
}

/**
 * The multiples of the cycle frequency in which an engine may be heard. Those that the firings agree on are strong: all
 * multiples of the cylinder count where it fires evenly, and what the sum of its pulses leaves where it does not
 * (the Fourier series of equal pulses at the firing angles, closed form).
 */
export function linesOf(firing: Firing): readonly Line[] {
  const angles = firingAnglesDeg(firing).map(deg => (2 * Math.PI * deg) / cycleDeg(firing));
  const share = (order: number) =>
    Math.hypot(
      angles.reduce((sum, angle) => sum + Math.cos(order * angle), 0),
      angles.reduce((sum, angle) => sum + Math.sin(order * angle), 0),
    ) / angles.length;
  return Array.from({ length: FURTHEST_HARMONIC * firing.cylinders }, (_, i) => i + 1).map(order => ({
    order,
    harmonic: share(order) >= CARRIES_FROM ? Math.max(1, Math.round(order / firing.cylinders)) : null,
  }));
}
