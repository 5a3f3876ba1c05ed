import { startProgram } from '../child-program.ts';
import { VoiceError } from '../errors.ts';
import type { AudioSource, Pcm, SourceEnd } from '../ports.ts';
import { isInstalled, type Surroundings, thisComputer } from '../programs.ts';
import { blocksOf } from './blocks.ts';
import {
  CAPTURE_RATE_HZ,
  type Recorder,
  recordersFor,
  WINDOWS_LISTING,
  windowsMicrophone,
} from './recorders.ts';
import { fromS16le } from './s16le.ts';
import { monotonicTimer, type Sleep } from './timer.ts';

/** A recorder that says nothing for so long has lost its microphone. */
const SILENT_LIMIT_MS = 3_000;
const REMEDY = 'connect a microphone and allow its use, or answer by keys';

export interface CaptureOptions {
  /** The system's own name of a microphone; its default without. */
  readonly device?: string;
  readonly surroundings?: Surroundings;
  readonly sleep?: Sleep;
}

/**
 * The microphone, through the recorder this system has.
 * @throws VoiceError when no recorder is installed, or on Windows when no microphone is listed.
 */
export async function openMicrophone(options: CaptureOptions = {}): Promise<AudioSource> {
  const { surroundings = thisComputer, sleep = monotonicTimer.sleep } = options;
  const { platform } = surroundings;
  const device = options.device ?? (platform === 'win32' ? await askWindows(surroundings) : undefined);
  const possible = recordersFor(platform, device);
  const installed = possible.filter(({ program }) => isInstalled(program, surroundings));
  if (installed.length === 0) {
    const known = [...recordersFor(platform), ...recordersFor(platform, 'any')];
    const names = [...new Set(known.map(({ program }) => program))].join(', ');
    throw new VoiceError(
      'microphoneUnusable',
      `No sound recorder is installed (looked for ${names || `one for ${platform}`}); install one, or answer by keys.`,
    );
  }
  return new CaptureSource(installed, surroundings.env, sleep);
}

/** Captures with the first recorder that delivers; one that never does is passed over. */
export class CaptureSource implements AudioSource {
  readonly description: string;
  readonly #recorders: readonly Recorder[];
  readonly #env: NodeJS.ProcessEnv;
  readonly #sleep: Sleep;
  readonly #closing = new AbortController();

  constructor(recorders: readonly Recorder[], env: NodeJS.ProcessEnv, sleep: Sleep) {
    this.description = `microphone, ${CAPTURE_RATE_HZ} Hz mono, through ${recorders[0]?.program ?? 'nothing'}`;
    this.#recorders = recorders;
    this.#env = env;
    this.#sleep = sleep;
  }

  /** @throws VoiceError (by rejection) when no recorder delivers any sound at all. */
  async run(onBlock: (block: Pcm) => Promise<void>): Promise<SourceEnd> {
    const refusals: string[] = [];
    for (const recorder of this.#recorders) {
      const { delivered, why } = await this.#listen(recorder, onBlock);
      if (this.#closing.signal.aborted) return { kind: 'finished' };
      if (delivered) return { kind: 'lost', reason: `The microphone was lost (${why}); ${REMEDY}.` };
      refusals.push(shortly(why));
    }
    throw new VoiceError(
      'microphoneUnusable',
      `No microphone gives sound (${refusals.join('; ')}); ${REMEDY}.`,
    );
  }

  close(): void {
    this.#closing.abort();
  }

  async #listen(
    recorder: Recorder,
    onBlock: (block: Pcm) => Promise<void>,
  ): Promise<{ delivered: boolean; why: string }> {
    const { signal } = this.#closing;
    if (signal.aborted) return { delivered: false, why: 'closed' };
    const program = startProgram(recorder, this.#env);
    signal.addEventListener('abort', program.kill, { once: true });
    const chunks: AsyncIterator<Buffer> = program.output[Symbol.asyncIterator]();
    let delivered = false;
    let oddByte = Buffer.alloc(0);
    try {
      for (;;) {
        const next = await this.#inTime(chunks.next());
        if (next === undefined) {
          return { delivered, why: `${recorder.program}: no sound for ${SILENT_LIMIT_MS / 1000} s` };
        }
        if (next.done) return { delivered, why: (await program.ended).why };
        const bytes = Buffer.concat([oddByte, next.value]);
        oddByte = bytes.subarray(bytes.length - (bytes.length % 2));
        for (const block of blocksOf({ samples: fromS16le(bytes), sampleRateHz: CAPTURE_RATE_HZ })) {
          if (signal.aborted) break;
          delivered = true;
          await onBlock(block);
        }
      }
    } finally {
      signal.removeEventListener('abort', program.kill);
      program.kill();
    }
  }

  /** Nothing when it does not come in time. */
  async #inTime<T>(coming: Promise<T>): Promise<T | undefined> {
    const came = new AbortController();
    const limit = this.#sleep(SILENT_LIMIT_MS, came.signal);
    try {
      return await Promise.race([coming, limit.then(() => undefined)]);
    } finally {
      came.abort();
    }
  }
}

/** What a recorder complained of, without the way there: `parec: Connection refused`. */
function shortly(why: string): string {
  const [program = '', ...clauses] = why.split(/:\s+/);
  return [program, ...clauses.slice(-1)].join(': ');
}

/** Nothing when there is no ffmpeg to ask. */
async function askWindows(surroundings: Surroundings): Promise<string | undefined> {
  if (!isInstalled(WINDOWS_LISTING.program, surroundings)) return undefined;
  const program = startProgram(WINDOWS_LISTING, surroundings.env);
  await program.ended;
  const name = windowsMicrophone(program.messages());
  if (name === undefined)
    throw new VoiceError('microphoneUnusable', `Windows lists no microphone; ${REMEDY}.`);
  return name;
}
