import type { LineId, ReplyId } from '../prompts/types.ts';
import type { Cause, InspectPoint } from './vocabulary.ts';

/**
 * What eyes and ears may find at a running engine, by size, colour or kind: what it means, and what comes of it. `stops`:
 * everything off. `lookAgain`: it is wiped, or waited for, and looked at once more; it never passes. `open`: the start
 * goes on, with an open item. Common practice, no published source.
 */
export type Finding = Stopping | Passing;

interface Found {
  readonly reply: ReplyId;
  /** What it means, said at once. */
  readonly means: LineId;
}

interface Stopping extends Found {
  readonly does: 'stops' | 'lookAgain';
  /** What it stops with, where that is more than the point that is looked at could say. */
  readonly cause?: Cause;
}

export interface Passing extends Found {
  readonly does: 'open';
  /** Only so long after the first fire; later it means something else, and stops with this cause. */
  readonly until: { readonly seconds: number; readonly means: LineId; readonly cause: Cause };
}

/** Smoke and noise of a cold engine, and of rings that have not bedded in, are gone by then. */
const COLD_FINDINGS_S = 300;

const drips: readonly Finding[] = [
  { reply: 'leak', means: 'leakMeans', does: 'stops' },
  { reply: 'spray', means: 'sprayMeans', does: 'stops' },
];

/** Of oil and coolant: damp, and no drop, may be what was spilled. */
const leaks: readonly Finding[] = [{ reply: 'weep', means: 'weepMeans', does: 'lookAgain' }, ...drips];

/** Under the pressure of an injection a damp joint is the beginning of a spray: it is never waited for, nor wiped. */
const fuelLeaks: readonly Finding[] = [{ reply: 'weep', means: 'fuelWeepMeans', does: 'stops' }, ...drips];

/** From where somebody stands, nobody knows of what it is: it counts as fuel. */
const anyLeaks: readonly Finding[] = [{ reply: 'weep', means: 'unknownWeepMeans', does: 'stops' }, ...drips];

/** A finding of a cold engine, which later means something else. */
const passing = (reply: ReplyId, means: LineId, stays: Omit<Passing['until'], 'seconds'>): Finding => ({
  reply,
  means,
  does: 'open',
  until: { seconds: COLD_FINDINGS_S, ...stays },
});

const noises: readonly Finding[] = [
  // Tappets and injectors, until they have their oil and their fuel.
  passing('valveNoise', 'valveNoiseMeans', { means: 'valveNoiseStaysMeans', cause: 'looseOrNoise' }),
  { reply: 'knocking', means: 'knockingMeans', does: 'stops', cause: 'knocking' },
  { reply: 'squealing', means: 'squealingMeans', does: 'stops' },
];

const smoke: readonly Finding[] = [
  passing('whiteSmoke', 'whiteSmokeMeans', {
    means: 'whiteSmokeStaysMeans',
    cause: 'coolantInCylinder',
  }),
  passing('blueSmoke', 'blueSmokeMeans', { means: 'blueSmokeStaysMeans', cause: 'oilLeak' }),
  passing('blackSmoke', 'blackSmokeMeans', { means: 'blackSmokeStaysMeans', cause: 'other' }),
  { reply: 'thickSmoke', means: 'thickSmokeMeans', does: 'stops' },
];

const hiss: readonly Finding[] = [{ reply: 'leak', means: 'hissMeans', does: 'stops' }];

/** What may be found at each point. */
export const findingsAt: Readonly<Record<InspectPoint, readonly Finding[]>> = {
  anyLeak: anyLeaks,
  fuelJoints: fuelLeaks,
  coolantJoints: leaks,
  oilJoints: leaks,
  boots: hiss,
  hiss: [...hiss, ...noises],
  noise: noises,
  smoke,
  smellAndSmoke: [{ reply: 'leak', means: 'smellMeans', does: 'stops' }, ...smoke],
};
