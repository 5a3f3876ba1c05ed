import { brotliCompressSync, brotliDecompressSync, constants, gunzipSync } from 'node:zlib';

/** The lowest quality that still finds repetitions: half the time of the quickest gzip, and a tenth smaller. */
const QUALITY = 1;

/** Of the window, as a power of two; a stream then never begins like one of gzip (RFC 7932, section 9.1). */
const WINDOW_BITS = 22;

/** A record's bytes as the archive keeps them. */
export const pack = (bytes: Uint8Array): Buffer =>
  brotliCompressSync(bytes, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: QUALITY,
      [constants.BROTLI_PARAM_LGWIN]: WINDOW_BITS,
      [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
    },
  });

/** RFC 1952, section 2.3.1. Archives were once kept so. */
const isGzip = (packed: Uint8Array): boolean => packed[0] === 0x1f && packed[1] === 0x8b;

/** The bytes of an archived record. */
export const unpack = (packed: Uint8Array): Buffer =>
  isGzip(packed) ? gunzipSync(packed) : brotliDecompressSync(packed);

const NEWLINE = 0x0a;
const HASH_MEMBER =
  /,"hash":"([0-9a-f]{64})","kind":"[^"]*","monoMs":[^"]*,"prev":"[0-9a-f]{64}","seq":\d+,"v":1\}$/;

/** The hash in one line (from 1) of a record whose lines up to there were checked; undefined beyond its end. */
export function hashAtLine(packed: Uint8Array, line: number): string | undefined {
  const bytes = unpack(packed);
  let start = 0;
  for (let at = 1; at < line; at += 1) {
    const end = bytes.indexOf(NEWLINE, start);
    if (end < 0) return undefined;
    start = end + 1;
  }
  const end = bytes.indexOf(NEWLINE, start);
  return HASH_MEMBER.exec(bytes.subarray(start, end < 0 ? bytes.length : end).toString('utf8'))?.[1];
}
