import { startsClockAnew } from './scan.ts';
import type { Link } from './seal.ts';

export interface Remark {
  readonly kind: 'wallClockJump' | 'continued';
  /** Counts from 1. */
  readonly line: number;
  readonly sentence: string;
}

/** Wall clocks are drawn towards network time by small steps all the time; more than this is worth a remark. */
const JUMP_S = 2;

/**
 * Holds the wall clock against the steady one between two entries. Across a restart of the program only a
 * step backwards can be told from time that really went by.
 */
export function wallClockRemark(link: Link, before: Link | undefined): Remark | undefined {
  if (before === undefined) return undefined;
  const wallStepMs = link.atMs - before.atMs;
  const steadyStepMs = startsClockAnew(link) ? Math.max(wallStepMs, 0) : link.monoMs - before.monoMs;
  const jumpS = (wallStepMs - steadyStepMs) / 1000;
  if (Math.abs(jumpS) <= JUMP_S) return undefined;
  const line = link.seq + 1;
  const direction = jumpS > 0 ? 'forward' : 'back';
  const size = Math.abs(jumpS).toFixed(1);
  return {
    kind: 'wallClockJump',
    line,
    sentence: `At line ${line} the wall clock was set ${direction} by ${size} s.`,
  };
}
