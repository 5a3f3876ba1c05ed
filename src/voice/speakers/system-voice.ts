import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monotonicTimer, type Sleep } from '../audio/timer.ts';
import { decodeWav } from '../audio/wav.ts';
import { type Command, startProgram } from '../child-program.ts';
import { VoiceError } from '../errors.ts';
import type { SystemSynthesizer } from '../languages/language.ts';
import type { Pcm, Synthesizer } from '../ports.ts';
import { isInstalled, type Surroundings, thisComputer } from '../programs.ts';

/** A sentence that takes this long to make hangs. */
const TIME_LIMIT_MS = 20_000;

/** Speaks through a synthesizer of the system. */
export class SystemVoice implements Synthesizer {
  readonly #synthesizer: SystemSynthesizer;
  readonly #env: NodeJS.ProcessEnv;
  readonly #sleep: Sleep;

  constructor(
    synthesizer: SystemSynthesizer,
    env: NodeJS.ProcessEnv = process.env,
    sleep: Sleep = monotonicTimer.sleep,
  ) {
    this.#synthesizer = synthesizer;
    this.#env = env;
    this.#sleep = sleep;
  }

  /** @throws VoiceError (by rejection) when the sentence cannot be spoken. */
  async synthesize(text: string): Promise<Pcm> {
    const folder = await mkdtemp(join(tmpdir(), 'first-fire-'));
    const path = join(folder, 'sentence.wav');
    try {
      const { program } = this.#synthesizer;
      const why = await this.#run({ program, args: this.#synthesizer.args(path) }, text);
      if (why !== undefined) throw unspoken(why);
      const { samples, sampleRateHz } = decodeWav(await readFile(path), path);
      return { samples, sampleRateHz };
    } catch (cause) {
      throw cause instanceof VoiceError ? cause : unspoken(String(cause));
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  }

  /** Gives back in a few words why no sound was made, or nothing when it was. */
  async #run(command: Command, text: string): Promise<string | undefined> {
    const child = startProgram(command, this.#env);
    child.input.end(`${text}\n`);
    child.output.resume();
    const ended = new AbortController();
    const limit = this.#sleep(TIME_LIMIT_MS, ended.signal).then(() => {
      if (ended.signal.aborted) return;
      child.kill();
    });
    const { well, why } = await child.ended;
    ended.abort();
    await limit.catch(() => undefined);
    return well ? undefined : why;
  }
}

const unspoken = (why: string) =>
  new VoiceError(
    'speechUnusable',
    `The speech synthesizer failed (${why}); read the sentence on the screen.`,
  );

/** The first of some synthesizers that is installed, if any. */
export const firstInstalled = (
  synthesizers: readonly SystemSynthesizer[],
  surroundings: Surroundings = thisComputer,
): SystemSynthesizer | undefined => synthesizers.find(({ program }) => isInstalled(program, surroundings));
