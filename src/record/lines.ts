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
  const cutter = new LineCutter();
  while (cutter.position < sizeBytes && cutter.goesOn) {
    const wanted = Math.min(CHUNK_BYTES, sizeBytes - cutter.position);
    // A fresh buffer each time, because lines are views into it.
    const { bytesRead, buffer } = await file.read(Buffer.allocUnsafe(wanted), 0, wanted, cutter.position);
    if (bytesRead === 0) break;
    yield cutter.cut(buffer.subarray(0, bytesRead));
  }
  yield cutter.rest();
}

/** The same for bytes that are in memory. */
export async function* linesIn(bytes: Buffer): AsyncGenerator<RawLine[]> {
  const cutter = new LineCutter();
  while (cutter.position < bytes.length && cutter.goesOn)
    yield cutter.cut(bytes.subarray(cutter.position, cutter.position + CHUNK_BYTES));
  yield cutter.rest();
}

class LineCutter {
  /** Bytes taken in. */
  position = 0;
  #carried: Buffer[] = [];
  #carriedBytes = 0;

  get goesOn(): boolean {
    return this.#carriedBytes <= MAX_LINE_BYTES;
  }

  /** The lines that end in a chunk. */
  cut(chunk: Buffer): RawLine[] {
    const lines: RawLine[] = [];
    let start = 0;
    for (let end = chunk.indexOf(NEWLINE); end >= 0; end = chunk.indexOf(NEWLINE, start)) {
      const piece = chunk.subarray(start, end);
      const bytes = this.#carriedBytes === 0 ? piece : Buffer.concat([...this.#carried, piece]);
      start = end + 1;
      lines.push({ bytes, terminated: true, endByte: this.position + start });
      this.#carried = [];
      this.#carriedBytes = 0;
    }
    if (start < chunk.length) this.#carried.push(chunk.subarray(start));
    this.#carriedBytes += chunk.length - start;
    this.position += chunk.length;
    return lines;
  }

  /** What stands behind the last newline. */
  rest(): RawLine[] {
    if (this.#carriedBytes === 0) return [];
    return [{ bytes: Buffer.concat(this.#carried), terminated: false, endByte: this.position }];
  }
}
