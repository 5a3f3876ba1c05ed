import { FORMAT, NO_PREVIOUS } from './entry.ts';
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
}

/** Says what the line at which a scan stopped tells about the file; reads the file again where need be. */
export async function explain(record: OpenRecord, scan: Scan, stop: Stop): Promise<Fault> {
  const { line } = stop;
  switch (stop.kind) {
    case 'torn':
    case 'unsound':
      if (line === 1 && !(await looksLikeOurs(record, stop.bytes))) {
        return { problem: 'notOurs', line, sentence: 'This file is not a record of this program.' };
      }
      return stop.kind === 'torn'
        ? {
            problem: 'tornTail',
            line,
            sentence: `Line ${line} breaks off: writing was cut short; the ${line - 1} lines before it are sound.`,
          }
        : {
            problem: 'altered',
            line,
            sentence: `Line ${line} was altered: its content is not what its hash says.`,
          };
    case 'clockBack':
      return {
        problem: 'clockBack',
        line,
        sentence: `Line ${line} runs backwards: its steady clock stands at ${stop.link.monoMs} ms, before the ${scan.last?.monoMs} ms of line ${line - 1}.`,
      };
    case 'misplaced':
      return explainMisplaced(record, scan, line, stop.link);
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

async function explainMisplaced(record: OpenRecord, scan: Scan, line: number, link: Link): Promise<Fault> {
  const { twinLine, rightfulLine } = await lookElsewhere(record, scan, line, link);
  const expected = scan.entries;
  const fault = (problem: ChainProblem, at: number, sentence: string): Fault => ({
    problem,
    line: at,
    sentence,
  });

  if (twinLine !== undefined) {
    return fault(
      'duplicated',
      line,
      `Line ${line} is duplicated: the same entry stands in line ${twinLine}.`,
    );
  }
  if (link.seq < expected) {
    return fault(
      'altered',
      line,
      `Line ${line} was put in or rewritten: it bears number ${link.seq}, which line ${link.seq + 1} has already.`,
    );
  }
  if (rightfulLine !== undefined) {
    return link.seq === expected
      ? fault(
          'altered',
          line,
          `Line ${line} was put in: the entry that belongs there stands in line ${rightfulLine}.`,
        )
      : fault(
          'reordered',
          line,
          `Line ${line} is out of order: the entry that belongs there stands in line ${rightfulLine}.`,
        );
  }
  if (link.seq > expected) {
    const lost = link.seq - expected;
    return fault(
      'missing',
      line,
      `Before line ${line}, ${lost === 1 ? '1 entry is' : `${lost} entries are`} missing: number ${expected} should stand there, and ${link.seq} does.`,
    );
  }
  // The number follows, the hash does not: this line was written after another line before it.
  const before = line - 1;
  return fault(
    'altered',
    before,
    `Line ${before} was altered and given a new hash: line ${line} was written after another line ${before}.`,
  );
}

/** Looks through the whole file for the same entry again, and for the entry that belongs in its place. */
async function lookElsewhere(record: OpenRecord, scan: Scan, line: number, link: Link) {
  let twinLine: number | undefined;
  let rightfulLine: number | undefined;
  let current = 0;
  for await (const batch of record.lines()) {
    for (const raw of batch) {
      current++;
      const other = current === line ? undefined : soundLink(raw);
      if (other === undefined) continue;
      if (other.hash === link.hash) twinLine ??= current;
      if (other.seq === scan.entries && other.prev === (scan.last?.hash ?? NO_PREVIOUS))
        rightfulLine ??= current;
    }
  }
  return { twinLine, rightfulLine };
}
