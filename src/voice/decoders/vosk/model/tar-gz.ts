import { packTar, unpackTar } from 'modern-tar';
import { type ArchiveFile, Budget, isClutter } from './archive-file.ts';
import type { ModelLimits } from './limits.ts';
import { Refusal } from './refusal.ts';
import { unpackStream } from './unpack-stream.ts';

/** Headers and padding of a file in a tar come in blocks of this size. */
const TAR_BLOCK = 512;

/**
 * All files of a tar.gz archive. Only plain files and folders are taken.
 * @throws Refusal
 */
export async function readTarGz(archive: Blob, limits: ModelLimits): Promise<readonly ArchiveFile[]> {
  const most = limits.unpackedBytes + limits.files * 4 * TAR_BLOCK;
  const tar = await unpackStream(archive, 'gzip', most, 'as a whole');
  const entries = await unpackTar(tar, { strict: true }).catch((cause: unknown) => {
    throw new Refusal('is cut short or damaged (no whole tar inside)', undefined, { cause });
  });
  const budget = new Budget(limits);
  const files: ArchiveFile[] = [];
  for (const { header, data } of entries) {
    // "./model/am" is what tar writes for "tar c ."
    const path = header.name.replace(/^(\.\/)+/, '');
    if (path === '' || path === '.' || isClutter(path)) continue;
    budget.take(path, header.size);
    const kind = header.type ?? 'file';
    if (kind === 'directory') continue;
    if (kind !== 'file')
      throw new Refusal(`has a ${kind} (${path}) where only files belong`, 'bring a model as published');
    if (data === undefined || data.length !== header.size) throw new Refusal(`is cut short in ${path}`);
    files.push({ path, bytes: data });
  }
  return files;
}

/** Packs files as tar.gz, always alike: no owners, no dates. */
export async function packTarGz(files: readonly ArchiveFile[]): Promise<Blob> {
  const tar = await packTar(
    files.map(({ path, bytes }) => ({
      header: { name: path, size: bytes.length, type: 'file' as const, mtime: new Date(0) },
      body: bytes,
    })),
  );
  const packed = new Blob([tar]).stream().pipeThrough(new CompressionStream('gzip'));
  return await new Response(packed).blob();
}
