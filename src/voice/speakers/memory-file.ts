/** A file in memory that grows as it is written, with a position like a file on disk. */
export class MemoryFile {
  #bytes = new Uint8Array(65_536);
  #length = 0;
  #position = 0;

  write(part: Uint8Array): void {
    const end = this.#position + part.length;
    if (end > this.#bytes.length) {
      const larger = new Uint8Array(Math.max(end, this.#bytes.length * 2));
      larger.set(this.#bytes);
      this.#bytes = larger;
    }
    this.#bytes.set(part, this.#position);
    this.#position = end;
    this.#length = Math.max(this.#length, end);
  }

  /** @param whence 0 from the start, 1 from here, 2 from the end. Returns the new position. */
  seek(offset: number, whence: number): number {
    const from = [0, this.#position, this.#length][whence] ?? 0;
    this.#position = Math.max(0, from + offset);
    return this.#position;
  }

  bytes(): Uint8Array {
    return this.#bytes.slice(0, this.#length);
  }
}
