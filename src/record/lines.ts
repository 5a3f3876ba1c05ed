import type { FileHandle } from 'node:fs/promises';
import { MAX_LINE_BYTES } from './entry.ts';

const CHUNK_BYTES = 256 * 1024;
const NEWLINE = 0x0a;

export interface RawLine {
  /** Without the newline. */
  readonly bytes: Buffer;
  /** False for what stands behind the last newline. */
  readonly terminated: boolean;
  /** Position in the file behind the line and its newline. */
  readonly endByte: number;
}

/**
 * Reads the lines of a file in batches, holding no more than a chunk and one line.
 * Reading ends early at a line longer than `MAX_LINE_BYTES`: it comes cut, as not terminated, yet longer
 * than any line may be.
 * @param sizeBytes how much to read: what is appended meanwhile is left out
 */
export async function* readLines(file: FileHandle, sizeBytes: number): AsyncGenerator<RawLine[]> {
  let carried: Buffer[] = [];
  let carriedBytes = 0;
  let position = 0;
  while (position < sizeBytes && carriedBytes <= MAX_LINE_BYTES) {
    const wanted = Math.min(CHUNK_BYTES, sizeBytes - position);
    // A fresh buffer each time, because lines are views into it.
    const { bytesRead, buffer } = await file.read(Buffer.allocUnsafe(wanted), 0, wanted, position);
    if (bytesRead === 0) break;
    const chunk = buffer.subarray(0, bytesRead);
    const lines: RawLine[] = [];
    let start = 0;
    for (let end = chunk.indexOf(NEWLINE); end >= 0; end = chunk.indexOf(NEWLINE, start)) {
      const piece = chunk.subarray(start, end);
      const bytes = carriedBytes === 0 ? piece : Buffer.concat([...carried, piece]);
      start = end + 1;
      lines.push({ bytes, terminated: true, endByte: position + start });
      carried = [];
      carriedBytes = 0;
    }
    if (start < bytesRead) carried.push(chunk.subarray(start));
    carriedBytes += bytesRead - start;
    position += bytesRead;
    yield lines;
  }
  if (carriedBytes > 0) yield [{ bytes: Buffer.concat(carried), terminated: false, endByte: position }];
}
