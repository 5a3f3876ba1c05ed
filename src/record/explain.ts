import { FORMAT, NO_PREVIOUS } from './entry.ts';
import { type ChainFinding, englishFindings, sentenceOf } from './findings.ts';
import type { OpenRecord } from './record-file.ts';
import { type Scan, type Stop, soundLink } from './scan.ts';
import type { Link } from './seal.ts';

export type ChainProblem =
  | 'altered'
  | 'missing'
  | 'reordered'
  | 'duplicated'
  | 'tornTail'
  | 'notOurs'
  | 'clockBack';

/** The first thing wrong in a record. */
export interface Fault {
  readonly problem: ChainProblem;
  /** Counts from 1. */
  readonly line: number;
  readonly sentence: string;
  /** What the sentence says, for who says it in another language. */
  readonly finding: ChainFinding;
}

const problems: Readonly<Record<ChainFinding['found'], ChainProblem>> = {
  notOurs: 'notOurs',
  torn: 'tornTail',
  altered: 'altered',
  clockBack: 'clockBack',
  duplicated: 'duplicated',
  renumbered: 'altered',
  putIn: 'altered',
  reordered: 'reordered',
  missing: 'missing',
  rehashed: 'altered',
  cutOff: 'missing',
};

/** What was found as the fault of a record. */
export const faultOf = (finding: ChainFinding): Fault => ({
  problem: problems[finding.found],
  line: finding.line,
  sentence: sentenceOf(englishFindings.chain, finding),
  finding,
});

/** Says what the line at which a scan stopped tells about the file; reads the file again where need be. */
export async function explain(record: OpenRecord, scan: Scan, stop: Stop): Promise<Fault> {
  const { line } = stop;
  switch (stop.kind) {
    case 'torn':
    case 'unsound':
      if (line === 1 && !(await looksLikeOurs(record, stop.bytes)))
        return faultOf({ found: 'notOurs', line });
      return faultOf({ found: stop.kind === 'torn' ? 'torn' : 'altered', line });
    case 'clockBack':
      return faultOf({
        found: 'clockBack',
        line,
        monoMs: stop.link.monoMs,
        beforeMs: scan.last?.monoMs ?? 0,
      });
    case 'misplaced':
      return faultOf(await findMisplaced(record, scan, line, stop.link));
  }
}

/** A changed first line still tells whose record it is, or the second line does. */
async function looksLikeOurs(record: OpenRecord, firstLine: Buffer): Promise<boolean> {
  if (firstLine.includes(`"format":"${FORMAT}"`) || firstLine.includes('"kind":"opened"')) return true;
  for await (const [, second] of record.lines()) {
    return second !== undefined && soundLink(second) !== undefined;
  }
  return false;
}

async function findMisplaced(
  record: OpenRecord,
  scan: Scan,
  line: number,
  { seq, hash }: Link,
): Promise<ChainFinding> {
  const { twinLine, rightfulLine } = await lookElsewhere(record, scan, line, hash);
  const expected = scan.entries;
  if (twinLine !== undefined) return { found: 'duplicated', line, twinLine };
  if (seq < expected) return { found: 'renumbered', line, seq };
  if (rightfulLine !== undefined)
    return { found: seq === expected ? 'putIn' : 'reordered', line, rightfulLine };
  if (seq > expected) return { found: 'missing', line, expected, seq };
  // The number follows, the hash does not: this line was written after another line before it.
  return { found: 'rehashed', line: line - 1 };
}

/** Looks through the whole file for the same entry again, and for the entry that belongs in its place. */
async function lookElsewhere(record: OpenRecord, scan: Scan, line: number, hash: string) {
  let twinLine: number | undefined;
  let rightfulLine: number | undefined;
  let current = 0;
  for await (const batch of record.lines()) {
    for (const raw of batch) {
      current++;
      const other = current === line ? undefined : soundLink(raw);
      if (other === undefined) continue;
      if (other.hash === hash) twinLine ??= current;
      if (other.seq === scan.entries && other.prev === (scan.last?.hash ?? NO_PREVIOUS))
        rightfulLine ??= current;
    }
  }
  return { twinLine, rightfulLine };
}
