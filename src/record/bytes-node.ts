import { hash } from 'node:crypto';

/** SHA-256 of a text's UTF-8 bytes, 64 lower-case hex digits. */
export const sha256Hex = (text: string): string => hash('sha256', text, 'hex');

let scratch = Buffer.alloc(4096);

/** SHA-256 of the bytes without those from `cutStart` up to `cutEnd`. */
export function sha256HexWithout(bytes: Uint8Array, cutStart: number, cutEnd: number): string {
  const length = bytes.length - (cutEnd - cutStart);
  // One call for all of it costs half of what two into a hash object do, the copy included.
  if (scratch.length < length) scratch = Buffer.alloc(2 * length);
  scratch.set(bytes.subarray(0, cutStart));
  scratch.set(bytes.subarray(cutEnd), cutStart);
  return hash('sha256', scratch.subarray(0, length), 'hex');
}

/** The bytes as a text of one character each. */
export const byteString = (bytes: Uint8Array): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1');
