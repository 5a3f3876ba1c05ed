import { isUtf8 } from 'node:buffer';
import { MAX_ENTRY_BYTES, MAX_LINE_BYTES, NO_PREVIOUS, RECOVERED, REOPENED } from './entry.ts';
import type { RawLine } from './lines.ts';
import type { OpenRecord } from './record-file.ts';
import { checkLine, type Link } from './seal.ts';

/** Why the reading of a record ended before its last byte; `line` counts from 1. */
export type Stop =
  /** Behind the last newline stands the beginning of a line: the writer was cut off. */
  | { readonly kind: 'torn'; readonly line: number; readonly bytes: Buffer }
  /** The line is not what its hash says, or no entry at all. */
  | { readonly kind: 'unsound'; readonly line: number; readonly bytes: Buffer }
  /** The line is sound, but does not follow the one before. */
  | { readonly kind: 'misplaced'; readonly line: number; readonly link: Link }
  | { readonly kind: 'clockBack'; readonly line: number; readonly link: Link };

export interface Scan {
  /** Sound entries in sequence from the beginning of the file. */
  readonly entries: number;
  readonly last: Link | undefined;
  /** Where the last of them ends in the file. */
  readonly soundBytes: number;
  readonly stop: Stop | undefined;
}

/** The link in a line, or undefined when the line is not sound in itself. */
export function soundLink({ bytes, terminated }: RawLine, before?: Link): Link | undefined {
  if (!terminated || bytes.length > MAX_LINE_BYTES || !isUtf8(bytes)) return undefined;
  return checkLine(bytes, before);
}

/** Follows the chain from the first line as far as it holds; `onLink` sees each link that does. */
export async function scan(
  record: OpenRecord,
  onLink: (link: Link, line: Uint8Array) => void,
): Promise<Scan> {
  let last: Link | undefined;
  let entries = 0;
  let soundBytes = 0;
  const end = (stop?: Stop): Scan => ({ entries, last, soundBytes, stop });
  for await (const batch of record.lines()) {
    for (const raw of batch) {
      const line = entries + 1;
      const link = soundLink(raw, last);
      if (link === undefined) {
        const torn = !raw.terminated && raw.bytes.length <= MAX_ENTRY_BYTES;
        return end({ kind: torn ? 'torn' : 'unsound', line, bytes: raw.bytes });
      }
      if (link.seq !== entries || link.prev !== (last?.hash ?? NO_PREVIOUS)) {
        return end({ kind: 'misplaced', line, link });
      }
      if (last !== undefined && link.monoMs < last.monoMs && !startsClockAnew(link)) {
        return end({ kind: 'clockBack', line, link });
      }
      onLink(link, raw.bytes);
      last = link;
      entries++;
      soundBytes = raw.endByte;
    }
  }
  return end();
}

/** A program that reopens a record counts its own milliseconds. */
export const startsClockAnew = (link: Link): boolean => link.kind === REOPENED || link.kind === RECOVERED;
