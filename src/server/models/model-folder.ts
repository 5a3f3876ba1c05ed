import { mkdir, readdir, readFile, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { sha256Of } from '../../voice/decoders/vosk/model/bytes.ts';
import { type CheckedModel, packModel } from '../../voice/decoders/vosk/model/read-model.ts';
import { VoiceError } from '../../voice/errors.ts';
import { writeWhole } from '../state-file.ts';

const keptModelSchema = z.object({
  name: z.string().regex(/^[A-Za-z0-9_-][A-Za-z0-9._-]{0,79}$/),
  /** SHA-256 of the archive as it is kept and handed on. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** SHA-256 of the archive as it was brought. */
  broughtSha256: z.string().regex(/^[0-9a-f]{64}$/),
  bytes: z.number().int().positive(),
  unpackedBytes: z.number().int().positive(),
  addedAt: z.iso.datetime(),
});

/** A Vosk model that was checked and is kept for the tablets. */
export type KeptModel = z.infer<typeof keptModelSchema>;

const about = (name: string) => `${name}.json`;
const archive = (name: string) => `${name}.tar.gz`;

const cannot = (what: string, folder: string, cause: unknown) =>
  new VoiceError(
    'fileUnusable',
    `${what} in ${folder} (${cause instanceof Error ? cause.message : String(cause)}); choose another folder with --models.`,
    { cause },
  );

const isCode = (cause: unknown, code: string) =>
  cause instanceof Error && 'code' in cause && cause.code === code;

async function readKept(folder: string, file: string): Promise<KeptModel | null> {
  try {
    const kept = keptModelSchema.parse(JSON.parse(await readFile(join(folder, file), 'utf8')));
    if (about(kept.name) !== file) return null;
    return (await stat(join(folder, archive(kept.name)))).size === kept.bytes ? kept : null;
  } catch {
    // What is not whole is not offered; adding the model again puts it right.
    return null;
  }
}

/** The models that are whole, by name. A folder that is not there has none. */
export async function listModels(folder: string): Promise<readonly KeptModel[]> {
  const names = await readdir(folder).catch((cause: unknown) => {
    if (isCode(cause, 'ENOENT')) return [];
    throw cannot('The models cannot be listed', folder, cause);
  });
  const kept = await Promise.all(
    names
      .filter(name => name.endsWith('.json'))
      .sort()
      .map(name => readKept(folder, name)),
  );
  return kept.filter(model => model !== null);
}

/** Where the archive of a kept model lies. */
export const pathOfModel = (folder: string, { name }: KeptModel): string => join(folder, archive(name));

/**
 * Keeps a checked model. One of the same name and content is left as it is.
 * @throws VoiceError `fileUnusable` when there is another one of this name, or the folder cannot be written to
 */
export async function keepModel(folder: string, model: CheckedModel, now: Date): Promise<KeptModel> {
  const same = (await listModels(folder)).find(({ name }) => name === model.name);
  if (same?.broughtSha256 === model.sha256) return same;
  if (same)
    throw new VoiceError(
      'fileUnusable',
      `There is another model named ${model.name} in ${folder}; take it out first: npm start -- model remove ${model.name}.`,
    );
  const content = await (await packModel(model)).arrayBuffer();
  const kept: KeptModel = {
    name: model.name,
    sha256: await sha256Of(content),
    broughtSha256: model.sha256,
    bytes: content.byteLength,
    unpackedBytes: model.unpackedBytes,
    addedAt: now.toISOString(),
  };
  try {
    await mkdir(folder, { recursive: true });
    await writeWhole(join(folder, archive(kept.name)), new Uint8Array(content));
    // Last: without it the archive is not offered.
    await writeWhole(join(folder, about(kept.name)), `${JSON.stringify(kept, null, 2)}\n`);
  } catch (cause) {
    throw cannot('The model cannot be kept', folder, cause);
  }
  return kept;
}

/**
 * Takes a model out of the folder.
 * @throws VoiceError `fileUnusable` when there is none of this name
 */
export async function removeModel(folder: string, name: string): Promise<void> {
  const kept = await listModels(folder);
  const found = kept.find(model => model.name === name);
  if (!found) {
    const others =
      kept.length === 0 ? 'there is none at all' : `there is ${kept.map(m => m.name).join(', ')}`;
    throw new VoiceError('fileUnusable', `There is no model named "${name}" in ${folder}; ${others}.`);
  }
  try {
    await rm(join(folder, about(found.name)));
    await rm(pathOfModel(folder, found));
  } catch (cause) {
    throw cannot('The model cannot be taken out', folder, cause);
  }
}
