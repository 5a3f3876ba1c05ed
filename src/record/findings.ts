/** What can be wrong in a record, with all that a sentence about it needs. Lines count from 1. */
export type ChainFinding =
  | { readonly found: 'notOurs'; readonly line: number }
  | { readonly found: 'torn'; readonly line: number }
  | { readonly found: 'altered'; readonly line: number }
  | {
      readonly found: 'clockBack';
      readonly line: number;
      readonly monoMs: number;
      readonly beforeMs: number;
    }
  | { readonly found: 'duplicated'; readonly line: number; readonly twinLine: number }
  /** It bears a number that an earlier line has. */
  | { readonly found: 'renumbered'; readonly line: number; readonly seq: number }
  | { readonly found: 'putIn'; readonly line: number; readonly rightfulLine: number }
  | { readonly found: 'reordered'; readonly line: number; readonly rightfulLine: number }
  | { readonly found: 'missing'; readonly line: number; readonly expected: number; readonly seq: number }
  /** Altered and given a new hash: the line after it knows the old one. */
  | { readonly found: 'rehashed'; readonly line: number }
  /** The expected last hash is nowhere in it. */
  | { readonly found: 'cutOff'; readonly line: number };

/** Nothing that speaks against a record, but worth knowing. */
export type RemarkFinding =
  | { readonly found: 'wallClockJump'; readonly line: number; readonly jumpS: number }
  | { readonly found: 'continued'; readonly line: number; readonly more: number };

/** Why a signature does not hold. */
export type SignatureFinding = 'otherKeyId' | 'altered' | 'otherRecord';

type Sentences<T extends { readonly found: string }> = {
  readonly [F in T['found']]: (finding: Extract<T, { readonly found: F }>) => string;
};

/** A sentence for each thing that may be found, in one language: what is missing does not compile. */
export interface FindingSentences {
  readonly chain: Sentences<ChainFinding>;
  readonly remarks: Sentences<RemarkFinding>;
  readonly signature: Readonly<Record<SignatureFinding, string>>;
}

/** The sentence for what was found. */
export function sentenceOf<T extends { readonly found: string }>(
  sentences: Sentences<T>,
  finding: T,
): string {
  // The key of a sentence is what it takes; TypeScript cannot follow that through a union.
  const sentence = sentences[finding.found as T['found']] as (finding: T) => string;
  return sentence(finding);
}

/** As `verify` and the other commands say it. */
export const englishFindings: FindingSentences = {
  chain: {
    notOurs: () => 'This file is not a record of this program.',
    torn: ({ line }) =>
      `Line ${line} breaks off: writing was cut short; the ${line - 1} lines before it are sound.`,
    altered: ({ line }) => `Line ${line} was altered: its content is not what its hash says.`,
    clockBack: ({ line, monoMs, beforeMs }) =>
      `Line ${line} runs backwards: its steady clock stands at ${monoMs} ms, before the ${beforeMs} ms of line ${line - 1}.`,
    duplicated: ({ line, twinLine }) =>
      `Line ${line} is duplicated: the same entry stands in line ${twinLine}.`,
    renumbered: ({ line, seq }) =>
      `Line ${line} was put in or rewritten: it bears number ${seq}, which line ${seq + 1} has already.`,
    putIn: ({ line, rightfulLine }) =>
      `Line ${line} was put in: the entry that belongs there stands in line ${rightfulLine}.`,
    reordered: ({ line, rightfulLine }) =>
      `Line ${line} is out of order: the entry that belongs there stands in line ${rightfulLine}.`,
    missing: ({ line, expected, seq }) =>
      `Before line ${line}, ${seq - expected === 1 ? '1 entry is' : `${seq - expected} entries are`} missing: number ${expected} should stand there, and ${seq} does.`,
    rehashed: ({ line }) =>
      `Line ${line} was altered and given a new hash: line ${line + 1} was written after another line ${line}.`,
    cutOff: ({ line }) =>
      `The record ends at line ${line - 1} without the hash of the report: lines after it are missing, or the report is of another record.`,
  },
  remarks: {
    wallClockJump: ({ line, jumpS }) =>
      `At line ${line} the wall clock was set ${jumpS > 0 ? 'forward' : 'back'} by ${Math.abs(jumpS).toFixed(1)} s.`,
    continued: ({ line, more }) =>
      `The report was made at line ${line - 1}; ${more} more lines were recorded after it.`,
  },
  signature: {
    otherKeyId: 'its key is not the one that its key id names',
    altered: 'it was altered, or made with another key',
    otherRecord: 'it was made for another record, or this record was changed or continued since',
  },
};
