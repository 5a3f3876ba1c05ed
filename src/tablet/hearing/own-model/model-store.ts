import { z } from 'zod';
import { english } from '../../../../prompts/en/index.ts';
import { httpErrorSchema, modelListSchema } from '../../../server/protocol/index.ts';
import { sha256Of } from '../../../voice/decoders/vosk/model/bytes.ts';
import { packModel, readModel } from '../../../voice/decoders/vosk/model/read-model.ts';
import { VoiceError } from '../../../voice/errors.ts';
import { wordsOf } from '../../../voice/wording.ts';

const CACHE = 'first-fire-own-model';
const PLACE = '/own-model';
const ABOUT = 'x-first-fire-model';

const aboutSchema = z.object({
  name: z.string(),
  /** SHA-256 of the archive as it is kept here. */
  sha256: z.string(),
  bytes: z.number(),
});
/** The model that is kept on this device. */
export type ModelOnDevice = z.infer<typeof aboutSchema>;

function aboutOf(response: Response | undefined): ModelOnDevice | null {
  try {
    return aboutSchema.parse(JSON.parse(response?.headers.get(ABOUT) ?? 'null'));
  } catch {
    return null;
  }
}

const find = async () => (await caches.open(CACHE)).match(PLACE);

/** What is kept, without reading it. */
export const modelOnDevice = async (): Promise<ModelOnDevice | null> => aboutOf(await find());

/**
 * Checks an archive and keeps it, in place of the one before.
 * @throws VoiceError one sentence; the one before is then still there
 */
export async function keepOnDevice(archive: Blob, archiveName: string): Promise<ModelOnDevice> {
  const stopWords = wordsOf(english.stopWordings);
  const model = await readModel(archive, { archiveName, stopWords });
  const packed = await packModel(model);
  const about: ModelOnDevice = {
    name: model.name,
    sha256: await sha256Of(await packed.arrayBuffer()),
    bytes: packed.size,
  };
  try {
    const cache = await caches.open(CACHE);
    await cache.put(PLACE, new Response(packed, { headers: { [ABOUT]: JSON.stringify(about) } }));
  } catch (cause) {
    throw new VoiceError(
      'fileUnusable',
      `The model ${about.name} cannot be kept on this device (${String(cause)}); make room on it.`,
      { cause },
    );
  }
  return about;
}

export async function dropModel(): Promise<void> {
  await caches.delete(CACHE);
}

/**
 * The kept archive, after it was held against its sum.
 * @throws VoiceError `modelUnusable` when there is none, or it is not any more what was kept
 */
export async function openModel(): Promise<{ readonly about: ModelOnDevice; readonly archive: Blob }> {
  const response = await find();
  if (!response)
    throw new VoiceError(
      'modelUnusable',
      'There is no Vosk model on this device; bring one in the settings.',
    );
  const about = aboutOf(response);
  const archive = await response.blob();
  if (about === null || (await sha256Of(await archive.arrayBuffer())) !== about.sha256)
    throw new VoiceError(
      'modelUnusable',
      'The Vosk model on this device is damaged; bring it again in the settings.',
    );
  return { about, archive };
}

/**
 * Takes the first model that the paired laptop has.
 * @throws VoiceError one sentence
 */
export async function takeFromLaptop(token: string): Promise<ModelOnDevice> {
  const ask = async (path: string) => {
    const response = await fetch(path, { headers: { authorization: `Bearer ${token}` } }).catch(() => null);
    if (response?.ok) return response;
    const refusal = httpErrorSchema.safeParse(await response?.json().catch(() => null));
    throw new VoiceError(
      'fileUnusable',
      refusal.success ? refusal.data.error.sentence : 'The laptop does not answer; join its network first.',
    );
  };
  const list = modelListSchema.parse(await (await ask('/api/models')).json());
  const [model] = list.models;
  if (!model)
    throw new VoiceError(
      'fileUnusable',
      'The laptop has no model; bring one there: npm start -- model add FILE.',
    );
  const response = await ask(`/api/models/${encodeURIComponent(model.name)}`);
  return keepOnDevice(await response.blob(), `${model.name}.tar.gz`);
}
