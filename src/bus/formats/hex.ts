const ZERO = 48;
const NINE = 57;
const UPPER_A = 65;
const UPPER_F = 70;
const CASE_BIT = 0x20;

/** Value of one hexadecimal digit given by its character code, or -1. */
function hexDigit(code: number): number {
  if (code >= ZERO && code <= NINE) return code - ZERO;
  const upper = code & ~CASE_BIT;
  return upper >= UPPER_A && upper <= UPPER_F ? upper - UPPER_A + 10 : -1;
}

/** Value of the hexadecimal digits from `start` up to `end` (at most 8), or -1 when one is none or none is there. */
export function hexNumber(text: string, start: number, end: number): number {
  if (end <= start) return -1;
  let value = 0;
  for (let at = start; at < end; at += 1) {
    const digit = hexDigit(text.charCodeAt(at));
    if (digit < 0) return -1;
    value = value * 16 + digit;
  }
  return value;
}

/** `length` bytes of two digits each from `start` on, or undefined when a digit is none. */
export function hexBytes(text: string, start: number, length: number): Uint8Array | undefined {
  const bytes = new Uint8Array(length);
  for (let index = 0; index < length; index += 1) {
    const at = start + 2 * index;
    const high = hexDigit(text.charCodeAt(at));
    const low = hexDigit(text.charCodeAt(at + 1));
    if (high < 0 || low < 0) return undefined;
    bytes[index] = high * 16 + low;
  }
  return bytes;
}

/** Upper-case digits, padded with zeros to `digits`. */
export const toHex = (value: number, digits: number): string =>
  value.toString(16).toUpperCase().padStart(digits, '0');

export const bytesToHex = (bytes: Uint8Array): string => Array.from(bytes, byte => toHex(byte, 2)).join('');
