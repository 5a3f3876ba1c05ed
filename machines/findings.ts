import type { LineId, ReplyId } from '../prompts/types.ts';
import type { Cause, InspectPoint } from './vocabulary.ts';

/**
 * What eyes and ears may find at a running engine, by size, colour or kind: what it means, and what comes of it. `stops`:
 * everything off. `lookAgain`: it is wiped, or waited for, and looked at once more; it never passes. `open`: the start
 * goes on, with an open item. Common practice, no published source.
 */
export interface Finding {
  readonly reply: ReplyId;
  /** What it means, said at once. */
  readonly means: LineId;
  readonly does: 'stops' | 'lookAgain' | 'open';
  /** Only so long after the first fire; later it means something else, and stops with this cause. */
  readonly until?: { readonly seconds: number; readonly means: LineId; readonly cause: Cause };
}

/** Smoke of a cold engine, and of rings that have not bedded in, is gone by then. */
const SMOKE_CLEARS_S = 300;

const leaks: readonly Finding[] = [
  // Damp, and no drop: it may be what was spilled.
  { reply: 'weep', means: 'weepMeans', does: 'lookAgain' },
  { reply: 'leak', means: 'leakMeans', does: 'stops' },
  { reply: 'spray', means: 'sprayMeans', does: 'stops' },
];

const noises: readonly Finding[] = [
  // Tappets and injectors, until they have their oil and their fuel.
  {
    reply: 'valveNoise',
    means: 'valveNoiseMeans',
    does: 'open',
    until: { seconds: SMOKE_CLEARS_S, means: 'valveNoiseStaysMeans', cause: 'looseOrNoise' },
  },
  { reply: 'knocking', means: 'knockingMeans', does: 'stops' },
  { reply: 'squealing', means: 'squealingMeans', does: 'stops' },
];

const smoke: readonly Finding[] = [
  {
    reply: 'whiteSmoke',
    means: 'whiteSmokeMeans',
    does: 'open',
    until: { seconds: SMOKE_CLEARS_S, means: 'whiteSmokeStaysMeans', cause: 'coolantLeak' },
  },
  {
    reply: 'blueSmoke',
    means: 'blueSmokeMeans',
    does: 'open',
    until: { seconds: SMOKE_CLEARS_S, means: 'blueSmokeStaysMeans', cause: 'oilLeak' },
  },
  {
    reply: 'blackSmoke',
    means: 'blackSmokeMeans',
    does: 'open',
    until: { seconds: SMOKE_CLEARS_S, means: 'blackSmokeStaysMeans', cause: 'other' },
  },
  { reply: 'thickSmoke', means: 'thickSmokeMeans', does: 'stops' },
];

const hiss: readonly Finding[] = [{ reply: 'leak', means: 'hissMeans', does: 'stops' }];

/** What may be found at each point. */
export const findingsAt: Readonly<Record<InspectPoint, readonly Finding[]>> = {
  anyLeak: leaks,
  fuelJoints: leaks,
  coolantJoints: leaks,
  oilJoints: leaks,
  boots: hiss,
  hiss: [...hiss, ...noises],
  noise: noises,
  smoke,
  smellAndSmoke: [{ reply: 'leak', means: 'smellMeans', does: 'stops' }, ...smoke],
};
