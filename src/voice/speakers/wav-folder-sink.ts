import { constants } from 'node:fs';
import { access, mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { systemCause } from '../../files/cause.ts';
import type { Sleep } from '../audio/timer.ts';
import { encodeWav } from '../audio/wav-encode.ts';
import { VoiceError } from '../errors.ts';
import type { AudioSink, Pcm } from '../ports.ts';
import { SilentSink } from './silent-sink.ts';

const unwritable = (folder: string) => (cause: unknown) => {
  throw new VoiceError(
    'fileUnusable',
    `Speech cannot be written to ${folder} (${systemCause(cause)}); name a folder that you may write to.`,
  );
};

/**
 * Speech as numbered WAV files in a folder, which is made when it is missing; numbering goes on after the
 * files that are there.
 * @throws VoiceError when the folder cannot be made, read or written to.
 */
export async function openWavFolder(folder: string, sleep: Sleep): Promise<AudioSink> {
  await mkdir(folder, { recursive: true }).catch(unwritable(folder));
  await access(folder, constants.W_OK).catch(unwritable(folder));
  const present = await readdir(folder).catch(unwritable(folder));
  const numbers = present.map(name => Number(/^(\d+)-.*\.wav$/.exec(name)?.[1] ?? 0));
  return new WavFolderSink(
    folder,
    numbers.reduce((highest, number) => Math.max(highest, number), 0),
    sleep,
  );
}

/** A sound cut short is in its file whole: the file is written before the wait. */
class WavFolderSink extends SilentSink {
  readonly #folder: string;
  #written: number;

  constructor(folder: string, written: number, sleep: Sleep) {
    super(sleep, `WAV files in ${folder}`);
    this.#folder = folder;
    this.#written = written;
  }

  /** @throws VoiceError (by rejection) when the file cannot be written. */
  override async play(sound: Pcm, label: string): Promise<void> {
    const number = String(++this.#written).padStart(4, '0');
    const path = join(this.#folder, `${number}-${fileLabel(label)}.wav`);
    const writing = writeFile(path, encodeWav(sound)).catch((cause: unknown) => {
      this.cut();
      return unwritable(this.#folder)(cause);
    });
    await Promise.all([super.play(sound, label), writing]);
  }
}

/** Letters, digits and dots as they are, all else a dash. */
const fileLabel = (label: string): string =>
  label
    .replaceAll(/[^\p{Letter}\p{Number}.]+/gu, '-')
    .replaceAll(/^[-.]+|[-.]+$/g, '')
    .slice(0, 60) || 'speech';
