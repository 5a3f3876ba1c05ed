import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { z } from 'zod';
import { systemCause } from '../files/cause.ts';
import { readJson } from '../files/json.ts';
import { decodeWav } from '../voice/audio/wav.ts';
import { VoiceError } from '../voice/errors.ts';
import type { Pcm } from '../voice/ports.ts';

const cueSchema = z.strictObject({
  /** The state in which it is said, e.g. `fill.coolantFilled.asking`. */
  when: z.string().min(1),
  /** What is said, for people. */
  says: z.string().min(1),
  wav: z.string().min(1),
  /** How long after the tool has fallen silent. */
  afterMs: z.number().min(0).max(600_000).default(600),
});

const cueSheetSchema = z.strictObject({
  schema: z.literal('first-fire-cues/1'),
  title: z.string().min(1),
  /** How the recordings were made. */
  made: z.string().min(1),
  cues: z.array(cueSchema).min(1),
});

export type CueSheet = z.infer<typeof cueSheetSchema>;

/** One recorded reply and the moment it belongs to. */
export interface Cue {
  readonly when: string;
  readonly says: string;
  readonly afterMs: number;
  readonly sound: Pcm;
}

/**
 * Loads a recorded session: replies as WAV files beside the sheet, each with the state it answers.
 * @throws VoiceError naming the file and what is wrong with it
 */
export async function loadCueSheet(path: string): Promise<readonly Cue[]> {
  const read = async (file: string) =>
    readFile(file).catch((cause: unknown) => {
      throw new VoiceError(
        'fileUnusable',
        `${file} cannot be read: ${systemCause(cause)}; check the path and that you may read it.`,
      );
    });
  const json = readJson((await read(path)).toString('utf8'));
  if (!json.ok)
    throw new VoiceError(
      'fileUnusable',
      `${path} is neither a WAV file nor a cue sheet in JSON: ${json.why}; name one of these.`,
    );
  const sheet = cueSheetSchema.safeParse(json.data);
  if (!sheet.success) {
    const [issue] = sheet.error.issues;
    throw new VoiceError(
      'fileUnusable',
      `${path}: ${issue?.path.join('.') || 'the sheet'}: ${issue?.message}.`,
    );
  }
  const sounds = new Map<string, Pcm>();
  for (const { wav } of sheet.data.cues) {
    if (sounds.has(wav)) continue;
    const file = resolve(dirname(path), wav);
    sounds.set(wav, decodeWav(await read(file), file));
  }
  return sheet.data.cues.flatMap(({ when, says, afterMs, wav }) => {
    const sound = sounds.get(wav);
    return sound ? [{ when, says, afterMs, sound }] : [];
  });
}
