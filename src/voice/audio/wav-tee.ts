import { constants } from 'node:fs';
import { access, type FileHandle, open } from 'node:fs/promises';
import { dirname } from 'node:path';
import { systemCause } from '../../files/cause.ts';
import { VoiceError } from '../errors.ts';
import type { AudioSource, Pcm, SourceEnd } from '../ports.ts';
import { toS16le } from './s16le.ts';
import { wavHeader } from './wav-encode.ts';

const explain = (path: string, cause: unknown): string =>
  `The sound is not kept in ${path} (${systemCause(cause)}); make room or name another file for the next session.`;

/**
 * Looks whether sound can be kept there, before anything is begun.
 * @throws VoiceError when there is such a file already, or none can be made
 */
export async function mayKeepAsWav(path: string): Promise<void> {
  const there = await access(path).then(
    () => true,
    () => false,
  );
  if (there) throw new VoiceError('fileUnusable', explain(path, 'there is such a file already'));
  await access(dirname(path), constants.W_OK).catch((cause: unknown) => {
    throw new VoiceError('fileUnusable', explain(path, cause));
  });
}

/**
 * A source that is heard as before, and kept as one WAV file on the way. The length is filled in at the end; a
 * file that a power loss cut off stays readable without it. An existing file is never overwritten.
 * @param onProblem told once, in one sentence, when keeping fails midway: hearing goes on, it matters more.
 * @throws VoiceError when the file cannot be made.
 */
export async function keepAsWav(
  source: AudioSource,
  path: string,
  onProblem: (sentence: string) => void,
): Promise<AudioSource> {
  const file = await open(path, 'wx').catch((cause: unknown) => {
    throw new VoiceError('fileUnusable', explain(path, cause));
  });
  return new WavTee(source, file, cause => onProblem(explain(path, cause)));
}

class WavTee implements AudioSource {
  readonly description: string;
  readonly #source: AudioSource;
  readonly #onProblem: (cause: unknown) => void;
  #file: FileHandle | undefined;
  #sampleRateHz: number | undefined;
  #dataBytes = 0;

  constructor(source: AudioSource, file: FileHandle, onProblem: (cause: unknown) => void) {
    this.description = source.description;
    this.#source = source;
    this.#file = file;
    this.#onProblem = onProblem;
  }

  async run(onBlock: (block: Pcm) => Promise<void>): Promise<SourceEnd> {
    try {
      return await this.#source.run(async block => {
        await this.#write(file => this.#append(file, block));
        await onBlock(block);
      });
    } finally {
      await this.#write(file => this.#finish(file));
    }
  }

  close(): void {
    this.#source.close();
  }

  /** Does something with the file; after the first failure, nothing more. */
  async #write(action: (file: FileHandle) => Promise<void>): Promise<void> {
    const file = this.#file;
    if (!file) return;
    try {
      await action(file);
    } catch (cause) {
      this.#file = undefined;
      await file.close().catch(() => undefined);
      this.#onProblem(cause);
    }
  }

  async #append(file: FileHandle, { samples, sampleRateHz }: Pcm): Promise<void> {
    if (this.#sampleRateHz === undefined) {
      this.#sampleRateHz = sampleRateHz;
      await file.write(wavHeader(sampleRateHz));
    }
    if (sampleRateHz !== this.#sampleRateHz) {
      throw new VoiceError(
        'soundUnusable',
        `the rate changed from ${this.#sampleRateHz} to ${sampleRateHz} Hz`,
      );
    }
    const data = toS16le(samples);
    await file.write(data);
    this.#dataBytes += data.length;
  }

  async #finish(file: FileHandle): Promise<void> {
    if (this.#sampleRateHz !== undefined)
      await file.write(wavHeader(this.#sampleRateHz, this.#dataBytes), 0, 44, 0);
    await file.close();
    this.#file = undefined;
  }
}
