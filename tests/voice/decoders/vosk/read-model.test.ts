import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { packTar } from 'modern-tar';
import { describe, expect, it } from 'vitest';
import { crc32 } from '../../../../src/voice/decoders/vosk/model/bytes.ts';
import { modelLimits } from '../../../../src/voice/decoders/vosk/model/limits.ts';
import { packModel, readModel } from '../../../../src/voice/decoders/vosk/model/read-model.ts';
import { VoiceError } from '../../../../src/voice/errors.ts';
import { hollowModel, tarGzOf, zipOf, zippedModel } from './model-files.ts';

const wishes = { archiveName: 'small-en.zip', stopWords: ['stop'] };

/** The one sentence that an archive is refused with. */
async function refusal(archive: Blob, more: Partial<Parameters<typeof readModel>[1]> = {}): Promise<string> {
  const error: unknown = await readModel(archive, { ...wishes, ...more }).then(
    () => 'it was taken',
    (cause: unknown) => cause,
  );
  if (!(error instanceof VoiceError)) throw new Error(`No refusal: ${String(error)}`);
  expect(error.code).toBe('modelUnusable');
  expect(error.message).toMatch(/^The model archive small-en\.zip .*; .*\.$/);
  return error.message;
}

const without = (...paths: string[]) =>
  Object.fromEntries(Object.entries(hollowModel()).filter(([path]) => !paths.includes(path)));

const gzipped = (tar: Uint8Array) => new Blob([gzipSync(tar)]);

describe('a model archive that is as published', () => {
  it('is taken as a zip and as a tar.gz, with the same files', async () => {
    const zip = await readModel(zippedModel(), wishes);
    const tar = await readModel(await tarGzOf(hollowModel()), wishes);
    expect(zip.name).toBe('small-en');
    expect(zip.sha256).toMatch(/^[0-9a-f]{64}$/);
    expect([...zip.files.keys()].sort()).toEqual(Object.keys(hollowModel()).sort());
    expect(new Map([...zip.files].sort())).toEqual(new Map([...tar.files].sort()));
  });

  it('has the SHA-256 that other tools give', async () => {
    const { createHash } = await import('node:crypto');
    const archive = zippedModel();
    const sha256 = createHash('sha256')
      .update(Buffer.from(await archive.arrayBuffer()))
      .digest('hex');
    expect((await readModel(archive, { ...wishes, sha256: sha256.toUpperCase() })).sha256).toBe(sha256);
    expect(await refusal(archive, { sha256: '0'.repeat(64) })).toContain(`has the SHA-256 ${sha256}, not`);
  });

  it('may have a comment, words in a file of their own, and what systems leave behind', async () => {
    const files = { ...hollowModel(), 'graph/Gr.fst': Uint8Array.of(0xd6, 0xfd, 0xb2, 0x7e) };
    const listed = { ...files, 'graph/words.txt': new TextEncoder().encode('<eps> 0\nstop 17\n') };
    const extra = [
      ...Object.entries(listed).map(([path, bytes]) => ({ path: `m/${path}`, bytes })),
      { path: '__MACOSX/m/._README', bytes: new Uint8Array(3) },
      { path: 'm/.DS_Store', bytes: new Uint8Array(3) },
    ];
    const model = await readModel(zipOf(extra, { comment: 'as published' }), wishes);
    expect([...model.files.keys()].sort()).toEqual(Object.keys(listed).sort());
  });

  it('is packed for the recognizer in a folder named model, always alike, and can be read again', async () => {
    const model = await readModel(zippedModel(), wishes);
    const [once, twice] = [await packModel(model), await packModel(model)];
    expect(Buffer.from(await once.arrayBuffer())).toEqual(Buffer.from(await twice.arrayBuffer()));
    const again = await readModel(once, { ...wishes, archiveName: 'small-en.tar.gz' });
    expect(again).toMatchObject({ name: 'small-en', unpackedBytes: model.unpackedBytes });
  });
});

