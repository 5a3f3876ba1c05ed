import canonicalize from 'canonicalize';
import { sha256Hex } from '#sha256';
import { isCanonicalNumber, isSurelyCanonicalObject } from './canonical-scan.ts';
import { type Entry, entrySchema, KIND, NO_PREVIOUS, OPENED, wallMs } from './entry.ts';
import { findNonJson, isJsonObject, type JsonObject } from './json.ts';
import { RecordError } from './record-error.ts';

export { sha256Hex };

/** What an entry says before it is chained. */
export interface Draft {
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
const AT_END = 31;
const DATA_START = 40;
const HASH_NAME = ',"hash":"';
const HASH_MEMBER_LENGTH = HASH_NAME.length + 64 + 1;
const SHORTEST_TAIL = `,"hash":"${NO_PREVIOUS}","kind":"k","monoMs":0,"prev":"${NO_PREVIOUS}","seq":0,"v":1}`
  .length;
const TAIL =
  /^,"hash":"([^"]{64})","kind":"([^"]{1,120})","monoMs":([^,]{1,25}),"prev":"([0-9a-f]{64})","seq":(0|[1-9]\d{0,15}),"v":1\}$/;

/** The line of an entry, as it stands in the file. */
export const canonicalLine = (entry: Entry): string => canonicalize(entry) ?? '';

/** What the chain needs of a line; its data are known to be sound, but not yet taken out. */
export interface Link extends Omit<Entry, 'v' | 'data'> {
  /** `at` as milliseconds since 1970. */
  readonly atMs: number;
}

/**
 * Checks one line (without its newline) of a record.
 * @returns undefined unless the line is, to the byte, what `sealEntry` makes of its content, hash included
 */
export function checkLine(line: string): Link | undefined {
  if (!line.startsWith('{"at":"') || !line.startsWith('","data":', AT_END)) return undefined;
  const hashStart = findHashMember(line);
  const [, hash, kind, mono, prev, seqDigits] = TAIL.exec(line.slice(hashStart)) ?? [];
  if (hash === undefined || kind === undefined || mono === undefined || prev === undefined) return undefined;
  if (sha256Hex(line.slice(0, hashStart) + line.slice(hashStart + HASH_MEMBER_LENGTH)) !== hash)
    return undefined;

  const at = line.slice(7, AT_END);
  const atMs = wallMs(at);
  const monoMs = Number(mono);
  const seq = Number(seqDigits);
  if (Number.isNaN(atMs) || !isCanonicalNumber(mono) || monoMs < 0) return undefined;
  const data = line.slice(DATA_START, hashStart);
  if (!KIND.test(kind) || !Number.isSafeInteger(seq) || !isCanonicalObject(data)) return undefined;
  const link = { seq, at, atMs, monoMs, kind, prev, hash };
  if (seq > 0 && kind !== OPENED) return link;
  return entrySchema.safeParse(JSON.parse(line)).success ? link : undefined;
}

/** The whole entry of a line that `checkLine` has accepted. */
export function readEntry(link: Link, line: string): Entry {
  const { atMs: _, ...envelope } = link;
  const data: JsonObject = JSON.parse(line.slice(DATA_START, findHashMember(line)));
  return { ...envelope, v: 1, data };
}

/** Quotes inside a text are escaped, so the last match is the member itself. */
const findHashMember = (line: string): number => line.lastIndexOf(HASH_NAME, line.length - SHORTEST_TAIL);

function isCanonicalObject(text: string): boolean {
  if (isSurelyCanonicalObject(text)) return true;
  try {
    const value: unknown = JSON.parse(text);
    return isJsonObject(value) && findNonJson(value, 'data') === undefined && canonicalize(value) === text;
  } catch {
    return false;
  }
}
