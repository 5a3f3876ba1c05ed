import { englishFindings, type RemarkFinding, sentenceOf } from './findings.ts';
import { startsClockAnew } from './scan.ts';
import type { Link } from './seal.ts';

export interface Remark {
  readonly kind: RemarkFinding['found'];
  /** Counts from 1. */
  readonly line: number;
  readonly sentence: string;
  /** What the sentence says, for who says it in another language. */
  readonly finding: RemarkFinding;
}

/** What was found as a remark. */
export const remarkOf = (finding: RemarkFinding): Remark => ({
  kind: finding.found,
  line: finding.line,
  sentence: sentenceOf(englishFindings.remarks, finding),
  finding,
});

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
  return remarkOf({ found: 'wallClockJump', line: link.seq + 1, jumpS });
}