describe('an archive is refused in one sentence', () => {
  it('that is empty, or no archive', async () => {
    expect(await refusal(new Blob([]))).toContain('is empty');
    expect(await refusal(new Blob(['hello there']))).toContain('neither a zip nor a tar.gz');
    expect(await refusal(gzipped(new TextEncoder().encode('not a tar')))).toContain('no whole tar inside');
  });

  it('that lacks a file which the recognizer needs, naming it', async () => {
    for (const path of ['conf/mfcc.conf', 'conf/model.conf', 'graph/HCLr.fst', 'graph/Gr.fst'])
      expect(await refusal(zippedModel(without(path)))).toContain(`has no ${path}`);
    expect(await refusal(zippedModel(without('am/final.mdl')))).toContain('no folder with am/final.mdl');
    const speaker = { ...hollowModel(), 'ivector/final.ie': new Uint8Array(5) };
    expect(await refusal(zippedModel(speaker))).toContain('has no ivector/');
  });

  it('whose files are empty or of another kind', async () => {
    const changed = (path: string, content: string) =>
      zippedModel({ ...hollowModel(), [path]: new TextEncoder().encode(content) });
    expect(await refusal(changed('conf/model.conf', ''))).toContain('nothing in conf/model.conf');
    expect(await refusal(changed('graph/HCLr.fst', '<!doctype html>'))).toContain(
      'HCLr.fst that is no graph',
    );
    expect(await refusal(changed('am/final.mdl', 'version 1 git-lfs'))).toContain('no acoustic model');
  });

  it('whose graph is fixed, because it could not be told what may be said now', async () => {
    const fixed = { ...without('graph/HCLr.fst', 'graph/Gr.fst'), 'graph/HCLG.fst': new Uint8Array(9) };
    expect(await refusal(zippedModel(fixed))).toContain('one fixed graph');
  });

  it('that does not know a stop word', async () => {
    expect(await refusal(zippedModel(), { stopWords: ['stop', 'engine', 'halte'] })).toContain(
      'does not know "halte"',
    );
  });

  it('that has two models in it', async () => {
    const two = ['a', 'b'].flatMap(folder =>
      Object.entries(hollowModel()).map(([path, bytes]) => ({ path: `${folder}/${path}`, bytes })),
    );
    expect(await refusal(zipOf(two))).toContain('more than one model');
  });

  it('whose paths lead out of its folder', async () => {
    const evil = ['../am/final.mdl', '/etc/am/final.mdl', 'm/../../x', 'C:/am/final.mdl', 'm\\..\\x'];
    for (const path of evil) {
      const bytes = new Uint8Array(3);
      expect(await refusal(zipOf([{ path, bytes }]))).toContain('leads out of its folder');
      const tar = await packTar([{ header: { name: path, size: 3, type: 'file' }, body: bytes }]);
      expect(await refusal(gzipped(tar))).toContain('leads out of its folder');
    }
    for (const path of ['m//x', 'm/./x', 'm/\u0007x', `m/${'x'.repeat(200)}`])
      expect(await refusal(zipOf([{ path, bytes: new Uint8Array(3) }]))).toContain('unusable name');
  });

  it('that has links or devices in it, or a file twice', async () => {
    expect(await refusal(zippedModel(hollowModel(), { mode: 0o120777 }))).toContain('has a link');
    for (const type of ['symlink', 'link', 'character-device', 'fifo'] as const) {
      const tar = await packTar([{ header: { name: 'm/x', size: 0, type, linkname: '/etc/passwd' } }]);
      expect(await refusal(gzipped(tar))).toContain(`has a ${type}`);
    }
    const file = { path: 'm/x', bytes: new Uint8Array(3) };
    expect(await refusal(zipOf([file, file]))).toContain('m/x twice');
  });

  it('that is locked, or packed in an unusual way', async () => {
    expect(await refusal(zippedModel(hollowModel(), { flags: 1 }))).toContain('locked with a password');
    expect(await refusal(zippedModel(hollowModel(), { method: 12 }))).toContain('in an unusual way');
  });

  it('that is larger than is taken, packed or unpacked, whatever it says of itself', async () => {
    const limits = { ...modelLimits, archiveBytes: 100 };
    expect(await refusal(zippedModel(), { limits })).toContain('more than the 0 MB that are taken');
    const bomb = { path: 'm/am/final.mdl', bytes: new Uint8Array(3_000_000) };
    const small = { limits: { ...modelLimits, unpackedBytes: 1_000_000 } };
    expect(await refusal(zipOf([bomb]), small)).toContain('more than a tablet can hold');
    expect(await refusal(zipOf([bomb], { claimedBytes: 10 }), small)).toContain(
      'unpacks to more than it may',
    );
    expect(await refusal(gzipped(new Uint8Array(3_000_000)), small)).toContain('unpacks to more than it may');
    const many = Array.from({ length: 9 }, (_, n) => ({ path: `m/${n}`, bytes: new Uint8Array(1) }));
    expect(await refusal(zipOf(many), { limits: { ...modelLimits, files: 8 } })).toContain(
      'more than 8 files',
    );
  });
});

describe('an archive that is not whole', () => {
  const whole = { zip: zippedModel(), 'tar.gz': tarGzOf(hollowModel()) };

  it.each(['zip', 'tar.gz'] as const)('is refused wherever it is cut short (%s)', async form => {
    const archive = await whole[form];
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: archive.size - 1 }), async length => {
        await refusal(archive.slice(0, length));
      }),
      { numRuns: 60 },
    );
  });

  it.each(['zip', 'tar.gz'] as const)(
    'is refused, or read as it was, with one byte changed (%s)',
    async form => {
      const bytes = new Uint8Array(await (await whole[form]).arrayBuffer());
      const right = await readModel(new Blob([bytes]), wishes);
      const position = fc.integer({ min: 0, max: bytes.length - 1 });
      await fc.assert(
        fc.asyncProperty(position, fc.integer({ min: 1, max: 255 }), async (at, change) => {
          const changed = bytes.map((byte, i) => (i === at ? byte ^ change : byte));
          const read = await readModel(new Blob([changed]), wishes).catch((cause: unknown) => cause);
          if (read instanceof VoiceError) return;
          // Dates, rights and a folder's name carry no sum; what the recognizer reads does.
          expect(read).toMatchObject({ unpackedBytes: right.unpackedBytes });
          const { files } = read as typeof right;
          for (const [path, content] of files) expect([path, content]).toEqual([path, right.files.get(path)]);
        }),
        { numRuns: 150 },
      );
    },
  );

  it('is told from a whole one by the sum that zlib computes', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), bytes => {
        // The sum stands in the trailer of a gzip, after the data.
        const gzip = gzipSync(bytes);
        expect(crc32(bytes)).toBe(gzip.readUInt32LE(gzip.length - 8));
      }),
    );
  });
});
