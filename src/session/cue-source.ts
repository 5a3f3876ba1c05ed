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

/** A reply that finds no question for so long will never find one. */
const PATIENCE_MS = 2 * 3600 * 1000;

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
    for (const cue of this.#cues) {
      let quietMs = 0;
      let waitedMs = 0;
      while (!this.#closed && (quietMs < cue.afterMs || quietMs === 0)) {
        const { key, speaking } = this.#listening();
        quietMs = key === cue.when && !speaking ? quietMs + BLOCK_MS : 0;
        waitedMs += BLOCK_MS;
        if (waitedMs > PATIENCE_MS)
          return {
            kind: 'lost',
            reason: `"${cue.says}" waits for ${cue.when}, but the session is at ${key}.`,
          };
        await deliver(silence());
      }
      for (const block of blocksOf(cue.sound)) if (!this.#closed) await deliver(block);
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
