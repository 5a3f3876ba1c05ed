import { MAX_DEPTH } from './json.ts';

const QUOTE = 0x22;
const COMMA = 0x2c;
const COLON = 0x3a;
const BACKSLASH = 0x5c;
const OPEN_BRACKET = 0x5b;
const CLOSE_BRACKET = 0x5d;
const OPEN_BRACE = 0x7b;
const CLOSE_BRACE = 0x7d;
const LITERALS = ['true', 'false', 'null'];

/**
 * Whether a text is surely an object in RFC 8785 form, found in one pass without building the object.
 * The answer no means "perhaps not": escapes, text outside the Basic Multilingual Plane and exponents are
 * left to the full check. Verifying spends most of its time here, hence the hand-written pass.
 */
export function isSurelyCanonicalObject(text: string): boolean {
  if (text.charCodeAt(0) !== OPEN_BRACE) return false;
  return valueEnd(text, 0, 0) === text.length;
}

/** Index after the value that starts at `at`, or -1. */
function valueEnd(text: string, at: number, depth: number): number {
  switch (text.charCodeAt(at)) {
    case QUOTE:
      return stringEnd(text, at);
    case OPEN_BRACE:
      return depth < MAX_DEPTH ? objectEnd(text, at + 1, depth + 1) : -1;
    case OPEN_BRACKET:
      return depth < MAX_DEPTH ? arrayEnd(text, at + 1, depth + 1) : -1;
    default:
      return scalarEnd(text, at);
  }
}

function stringEnd(text: string, at: number): number {
  for (let i = at + 1; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    if (unit === QUOTE) return i + 1;
    if (unit < 0x20 || unit === BACKSLASH || (unit >= 0xd800 && unit <= 0xdfff)) return -1;
  }
  return -1;
}

function objectEnd(text: string, start: number, depth: number): number {
  if (text.charCodeAt(start) === CLOSE_BRACE) return start + 1;
  let at = start;
  let before: string | undefined;
  for (;;) {
    if (text.charCodeAt(at) !== QUOTE) return -1;
    const nameEnd = stringEnd(text, at);
    if (nameEnd < 0 || text.charCodeAt(nameEnd) !== COLON) return -1;
    const name = text.slice(at + 1, nameEnd - 1);
    if (before !== undefined && before >= name) return -1;
    before = name;
    at = valueEnd(text, nameEnd + 1, depth);
    if (at < 0) return -1;
    const next = text.charCodeAt(at++);
    if (next === CLOSE_BRACE) return at;
    if (next !== COMMA) return -1;
  }
}

function arrayEnd(text: string, start: number, depth: number): number {
  if (text.charCodeAt(start) === CLOSE_BRACKET) return start + 1;
  let at = start;
  for (;;) {
    at = valueEnd(text, at, depth);
    if (at < 0) return -1;
    const next = text.charCodeAt(at++);
    if (next === CLOSE_BRACKET) return at;
    if (next !== COMMA) return -1;
  }
}

function scalarEnd(text: string, at: number): number {
  let end = at;
  while (end < text.length && !endsScalar(text.charCodeAt(end))) end++;
  const token = text.slice(at, end);
  return isCanonicalNumber(token) || LITERALS.includes(token) ? end : -1;
}

const endsScalar = (unit: number): boolean =>
  unit === COMMA || unit === CLOSE_BRACE || unit === CLOSE_BRACKET;

/**
 * A decimal of no more than 15 digits, not below 1e-6, without needless zeros. Doubles tell all of these
 * apart (DBL_DIG in C), so each is the shortest text of its own double and need not be converted to know it.
 */
const SHORT_DECIMAL = /^(?!-0$)-?(?:0|[1-9]\d{0,8})(?:\.\d{0,5}[1-9])?$/;

/** Whether a text is a number exactly as RFC 8785 writes it. */
export function isCanonicalNumber(text: string): boolean {
  if (SHORT_DECIMAL.test(text)) return true;
  const value = Number(text);
  return Number.isFinite(value) && String(value) === text;
}
