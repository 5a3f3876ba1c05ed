import { deflateRawSync } from 'node:zlib';
import { crc32 } from '../../../../src/voice/decoders/vosk/model/bytes.ts';
import { packTarGz } from '../../../../src/voice/decoders/vosk/model/tar-gz.ts';

const text = (content: string) => new TextEncoder().encode(content);
const fst = (rest: Uint8Array) => Uint8Array.of(0xd6, 0xfd, 0xb2, 0x7e, ...rest);
const inGraph = (word: string) => Uint8Array.of(word.length, 0, 0, 0, ...text(word));

/** Files that look like a small model from outside, with nothing in them that could recognize anything. */
export const hollowModel = (): Record<string, Uint8Array> => ({
  'am/final.mdl': text(`\0B<TransitionModel> ${'nothing '.repeat(50)}`),
  'conf/mfcc.conf': text('--sample-frequency=16000\n'),
  'conf/model.conf': text('--beam=10.0\n'),
  'graph/HCLr.fst': fst(text('nothing')),
  'graph/Gr.fst': fst(Uint8Array.of(...inGraph('hold'), ...inGraph('stop'), ...inGraph('engine'))),
  'graph/disambig_tid.int': text('1\n2\n'),
  README: text('A hollow model.'),
});

const inFolder = (files: Record<string, Uint8Array>, folder: string) =>
  Object.entries(files).map(([path, bytes]) => ({ path: `${folder}/${path}`, bytes }));

export const tarGzOf = (files: Record<string, Uint8Array>, folder = 'small-en'): Promise<Blob> =>
  packTarGz(inFolder(files, folder));

export interface ZipTwist {
  /** Says of the first file that it has this size. */
  readonly claimedBytes?: number;
  readonly flags?: number;
  readonly method?: number;
  /** Unix mode of all files. */
  readonly mode?: number;
  readonly comment?: string;
}

/** A zip written by the book, field by field, or with one thing wrong. */
export function zipOf(files: readonly { path: string; bytes: Uint8Array }[], twist: ZipTwist = {}): Blob {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const list: Buffer[] = [];
  let at = 0;
  for (const { path, bytes } of files) {
    const name = Buffer.from(path);
    const stored = path.endsWith('/') || bytes.length < 20;
    const packed = stored ? Buffer.from(bytes) : deflateRawSync(bytes);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(twist.flags ?? 0, 2);
    common.writeUInt16LE(twist.method ?? (stored ? 0 : 8), 4);
    common.writeUInt32LE(crc32(bytes), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(at === 0 ? (twist.claimedBytes ?? bytes.length) : bytes.length, 18);
    common.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04'), common, name, packed]);
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE(((twist.mode ?? 0o100644) << 16) >>> 0, 6);
    rest.writeUInt32LE(at, 10);
    list.push(Buffer.concat([Buffer.from('PK\x01\x02\x14\x03'), common, rest, name]));
    parts.push(new Uint8Array(local));
    at += local.length;
  }
  const central = Buffer.concat(list);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(files.length, 8);
  end.writeUInt16LE(files.length, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(at, 16);
  end.writeUInt16LE((twist.comment ?? '').length, 20);
  return new Blob([...parts, new Uint8Array(central), new Uint8Array(end), twist.comment ?? '']);
}

export const zippedModel = (files = hollowModel(), twist: ZipTwist = {}): Blob =>
  zipOf([{ path: 'small-en/', bytes: new Uint8Array() }, ...inFolder(files, 'small-en')], twist);
