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
 * Holds the wall clock against the steady one, link by link. Across a restart of the program only a step backwards can
 * be told from time that really went by. Records of the first vocabulary have the first entry of a restart on a clock
 * that begins anew, and those behind it on the clock of the session, which goes on from where it stood.
 */
export function watchWallClock(): (link: Link) => Remark | undefined {
  let before: Link | undefined;
  /** Where the steady clock had come to before the program was restarted. */
  let stoodAtMs = 0;
  return link => {
    const last = before;
    before = link;
    if (last === undefined) return undefined;
    const wallStepMs = link.atMs - last.atMs;
    if (startsClockAnew(link)) {
      stoodAtMs = Math.max(stoodAtMs, last.monoMs);
      return remarkIfJumped(link, Math.min(wallStepMs, 0));
    }
    const jumpMs = wallStepMs - (link.monoMs - last.monoMs);
    if (!startsClockAnew(last)) return remarkIfJumped(link, jumpMs);
    const onSessionMs = wallStepMs - (link.monoMs - stoodAtMs);
    return remarkIfJumped(link, Math.abs(onSessionMs) < Math.abs(jumpMs) ? onSessionMs : jumpMs);
  };
}

function remarkIfJumped({ seq }: Link, jumpMs: number): Remark | undefined {
  const jumpS = jumpMs / 1000;
  return Math.abs(jumpS) <= JUMP_S ? undefined : remarkOf({ found: 'wallClockJump', line: seq + 1, jumpS });
}
