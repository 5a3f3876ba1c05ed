import canonicalize from 'canonicalize';
import { byteString, sha256Hex, sha256HexWithout } from '#bytes';
import { isSurelyCanonicalObject } from './canonical-scan.ts';
import { type Entry, entrySchema, HASH, OPENED, wallMs } from './entry.ts';
import { findNonJson, isJsonObject, type JsonObject } from './json.ts';
import { readTail } from './line-tail.ts';
import { RecordError } from './record-error.ts';

export { sha256Hex };

/** What an entry says before it is chained. */
interface Draft {
  readonly seq: number;
  readonly at: Date;
  readonly monoMs: number;
  readonly kind: string;
  readonly data: JsonObject;
  readonly prev: string;
}

export interface Sealed {
  readonly entry: Entry;
  /** The entry as it stands in the file, without the newline. */
  readonly line: string;
}

const refuse = (what: string): never => {
  throw new RecordError('invalid', `This event cannot be recorded: ${what}.`);
};

/**
 * Turns a draft into a line with its hash.
 * @throws RecordError `invalid` naming the member at fault, e.g. a NaN in the data
 */
export function sealEntry(draft: Draft, maxBytes: number): Sealed {
  const at = Number.isNaN(draft.at.getTime())
    ? refuse('the wall clock gives no time')
    : draft.at.toISOString();
  const body = { ...draft, at, v: 1 };
  const nonJson = findNonJson(body, 'entry');
  if (nonJson !== undefined) refuse(nonJson.replace('entry.', ''));
  const line = canonicalize({ ...body, hash: sha256Hex(canonicalize(body) ?? '') }) ?? '';
  const bytes = new TextEncoder().encode(line).length;
  if (bytes > maxBytes) refuse(`it takes ${bytes} bytes, more than the ${maxBytes} allowed`);
  // Parsed back, so that the caller holds what the file holds, whatever becomes of the data handed in.
  const parsed = entrySchema.safeParse(JSON.parse(line));
  if (parsed.success) return { entry: parsed.data, line };
  const [issue] = parsed.error.issues;
  return refuse(`${issue?.path.join('.') || 'it'} ${issue?.message ?? 'is not valid'}`);
}

// In canonical order the names are at, data, hash, kind, monoMs, prev, seq, v. The first two and the
// last six are of known shape, which lets a line be taken apart, and hashed, without serialising it anew.
const AT_START = 7;
const AT_END = 31;
const DATA_START = 40;

/** The line of an entry, as it stands in the file. */
export const canonicalLine = (entry: Entry): string => canonicalize(entry) ?? '';

/** What the chain needs of a line; its data are known to be sound, but not yet taken out. */
export interface Link extends Omit<Entry, 'v' | 'data'> {
  /** `at` as milliseconds since 1970. */
  readonly atMs: number;
  /** Where the data end in the line's bytes. */
  readonly dataEnd: number;
}

const decoder = new TextDecoder();

/**
 * Checks one line (without its newline) of a record.
 * @param line valid UTF-8
 * @param before the entry that it should follow, if any; another one is no fault here
 * @returns undefined unless the line is, to the byte, what `sealEntry` makes of its content, hash included
 */
export function checkLine(line: Uint8Array, before?: Link): Link | undefined {
  const text = byteString(line);
  if (!text.startsWith('{"at":"') || !text.startsWith('","data":', AT_END)) return undefined;
  const tail = readTail(text);
  if (tail === undefined) return undefined;
  const { hashStart: dataEnd, hashEnd, hash, prev, kind, monoMs, seq } = tail;
  if (sha256HexWithout(line, dataEnd, hashEnd) !== hash) return undefined;
  if (prev !== before?.hash && !HASH.test(prev)) return undefined;
  const at = text.slice(AT_START, AT_END);
  const atMs = wallMs(at);
  if (Number.isNaN(atMs) || !isCanonicalObject(line, dataEnd)) return undefined;
  const link = { seq, at, atMs, monoMs, kind, prev, hash, dataEnd };
  if (seq > 0 && kind !== OPENED) return link;
  return entrySchema.safeParse(JSON.parse(decoder.decode(line))).success ? link : undefined;
}

/** The whole entry of a line that `checkLine` has accepted. */
export function readEntry(link: Link, line: Uint8Array): Entry {
  const { atMs: _at, dataEnd, ...envelope } = link;
  const data: JsonObject = JSON.parse(dataText(line, dataEnd));
  return { ...envelope, v: 1, data };
}

const dataText = (line: Uint8Array, dataEnd: number): string =>
  decoder.decode(line.subarray(DATA_START, dataEnd));

function isCanonicalObject(line: Uint8Array, dataEnd: number): boolean {
  if (isSurelyCanonicalObject(line, DATA_START, dataEnd)) return true;
  const text = dataText(line, dataEnd);
  try {
    const value: unknown = JSON.parse(text);
    return isJsonObject(value) && findNonJson(value, 'data') === undefined && canonicalize(value) === text;
  } catch {
    return false;
  }
}
