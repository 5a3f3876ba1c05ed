import { sha256Of } from './bytes.ts';
import { checkLayout, findModel, type ModelFiles } from './layout.ts';
import { inMb, type ModelLimits, modelLimits } from './limits.ts';
import { Refusal, refused } from './refusal.ts';
import { packTarGz, readTarGz } from './tar-gz.ts';
import { readZip } from './zip.ts';

/** A model that has passed every check that can be made without running it. */
export interface CheckedModel {
  /** A name that is safe as a file's. */
  readonly name: string;
  /** SHA-256 of the archive as it was brought. */
  readonly sha256: string;
  readonly unpackedBytes: number;
  readonly files: ModelFiles;
}

export interface ModelWishes {
  /** What the archive is called, for sentences. */
  readonly archiveName: string;
  /** Every word of every stop wording. */
  readonly stopWords: readonly string[];
  /** The SHA-256 that the archive should have, where its publisher gives one. */
  readonly sha256?: string | undefined;
  readonly limits?: ModelLimits;
}

const LONGEST_NAME = 80;

const safeName = (name: string) =>
  name
    .replace(/[^A-Za-z0-9._-]+/g, '-')
    .replace(/^[.-]+/, '')
    .slice(0, LONGEST_NAME) || 'model';

async function filesOf(archive: Blob, limits: ModelLimits) {
  const [a, b] = new Uint8Array(await archive.slice(0, 2).arrayBuffer());
  if (a === 0x1f && b === 0x8b) return readTarGz(archive, limits);
  if (a === 0x50 && b === 0x4b) return readZip(archive, limits);
  throw new Refusal('is neither a zip nor a tar.gz', 'bring a Vosk model as it was published');
}

async function checked(archive: Blob, wishes: ModelWishes): Promise<CheckedModel> {
  const { limits = modelLimits, archiveName, stopWords } = wishes;
  if (archive.size === 0) throw new Refusal('is empty');
  if (archive.size > limits.archiveBytes)
    throw new Refusal(
      `has ${inMb(archive.size)}, more than the ${inMb(limits.archiveBytes)} that are taken`,
      'bring a small model',
    );
  const sha256 = await sha256Of(await archive.arrayBuffer());
  if (wishes.sha256 !== undefined && wishes.sha256.toLowerCase() !== sha256)
    throw new Refusal(`has the SHA-256 ${sha256}, not the one that was given`);
  const { folder, files } = findModel(await filesOf(archive, limits));
  checkLayout(files, stopWords);
  return {
    name: safeName(
      folder === '' || folder === 'model' ? archiveName.replace(/\.(zip|tar\.gz|tgz)$/i, '') : folder,
    ),
    sha256,
    unpackedBytes: [...files.values()].reduce((sum, { length }) => sum + length, 0),
    files,
  };
}

/**
 * Reads and checks an archive that somebody brought: a zip as Vosk models are published, or a tar.gz. Runs in Node
 * and in a browser alike, and writes nothing.
 * @throws VoiceError `modelUnusable`: one sentence, what is wrong and what to do
 */
export async function readModel(archive: Blob, wishes: ModelWishes): Promise<CheckedModel> {
  try {
    return await checked(archive, wishes);
  } catch (cause) {
    if (cause instanceof Refusal) throw refused(wishes.archiveName, cause);
    throw cause;
  }
}

/** The archive that the recognizer in the browser takes: only the checked files, in a folder named `model`. */
export const packModel = ({ files }: CheckedModel): Promise<Blob> =>
  packTarGz([...files].map(([path, bytes]) => ({ path: `model/${path}`, bytes })));
