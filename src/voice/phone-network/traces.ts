/** No word yet. */
export const noTrace = -1;

/**
 * The words on the ways of a search, each linked to the one before it: many ways share their beginnings. Kept in flat
 * lists, since a search makes thousands a second.
 */
export class Traces {
  private count = 0;
  private before = new Int32Array(1024);
  private states = new Int32Array(1024);
  private hashes = new Int32Array(1024);
  private frames = new Int32Array(1024);
  private scores = new Float64Array(1024);

  clear(): void {
    this.count = 0;
  }

  get size(): number {
    return this.count;
  }

  /** The same for all ways through the same words. */
  hashOf(trace: number): number {
    return trace === noTrace ? 0 : (this.hashes[trace] as number);
  }

  hashWith(trace: number, word: number): number {
    const mixed = Math.imul(this.hashOf(trace) ^ (word + 1), 0x9e3779b1);
    return (mixed ^ (mixed >>> 15)) | 1;
  }

  /**
   * @param state where the word begins
   * @param frame in which it begins
   * @param score of the way before it
   */
  add(trace: number, state: number, word: number, frame: number, score: number): number {
    if (this.count === this.before.length) this.grow();
    const made = this.count++;
    this.before[made] = trace;
    this.states[made] = state;
    this.hashes[made] = this.hashWith(trace, word);
    this.frames[made] = frame;
    this.scores[made] = score;
    return made;
  }

  private grow(): void {
    const larger = <T extends Int32Array | Float64Array>(list: T, made: T): T => {
      made.set(list);
      return made;
    };
    const length = this.count * 2;
    this.before = larger(this.before, new Int32Array(length));
    this.states = larger(this.states, new Int32Array(length));
    this.hashes = larger(this.hashes, new Int32Array(length));
    this.frames = larger(this.frames, new Int32Array(length));
    this.scores = larger(this.scores, new Float64Array(length));
  }

  beforeOf(trace: number): number {
    return this.before[trace] as number;
  }

  /** The words up to a trace, the first of them first. */
  upTo(trace: number): readonly { readonly state: number; readonly frame: number; readonly score: number }[] {
    const words = [];
    for (let at = trace; at !== noTrace; at = this.before[at] as number) {
      words.push({
        state: this.states[at] as number,
        frame: this.frames[at] as number,
        score: this.scores[at] as number,
      });
    }
    return words.reverse();
  }

  /**
   * Forgets all but what the given traces stand on.
   * @param live traces that are needed, renumbered in place
   */
  keepOnly(live: Int32Array): void {
    const kept = new Int32Array(this.count).fill(noTrace);
    for (const trace of live) {
      for (let at = trace; at !== noTrace && kept[at] === noTrace; at = this.before[at] as number)
        kept[at] = 0;
    }
    let count = 0;
    for (let at = 0; at < this.count; at++) {
      if (kept[at] === noTrace) continue;
      kept[at] = count;
      const before = this.before[at] as number;
      this.before[count] = before === noTrace ? noTrace : (kept[before] as number);
      this.states[count] = this.states[at] as number;
      this.hashes[count] = this.hashes[at] as number;
      this.frames[count] = this.frames[at] as number;
      this.scores[count] = this.scores[at] as number;
      count++;
    }
    this.count = count;
    live.forEach((trace, i) => {
      if (trace !== noTrace) live[i] = kept[trace] as number;
    });
  }
}
