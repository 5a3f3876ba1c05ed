export function concatenateBytes(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

/** Whether the bytes stand one after the other anywhere in `all`. */
export function containsBytes(all: Uint8Array, wanted: Uint8Array): boolean {
  const [first] = wanted;
  if (first === undefined) return true;
  for (let at = all.indexOf(first); at >= 0; at = all.indexOf(first, at + 1)) {
    if (wanted.every((byte, i) => all[at + i] === byte)) return true;
  }
  return false;
}

const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let value = n;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** CRC-32 as in zip and gzip (ISO 3309, the polynomial reflected). */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ (table[(sum ^ byte) & 0xff] ?? 0);
  return (sum ^ 0xffffffff) >>> 0;
}

/** SHA-256 as lower-case hexadecimal digits. */
export async function sha256Of(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, byte => byte.toString(16).padStart(2, '0')).join('');
}
