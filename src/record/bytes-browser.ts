import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/** As in Node. Not the browser's own digest: that answers later, and the chain is sealed at once. */
export const sha256Hex = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)));

/** SHA-256 of the bytes without those from `cutStart` up to `cutEnd`. */
export const sha256HexWithout = (bytes: Uint8Array, cutStart: number, cutEnd: number): string =>
  bytesToHex(sha256.create().update(bytes.subarray(0, cutStart)).update(bytes.subarray(cutEnd)).digest());

/** The bytes as a text of one character each (those from 0x80 to 0x9f are other ones than in Node). */
export const byteString = (bytes: Uint8Array): string => new TextDecoder('latin1').decode(bytes);
