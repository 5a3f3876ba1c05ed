import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import { systemCause } from '../../files/cause.ts';
import { VoiceError } from '../errors.ts';
import type { AudioSource, Pcm, SourceEnd } from '../ports.ts';
import { blocksOf, durationMs } from './blocks.ts';
import { monotonicTimer, type Timer } from './timer.ts';
import { decodeWav } from './wav.ts';

/** `realTime` delivers as a microphone would; `fast` as soon as the listener has taken the block before. */
export type Pace = 'realTime' | 'fast';

/**
 * A WAV file as a source of sound, read whole (an hour at 16 kHz takes about 350 MB while it is opened).
 * @throws VoiceError when the file cannot be read or is no sound that `decodeWav` takes.
 */
export async function openWavFile(
  path: string,
  pace: Pace,
  timer: Timer = monotonicTimer,
): Promise<AudioSource> {
  const bytes = await readFile(path).catch((cause: unknown) => {
    throw new VoiceError(
      'fileUnusable',
      `${path} cannot be read: ${systemCause(cause)}; check the path and that you may read it.`,
    );
  });
  const sound = decodeWav(bytes, path);
  const layout = sound.channels === 2 ? 'stereo' : 'mono';
  return new SoundSource(`${basename(path)}, ${sound.sampleRateHz} Hz ${layout}`, sound, pace, timer);
}

/** Sound in memory, handed out in 20 ms blocks. */
export class SoundSource implements AudioSource {
  readonly description: string;
  readonly #sound: Pcm;
  readonly #pace: Pace;
  readonly #timer: Timer;
  readonly #closing = new AbortController();

  constructor(description: string, sound: Pcm, pace: Pace, timer: Timer = monotonicTimer) {
    this.description = description;
    this.#sound = sound;
    this.#pace = pace;
    this.#timer = timer;
  }

  async run(onBlock: (block: Pcm) => Promise<void>): Promise<SourceEnd> {
    const { signal } = this.#closing;
    const startMs = this.#timer.nowMs();
    let deliveredMs = 0;
    for (const block of blocksOf(this.#sound)) {
      deliveredMs += durationMs(block);
      if (this.#pace === 'realTime') {
        // Counted from the start, never from the block before: what one block is late does not add up.
        await this.#timer.sleep(startMs + deliveredMs - this.#timer.nowMs(), signal);
      } else {
        // Lets keys, timers and `close` have their turn between blocks.
        await setImmediate();
      }
      if (signal.aborted) break;
      await onBlock(block);
    }
    return { kind: 'finished' };
  }

  close(): void {
    this.#closing.abort();
  }
}
