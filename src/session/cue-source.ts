import { BLOCK_MS, blocksOf } from '../voice/audio/blocks.ts';
import type { AudioSource, Pcm, SourceEnd } from '../voice/ports.ts';
import type { Cue } from './cue-sheet.ts';

/** What the recorded people go by: what is asked now, and whether the tool is silent. */
export interface Listening {
  readonly key: string;
  readonly speaking: boolean;
}

export interface CueTiming {
  nowMs(): number;
  /** Waits out one block in real time; absent when the sound is heard as fast as it can be taken. */
  readonly waitUntilMs?: (atMs: number) => Promise<void>;
}

/** Not understood, people repeat themselves after this much silence, and not for ever. */
const REPEAT_AFTER_MS = 2500;
const TIMES_SAID = 3;

/** A reply that finds no question for so long will never find one. */
const PATIENCE_MS = 30 * 60 * 1000;

const BACKGROUND_RATE_HZ = 16_000;
const BACKGROUND_AMPLITUDE = 1 / 32_768;
const SEED = 20_231;

/** Near-silence as a room has it, the same on every run: digital zero is a sound that no microphone gives. */
function background(): () => Pcm {
  let state = SEED;
  const length = (BACKGROUND_RATE_HZ * BLOCK_MS) / 1000;
  return () => ({
    sampleRateHz: BACKGROUND_RATE_HZ,
    samples: Float32Array.from({ length }, () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return (state / 2 ** 31 - 1) * BACKGROUND_AMPLITUDE;
    }),
  });
}

/** People on a recording: each says the next thing once it is asked for and the tool has fallen silent. */
export class CueSource implements AudioSource {
  readonly description: string;
  readonly #cues: readonly Cue[];
  readonly #listening: () => Listening;
  readonly #timing: CueTiming;
  #closed = false;

  constructor(description: string, cues: readonly Cue[], listening: () => Listening, timing: CueTiming) {
    this.description = description;
    this.#cues = cues;
    this.#listening = listening;
    this.#timing = timing;
  }

  async run(onBlock: (block: Pcm) => Promise<void>): Promise<SourceEnd> {
    const silence = background();
    const startMs = this.#timing.nowMs();
    let blocks = 0;
    const deliver = async (block: Pcm) => {
      blocks += 1;
      await this.#timing.waitUntilMs?.(startMs + blocks * BLOCK_MS);
      await onBlock(block);
    };
    /** Waits until the tool has been silent so long in this state; false when it left the state instead. */
    const quietIn = async (key: string, forMs: number, patienceMs: number): Promise<boolean> => {
      let quietMs = 0;
      for (let waitedMs = 0; !this.#closed && waitedMs < patienceMs; waitedMs += BLOCK_MS) {
        const now = this.#listening();
        if (now.key !== key && forMs === REPEAT_AFTER_MS) return false;
        quietMs = now.key === key && !now.speaking ? quietMs + BLOCK_MS : 0;
        if (quietMs > forMs) return true;
        await deliver(silence());
      }
      return false;
    };
    for (const cue of this.#cues) {
      if (!(await quietIn(cue.when, cue.afterMs, PATIENCE_MS)) && !this.#closed) {
        const { key } = this.#listening();
        return { kind: 'lost', reason: `"${cue.says}" waits for ${cue.when}, but the session is at ${key}.` };
      }
      // Asked again, people say it again.
      for (let times = 0; times < TIMES_SAID && !this.#closed; times += 1) {
        for (const block of blocksOf(cue.sound)) await deliver(block);
        if (!(await quietIn(cue.when, REPEAT_AFTER_MS, PATIENCE_MS))) break;
      }
    }
    // The people have said all they had to say; the room goes on until the session is over.
    for (let afterMs = 0; !this.#closed && afterMs < TAIL_MS; afterMs += BLOCK_MS) await deliver(silence());
    return { kind: 'finished' };
  }

  close(): void {
    this.#closed = true;
  }
}

const TAIL_MS = 5000;
