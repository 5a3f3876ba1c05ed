import { spawnSync } from 'node:child_process';
import { createHash, randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { decodeWav } from '../src/voice/audio/wav.ts';
import { encodeWav } from '../src/voice/audio/wav-encode.ts';
import type { Pcm } from '../src/voice/ports.ts';
import { nearSilence } from './near-silence.ts';
import { FRENCH_VOICES, VOICES, type Voice } from './voices.ts';

const RATE_HZ = 16_000;
/** Near-silence before and after the speech: a listener needs to hear that it begins and ends. */
const PADDING_SAMPLES = RATE_HZ / 2;
/** Changes with anything that changes the sound, so that no old file is taken for a new one. */
const RECIPE = 'v1: sox -D rate 16000, half a second of near-silence around';
const CACHE = fileURLToPath(new URL('../.cache/speech/', import.meta.url));

/** A missing program or voice, or one that failed: one sentence, what and what to install. */
export class SynthesisError extends Error {}

export interface SynthesizedSpeech extends Pcm {
  /** The command that made it, text included, for the manifest. */
  readonly command: string;
}

/** @throws SynthesisError for a name that is none of `VOICES` and `FRENCH_VOICES`. */
export function voiceNamed(name: string): Voice {
  const all = [...VOICES, ...FRENCH_VOICES];
  const voice = all.find(candidate => candidate.name === name);
  if (voice) return voice;
  throw new SynthesisError(
    `There is no voice "${name}"; take one of ${all.map(({ name }) => name).join(', ')}.`,
  );
}

/**
 * Speech of a Debian voice: 16 kHz mono, half a second of near-silence before and after, the same sound for the
 * same text and voice. Made once and kept in `.cache/speech`.
 * @param name one of `VOICES` or `FRENCH_VOICES`.
 * @throws SynthesisError when the voice is unknown, its program is missing, or it gives no sound.
 */
export function synthesize(name: string, text: string): SynthesizedSpeech {
  const voice = voiceNamed(name);
  const { program, args, textBy } = voice.command('OUTPUT');
  const spoken = JSON.stringify(text);
  const command =
    textBy === 'argument'
      ? [program, ...args, spoken].join(' ')
      : `echo ${spoken} | ${[program, ...args].join(' ')}`;
  const key = createHash('sha256').update(`${RECIPE}\n${command}`).digest('hex').slice(0, 32);
  const cached = join(CACHE, `${key}.wav`);
  if (!existsSync(cached))
    store(cached, encodeWav(padded(speak(voice, text), Number.parseInt(key.slice(0, 8), 16))));
  return { ...decodeWav(readFileSync(cached), cached), command };
}

function speak(voice: Voice, text: string): Pcm {
  const folder = mkdtempSync(join(tmpdir(), 'first-fire-speech-'));
  try {
    const made = join(folder, 'made.wav');
    const resampled = join(folder, 'resampled.wav');
    const { program, args, textBy } = voice.command(made);
    run(
      program,
      textBy === 'argument' ? [...args, text] : args,
      textBy === 'input' ? text : '',
      voice.packages,
    );
    // -D: no dither, which would be different each time.
    run('sox', ['-D', made, '-r', String(RATE_HZ), '-c', '1', '-b', '16', resampled], '', ['sox']);
    return decodeWav(readFileSync(resampled), `${voice.name}'s speech for "${text}"`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function run(program: string, args: readonly string[], input: string, packages: readonly string[]): void {
  const { error, status, stderr } = spawnSync(program, args, { input, encoding: 'utf8', timeout: 60_000 });
  if (error === undefined && status === 0) return;
  const why = error ? error.message : stderr.trim().split('\n').at(-1) || `exit code ${status}`;
  throw new SynthesisError(
    `${program} made no speech (${why}); install the Debian package${packages.length > 1 ? 's' : ''} ${packages.join(' and ')}.`,
  );
}

function padded({ samples }: Pcm, seed: number): Pcm {
  const all = nearSilence(samples.length + 2 * PADDING_SAMPLES, seed);
  samples.forEach((sample, i) => {
    const at = PADDING_SAMPLES + i;
    all[at] = (all[at] ?? 0) + sample;
  });
  return { samples: all, sampleRateHz: RATE_HZ };
}

/** Under a name of its own first: two test workers may make the same sentence at once. */
function store(path: string, bytes: Uint8Array): void {
  mkdirSync(CACHE, { recursive: true });
  const unfinished = `${path}.${randomUUID()}`;
  writeFileSync(unfinished, bytes);
  renameSync(unfinished, path);
}
