import { MAX_DEPTH } from './json.ts';

const QUOTE = 0x22;
const COMMA = 0x2c;
const MINUS = 0x2d;
const POINT = 0x2e;
const ZERO = 0x30;
const NINE = 0x39;
const COLON = 0x3a;
const BACKSLASH = 0x5c;
const OPEN_BRACKET = 0x5b;
const CLOSE_BRACKET = 0x5d;
const OPEN_BRACE = 0x7b;
const CLOSE_BRACE = 0x7d;

/** In UTF-8, text outside the Basic Multilingual Plane begins with this byte or a higher one. */
const BEYOND_BMP = 0xf0;

const asBytes = (ascii: string): readonly number[] => [...ascii].map(letter => letter.charCodeAt(0));
const TRUE = asBytes('true');
const FALSE = asBytes('false');
const NULL = asBytes('null');

/**
 * Whether bytes are surely an object in RFC 8785 form, found in one pass without building the object.
 * The answer no means "perhaps not": escapes and text outside the Basic Multilingual Plane are left to the
 * full check. Verifying spends much of its time here, hence the hand-written pass.
 * @param bytes valid UTF-8 between `start` and `end`, within which the object must lie
 */
export function isSurelyCanonicalObject(bytes: Uint8Array, start: number, end: number): boolean {
  return bytes[start] === OPEN_BRACE && valueEnd(bytes, start, 0) === end;
}

/** Index after the value that starts at `at`, or -1. */
function valueEnd(bytes: Uint8Array, at: number, depth: number): number {
  switch (bytes[at]) {
    case QUOTE:
      return stringEnd(bytes, at);
    case OPEN_BRACE:
      return depth < MAX_DEPTH ? objectEnd(bytes, at + 1, depth + 1) : -1;
    case OPEN_BRACKET:
      return depth < MAX_DEPTH ? arrayEnd(bytes, at + 1, depth + 1) : -1;
    case TRUE[0]:
      return wordEnd(bytes, at, TRUE);
    case FALSE[0]:
      return wordEnd(bytes, at, FALSE);
    case NULL[0]:
      return wordEnd(bytes, at, NULL);
    default: {
      const end = shortDecimalEnd(bytes, at);
      return end < 0 ? anyNumberEnd(bytes, at) : end;
    }
  }
}

function stringEnd(bytes: Uint8Array, at: number): number {
  for (let i = at + 1; i < bytes.length; i++) {
    const byte = bytes[i] ?? 0;
    if (byte === QUOTE) return i + 1;
    if (byte < 0x20 || byte === BACKSLASH || byte >= BEYOND_BMP) return -1;
  }
  return -1;
}

function objectEnd(bytes: Uint8Array, start: number, depth: number): number {
  if (bytes[start] === CLOSE_BRACE) return start + 1;
  let at = start;
  let before = -1;
  for (;;) {
    if (bytes[at] !== QUOTE) return -1;
    const nameEnd = stringEnd(bytes, at);
    if (nameEnd < 0 || bytes[nameEnd] !== COLON) return -1;
    if (before >= 0 && !comesAfter(bytes, before, at)) return -1;
    before = at;
    at = valueEnd(bytes, nameEnd + 1, depth);
    if (at < 0) return -1;
    const next = bytes[at++];
    if (next === CLOSE_BRACE) return at;
    if (next !== COMMA) return -1;
  }
}

/**
 * Whether the name whose quote stands at `at` sorts behind the one at `before`. Within the Basic Multilingual
 * Plane, UTF-8 bytes sort as UTF-16 code units do (Unicode 15, section 2.5: both in the order of code points).
 */
function comesAfter(bytes: Uint8Array, before: number, at: number): boolean {
  for (let i = 1; ; i++) {
    const one = bytes[before + i];
    const other = bytes[at + i];
    if (one === QUOTE) return other !== QUOTE;
    if (one !== other) return other !== QUOTE && (other ?? 0) > (one ?? 0);
  }
}

function arrayEnd(bytes: Uint8Array, start: number, depth: number): number {
  if (bytes[start] === CLOSE_BRACKET) return start + 1;
  let at = start;
  for (;;) {
    at = valueEnd(bytes, at, depth);
    if (at < 0) return -1;
    const next = bytes[at++];
    if (next === CLOSE_BRACKET) return at;
    if (next !== COMMA) return -1;
  }
}

function wordEnd(bytes: Uint8Array, at: number, word: readonly number[]): number {
  for (let i = 0; i < word.length; i++) if (bytes[at + i] !== word[i]) return -1;
  return at + word.length;
}

const MOST_WHOLE_DIGITS = 9;
const MOST_DECIMALS = 6;

/**
 * Index after a decimal of no more than 15 digits, not below 1e-6, without needless zeros, or -1. Doubles tell
 * all of these apart (DBL_DIG in C), so each is the shortest text of its own double and need not be converted
 * to know it.
 */
function shortDecimalEnd(bytes: Uint8Array, start: number): number {
  const first = bytes[start] === MINUS ? start + 1 : start;
  const whole = digitsEnd(bytes, first);
  if (whole === first || whole - first > MOST_WHOLE_DIGITS) return -1;
  if (bytes[first] === ZERO && whole - first > 1) return -1;
  if (bytes[whole] !== POINT) return bytes[first] === ZERO && first > start ? -1 : endOfNumber(bytes, whole);
  const end = digitsEnd(bytes, whole + 1);
  const decimals = end - whole - 1;
  if (decimals === 0 || decimals > MOST_DECIMALS || bytes[end - 1] === ZERO) return -1;
  return endOfNumber(bytes, end);
}

function digitsEnd(bytes: Uint8Array, start: number): number {
  let at = start;
  for (let byte = bytes[at]; byte !== undefined && byte >= ZERO && byte <= NINE; byte = bytes[at]) at++;
  return at;
}

/** An exponent, or anything else that belongs to a number, makes it one for the longer look. */
const endOfNumber = (bytes: Uint8Array, at: number): number => (endsNumber(bytes[at]) ? at : -1);

const endsNumber = (byte: number | undefined): boolean =>
  byte === COMMA || byte === CLOSE_BRACE || byte === CLOSE_BRACKET;

/** Digits of the longest canonical number: "-0.0000033333333333333333", for one. */
export const LONGEST_NUMBER = 25;

function anyNumberEnd(bytes: Uint8Array, start: number): number {
  let text = '';
  for (let at = start; at <= start + LONGEST_NUMBER; at++) {
    const byte = bytes[at];
    if (endsNumber(byte)) return isCanonicalNumber(text) ? at : -1;
    text += String.fromCharCode(byte ?? 0);
  }
  return -1;
}

/** The same decimals, as a text. */
const SHORT_DECIMAL = /^(?!-0$)-?(?:0|[1-9]\d{0,8})(?:\.\d{0,5}[1-9])?$/;

/** Whether a text is a number exactly as RFC 8785 writes it (section 3.2.2.3: as ECMAScript does). */
export function isCanonicalNumber(text: string): boolean {
  if (SHORT_DECIMAL.test(text)) return true;
  const value = Number(text);
  return Number.isFinite(value) && String(value) === text;
}
