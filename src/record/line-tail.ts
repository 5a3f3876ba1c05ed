import { isCanonicalNumber, LONGEST_NUMBER } from './canonical-scan.ts';
import { KIND } from './entry.ts';

const QUOTE = 0x22;
const COLON = 0x3a;
const ZERO = 0x30;
const NINE = 0x39;
const HASH_DIGITS = 64;
const LONGEST_KIND = 120;

/** What stands in a line behind its data. */
interface LineTail {
  /** Where the member `hash` begins, with its comma. */
  readonly hashStart: number;
  readonly hashEnd: number;
  /** This and `prev` are 64 characters that nobody has looked at. */
  readonly hash: string;
  readonly kind: string;
  readonly monoMs: number;
  readonly prev: string;
  readonly seq: number;
}

/**
 * Takes the end of a line apart, backwards, as the members there have known names in a known order.
 * @param line one character a byte
 * @returns undefined when the line does not end exactly as the record writes it
 */
export function readTail(line: string): LineTail | undefined {
  const seqEnd = beforeText(line, line.length, ',"v":1}');
  const seqStart = startOfDigits(line, seqEnd);
  const prevEnd = beforeText(line, seqStart, '","seq":');
  const prevStart = prevEnd - HASH_DIGITS;
  const monoEnd = beforeText(line, prevStart, ',"prev":"');
  const monoStart = startBehind(line, monoEnd, COLON, LONGEST_NUMBER);
  const kindEnd = beforeText(line, monoStart, '","monoMs":');
  const kindStart = startBehind(line, kindEnd, QUOTE, LONGEST_KIND);
  const hashDigitsEnd = beforeText(line, kindStart, '","kind":"');
  const hashDigitsStart = hashDigitsEnd - HASH_DIGITS;
  const hashStart = beforeText(line, hashDigitsStart, ',"hash":"');
  if (hashStart < 0) return undefined;
  const seqDigits = line.slice(seqStart, seqEnd);
  const mono = line.slice(monoStart, monoEnd);
  const kind = line.slice(kindStart, kindEnd);
  const seq = Number(seqDigits);
  const monoMs = Number(mono);
  if (seqDigits.length > 1 && seqDigits.startsWith('0')) return undefined;
  if (!Number.isSafeInteger(seq) || !isCanonicalNumber(mono) || monoMs < 0 || !KIND.test(kind))
    return undefined;
  return {
    hashStart,
    hashEnd: hashDigitsEnd + 1,
    hash: line.slice(hashDigitsStart, hashDigitsEnd),
    kind,
    monoMs,
    prev: line.slice(prevStart, prevEnd),
    seq,
  };
}

/** Where a text begins that ends at `end`, or -1 when another stands there. */
function beforeText(line: string, end: number, text: string): number {
  const start = end - text.length;
  return start >= 0 && line.startsWith(text, start) ? start : -1;
}

function startOfDigits(line: string, end: number): number {
  let at = end;
  for (let unit = line.charCodeAt(at - 1); unit >= ZERO && unit <= NINE; unit = line.charCodeAt(at - 1)) at--;
  return at < end ? at : -1;
}

/** Index behind the nearest such character before `end`, no further away than `most`, or -1. */
function startBehind(line: string, end: number, unit: number, most: number): number {
  for (let at = end - 1; at >= 0 && at >= end - 1 - most; at--)
    if (line.charCodeAt(at) === unit) return at + 1;
  return -1;
}
