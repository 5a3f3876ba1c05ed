import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { encodeWav } from '../src/voice/audio/wav-encode.ts';
import { everyReply } from './every-reply.ts';
import { synthesize } from './synthesize.ts';
import { VOICES } from './voices.ts';

/** One line of the manifest: what is said, by whom, how it was made. */
export interface Fixture {
  readonly file: string;
  readonly transcript: string;
  readonly voice: string;
  readonly engine: string;
  readonly made: string;
  readonly command: string;
  readonly durationMs: number;
  readonly sha256: string;
}

const phraseList = z.array(z.string().trim().min(1).max(200)).min(1);

const parseJson = (json: string): unknown => {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
};

/** Lower-case words joined by dashes: the file name of a phrase. */
export const slugOf = (phrase: string): string =>
  phrase
    .toLowerCase()
    .replaceAll(/[^\p{Letter}\p{Number}]+/gu, '-')
    .replaceAll(/^-|-$/g, '');

/** @throws Error in one sentence when the list is no list of phrases, or two of them would share a file. */
export function readPhrases(json: string, name: string): readonly string[] {
  const parsed = phraseList.safeParse(parseJson(json));
  if (!parsed.success)
    throw new Error(
      `${name} is no list of phrases (${parsed.error.issues[0]?.message}); give a JSON array of texts.`,
    );
  const slugs = parsed.data.map(slugOf);
  const twice = slugs.find((slug, i) => slug === '' || slugs.indexOf(slug) !== i);
  if (twice !== undefined)
    throw new Error(`${name} has two phrases for the file "${twice}"; take one of them out.`);
  return parsed.data;
}

/** Makes every phrase in every voice under `folder`, with `manifest.json` beside the voices' folders. */
export function buildFixtures(phrases: readonly string[], folder: string): readonly Fixture[] {
  rmSync(folder, { recursive: true, force: true });
  const fixtures: Fixture[] = [];
  for (const { name: voice, engine, made } of VOICES) {
    mkdirSync(join(folder, voice), { recursive: true });
    for (const transcript of phrases) {
      const { command, ...sound } = synthesize(voice, transcript);
      const bytes = encodeWav(sound);
      const file = join(voice, `${slugOf(transcript)}.wav`);
      writeFileSync(join(folder, file), bytes);
      const durationMs = Math.round((sound.samples.length / sound.sampleRateHz) * 1000);
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      fixtures.push({ file, transcript, voice, engine, made, command, durationMs, sha256 });
    }
  }
  writeFileSync(join(folder, 'manifest.json'), `${JSON.stringify(fixtures, null, 2)}\n`);
  return fixtures;
}

if (import.meta.filename === process.argv[1]) {
  const [, , list] = process.argv;
  const folder = fileURLToPath(new URL('../.cache/audio-fixtures/', import.meta.url));
  try {
    const phrases = list === undefined ? everyReply : readPhrases(readFileSync(list, 'utf8'), list);
    const fixtures = buildFixtures(phrases, folder);
    console.log(`${fixtures.length} sounds in ${folder}`);
  } catch (cause) {
    console.error(cause instanceof Error ? cause.message : cause);
    process.exitCode = 1;
  }
}
