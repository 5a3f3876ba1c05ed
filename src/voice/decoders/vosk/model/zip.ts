import { type ArchiveFile, Budget, isClutter } from './archive-file.ts';
import { crc32 } from './bytes.ts';
import type { ModelLimits } from './limits.ts';
import { Refusal } from './refusal.ts';
import { unpackStream } from './unpack-stream.ts';

// Fields and signatures of the zip format: APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16.
const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const END_BYTES = 22;
const LONGEST_COMMENT = 0xffff;
const CENTRAL_BYTES = 46;
const LOCAL_BYTES = 30;
const ENCRYPTED = 1;
const STORED = 0;
const DEFLATED = 8;
const LINK_MODE = 0xa000;
const KIND_OF_MODE = 0xf000;

interface Entry {
  readonly path: string;
  readonly isLink: boolean;
  readonly encrypted: boolean;
  readonly method: number;
  readonly sum: number;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly localAt: number;
}

const cutShort = () => new Refusal('is cut short or damaged (its list of files is not whole)');

async function viewOf(archive: Blob, from: number, to: number): Promise<DataView> {
  if (from < 0 || to > archive.size || from > to) throw cutShort();
  return new DataView(await archive.slice(from, to).arrayBuffer());
}

/** The list of files at the end: where it is, and how many there are. */
async function findList(archive: Blob): Promise<{ at: number; bytes: number; count: number }> {
  const from = Math.max(0, archive.size - END_BYTES - LONGEST_COMMENT);
  const tail = await viewOf(archive, from, archive.size);
  for (let at = tail.byteLength - END_BYTES; at >= 0; at -= 1) {
    const isEnd =
      tail.getUint32(at, true) === END && at + END_BYTES + tail.getUint16(at + 20, true) === tail.byteLength;
    if (!isEnd) continue;
    const count = tail.getUint16(at + 10, true);
    const [bytes, listAt] = [tail.getUint32(at + 12, true), tail.getUint32(at + 16, true)];
    if (count === 0xffff || bytes === 0xffffffff || listAt === 0xffffffff)
      throw new Refusal('is a zip of the large kind (zip64)', 'pack the model folder anew as tar.gz');
    return { at: listAt, bytes, count };
  }
  throw cutShort();
}

function entriesOf(list: DataView, count: number): readonly Entry[] {
  const entries: Entry[] = [];
  let at = 0;
  for (let n = 0; n < count; n += 1) {
    if (at + CENTRAL_BYTES > list.byteLength || list.getUint32(at, true) !== CENTRAL) throw cutShort();
    const short = (offset: number) => list.getUint16(at + offset, true);
    const long = (offset: number) => list.getUint32(at + offset, true);
    const nameBytes = short(28);
    const end = at + CENTRAL_BYTES + nameBytes;
    if (end > list.byteLength) throw cutShort();
    entries.push({
      path: new TextDecoder().decode(new Uint8Array(list.buffer, at + CENTRAL_BYTES, nameBytes)),
      isLink: ((long(38) >>> 16) & KIND_OF_MODE) === LINK_MODE,
      encrypted: (short(8) & ENCRYPTED) !== 0,
      method: short(10),
      sum: long(16),
      packedBytes: long(20),
      bytes: long(24),
      localAt: long(42),
    });
    at = end + short(30) + short(32);
  }
  return entries;
}

async function bytesOf(archive: Blob, entry: Entry): Promise<Uint8Array> {
  const { path, localAt, packedBytes, bytes, method } = entry;
  const local = await viewOf(archive, localAt, localAt + LOCAL_BYTES);
  const nameAt = localAt + LOCAL_BYTES;
  const dataAt = nameAt + local.getUint16(26, true);
  const name = new TextDecoder().decode(await archive.slice(nameAt, dataAt).arrayBuffer());
  // Written twice, like all that counts in a zip.
  if (local.getUint32(0, true) !== LOCAL || name !== path) throw cutShort();
  const from = dataAt + local.getUint16(28, true);
  if (from + packedBytes > archive.size) throw cutShort();
  const packed = archive.slice(from, from + packedBytes);
  const unpacked =
    method === STORED
      ? new Uint8Array(await packed.arrayBuffer())
      : await unpackStream(packed, 'deflate-raw', bytes, path);
  if (unpacked.length !== bytes || crc32(unpacked) !== entry.sum)
    throw new Refusal(`is damaged (the check sum of ${path} is wrong)`);
  return unpacked;
}

/**
 * All files of a zip archive, each checked against its sum. What the list says is what may come out: a file that
 * unpacks to more is refused, and so is all that is encrypted, linked or packed in another way than published models.
 * @throws Refusal
 */
export async function readZip(archive: Blob, limits: ModelLimits): Promise<readonly ArchiveFile[]> {
  const { at, bytes, count } = await findList(archive);
  const entries = entriesOf(await viewOf(archive, at, at + bytes), count).filter(
    ({ path }) => !isClutter(path),
  );
  const budget = new Budget(limits);
  for (const entry of entries) {
    budget.take(entry.path, entry.bytes);
    if (entry.isLink) throw new Refusal(`has a link (${entry.path})`, 'bring a model as it was published');
    if (entry.encrypted) throw new Refusal('is locked with a password', 'unlock and pack it anew');
    if (entry.method !== STORED && entry.method !== DEFLATED)
      throw new Refusal(`packs ${entry.path} in an unusual way`, 'pack it anew as a usual zip');
  }
  const files: ArchiveFile[] = [];
  for (const entry of entries.filter(({ path }) => !path.endsWith('/')))
    files.push({ path: entry.path, bytes: await bytesOf(archive, entry) });
  return files;
}
