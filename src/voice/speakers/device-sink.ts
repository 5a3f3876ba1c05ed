import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { durationMs } from '../audio/blocks.ts';
import { toS16le } from '../audio/s16le.ts';
import { monotonicTimer, type Sleep } from '../audio/timer.ts';
import { encodeWav } from '../audio/wav-encode.ts';
import { startProgram } from '../child-program.ts';
import { VoiceError } from '../errors.ts';
import type { AudioSink, Pcm } from '../ports.ts';
import type { Player } from './players.ts';

/** A player that takes so much longer than its sound hangs. */
const GRACE_MS = 5_000;

/** The loudspeaker, through one of the system's players, started anew for each sound. */
export class DeviceSink implements AudioSink {
  readonly description: string;
  readonly #player: Player;
  readonly #env: NodeJS.ProcessEnv;
  readonly #sleep: Sleep;
  #cutting = new AbortController();

  constructor(player: Player, env: NodeJS.ProcessEnv, sleep: Sleep = monotonicTimer.sleep) {
    this.description = `loudspeaker, through ${player.program}`;
    this.#player = player;
    this.#env = env;
    this.#sleep = sleep;
  }

  /** @throws VoiceError (by rejection) when the player fails or hangs: the sentence was then not heard. */
  async play(sound: Pcm, _label: string): Promise<void> {
    const why = await this.tryPlaying(sound);
    if (why !== undefined) {
      throw new VoiceError(
        'loudspeakerUnusable',
        `The loudspeaker failed (${why}); connect one, or read the sentence on the screen.`,
      );
    }
  }

  /** Plays; gives back in a few words why it was not heard, or nothing when it was, or was cut. */
  async tryPlaying(sound: Pcm): Promise<string | undefined> {
    this.#cutting = new AbortController();
    const { signal } = this.#cutting;
    if (this.#player.feed !== 'file') return this.#run(sound, '', signal);
    const folder = await mkdtemp(join(tmpdir(), 'first-fire-'));
    try {
      const path = join(folder, 'speech.wav');
      await writeFile(path, encodeWav(sound));
      return await this.#run(sound, path, signal);
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  }

  cut(): void {
    this.#cutting.abort();
  }

  async close(): Promise<void> {
    this.cut();
  }

  async #run(sound: Pcm, path: string, signal: AbortSignal): Promise<string | undefined> {
    if (signal.aborted) return undefined;
    const { program, feed } = this.#player;
    const child = startProgram({ program, args: this.#player.args(sound, path) }, this.#env);
    child.output.resume();
    child.input.end(feed === 'file' ? undefined : feed === 'raw' ? toS16le(sound.samples) : encodeWav(sound));
    signal.addEventListener('abort', child.kill, { once: true });
    const ended = new AbortController();
    let hangs = false;
    const limit = this.#sleep(durationMs(sound) + GRACE_MS, ended.signal).then(() => {
      hangs = !ended.signal.aborted;
      if (hangs) child.kill();
    });
    const { well, why } = await child.ended;
    ended.abort();
    await limit;
    signal.removeEventListener('abort', child.kill);
    if (signal.aborted) return undefined;
    if (hangs) return `${program} did not come to its end`;
    return well ? undefined : why;
  }
}
