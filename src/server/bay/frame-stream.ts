import { randomUUID } from 'node:crypto';
import { type BayState, type Frame, patchBetween } from '../protocol/index.ts';

/** Frames kept for faces that were away; longer away, and they get the whole state. */
export const FRAMES_KEPT = 1000;

type Unnumbered = Frame extends infer Each ? (Each extends Frame ? Omit<Each, 'seq'> : never) : never;

interface Snapshot {
  readonly seq: number;
  readonly sessionMs: number;
  readonly state: BayState;
}

/** What a bay tells its faces: numbered without a gap, the same to all, made into text once. */
export class FrameStream {
  readonly epoch = randomUUID();
  #seq = 0;
  #kept: string[] = [];
  #state: BayState;
  #sessionMs = 0;
  readonly #listeners = new Set<(text: string) => void>();

  constructor(state: BayState) {
    this.#state = state;
  }

  get seq(): number {
    return this.#seq;
  }

  /** The state as it was told last; the frames after `seq` go on from it. */
  snapshot(): Snapshot {
    return { seq: this.#seq, sessionMs: this.#sessionMs, state: this.#state };
  }

  /** Tells what changed, if anything did. */
  show(state: BayState, sessionMs: number): void {
    const patch = patchBetween(this.#state, state);
    if (patch === null) return;
    this.#state = state;
    this.#sessionMs = sessionMs;
    this.send({ type: 'patch', sessionMs, patch });
  }

  /** Sends a frame to all; returns its number. */
  send(frame: Unnumbered): number {
    this.#seq += 1;
    const text = JSON.stringify({ ...frame, seq: this.#seq });
    this.#kept.push(text);
    if (this.#kept.length > FRAMES_KEPT) this.#kept.shift();
    for (const listener of this.#listeners) listener(text);
    return this.#seq;
  }

  /** The frames after this number, or null when they are not all there any more, or never were. */
  since(seq: number): readonly string[] | null {
    const missed = this.#seq - seq;
    if (missed < 0 || missed > this.#kept.length) return null;
    return missed === 0 ? [] : this.#kept.slice(-missed);
  }

  listen(listener: (text: string) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }
}
