import { gunzipSync } from 'node:zlib';

/** The bytes of an archived record. */
export const unpack = (packed: Uint8Array): Buffer => gunzipSync(packed);

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
