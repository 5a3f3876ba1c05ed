import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { systemCause } from '../../files/cause.ts';
import { openMicrophone } from '../../voice/audio/capture-source.ts';
import { decodeWav } from '../../voice/audio/wav.ts';
import { concatenate } from '../../voice/concatenate.ts';
import { createLoudSpeech } from '../../voice/ear/loud-speech.ts';
import { usualSilenceMs } from '../../voice/ear/patience.ts';
import { stepLength, stepMs } from '../../voice/ear/sound.ts';
import { VoiceError } from '../../voice/errors.ts';
import { FrameBuffer } from '../../voice/frame-buffer.ts';
import type { Pcm } from '../../voice/ports.ts';
import { createResampler, speechRateHz } from '../../voice/resample.ts';
import type { Prompt } from '../../voice/speaker-profile/trial.ts';
import type { Reading } from './listen.ts';

/** After this much sound without a word the next prompt comes. */
const LONGEST_S = 12;

/** Readings that were recorded before: one WAV file a prompt, in the order of their names. */
export async function readingsFrom(folder: string, prompts: readonly Prompt[]): Promise<readonly Reading[]> {
  const names = (
    await readdir(folder).catch((cause: unknown) => {
      throw new VoiceError(
        'fileUnusable',
        `${folder} cannot be read: ${systemCause(cause)}; give a folder of WAV files.`,
      );
    })
  )
    .filter(name => name.toLowerCase().endsWith('.wav'))
    .sort();
  if (names.length !== prompts.length)
    throw new VoiceError(
      'fileUnusable',
      `${folder} has ${names.length} WAV files; give ${prompts.length}, one for each prompt in their order: ${prompts.map(({ text }) => `"${text}"`).join(', ')}.`,
    );
  const sounds = await Promise.all(
    names.map(async name => decodeWav(await readFile(join(folder, name)), name)),
  );
  return prompts.map((prompt, i) => ({
    prompt,
    sound: sounds[i] ?? { samples: new Float32Array(), sampleRateHz: speechRateHz },
  }));
}

/** Whether somebody has spoken in a stream at 16 kHz, and is silent again. */
function createSpokenAndSilent(): (samples: Float32Array) => boolean {
  const speech = createLoudSpeech();
  const steps = new FrameBuffer(stepLength);
  let silentMs: number | undefined;
  return samples => {
    for (const step of steps.next(samples)) {
      const now = speech.next({ raw: step, heard: step, moments: [] });
      if (now.begins || (now.speech && silentMs !== undefined)) silentMs = 0;
      else if (silentMs !== undefined) silentMs += stepMs;
    }
    return silentMs !== undefined && silentMs >= usualSilenceMs;
  };
}

/**
 * Shows one prompt after the other and records what is said, until whoever reads is silent again.
 * @throws VoiceError when there is no microphone, or it is lost
 */
export async function readAloud(
  prompts: readonly Prompt[],
  device: string | undefined,
  show: (line: string) => void,
): Promise<readonly Reading[]> {
  const source = await openMicrophone(device === undefined ? {} : { device });
  const resampler = createResampler();
  const readings: Reading[] = [];
  let isThrough = createSpokenAndSilent();
  let pieces: Float32Array[] = [];
  let samples = 0;
  const ask = () => {
    const next = prompts[readings.length];
    if (next) show(`  ${readings.length + 1} of ${prompts.length}: say "${next.text}"`);
    else source.close();
  };
  const take = async (block: Pcm): Promise<void> => {
    const prompt = prompts[readings.length];
    if (!prompt) return;
    const piece = await resampler.next(block);
    pieces.push(piece);
    samples += piece.length;
    if (!isThrough(piece) && samples < LONGEST_S * speechRateHz) return;
    readings.push({ prompt, sound: { samples: concatenate(pieces), sampleRateHz: speechRateHz } });
    [isThrough, pieces, samples] = [createSpokenAndSilent(), [], 0];
    ask();
  };
  ask();
  const end = await source.run(take);
  resampler.close();
  if (end.kind === 'lost') throw new VoiceError('microphoneUnusable', end.reason);
  return readings;
}
