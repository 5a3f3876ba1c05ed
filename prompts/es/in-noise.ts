import type { Farthest } from '../types.ts';

/** Nobody is heard in Spanish yet, so nothing is asked for otherwise in a loud bay. */
export const farthest: Farthest = {};
