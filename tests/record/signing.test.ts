import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addSignature,
  checkSignature,
  checkSignedBy,
  makeKeys,
  readPrivateKey,
  readPublicKey,
  readSignatures,
  type Signature,
  signaturePath,
  signHash,
} from '../../src/record/index.ts';
import { tempFolder } from './support.ts';

const HASH = 'ab'.repeat(32);
const OTHER_HASH = 'cd'.repeat(32);
const at = new Date('2026-01-02T03:04:05.678Z');

function keyPair() {
  const { privatePem, publicPem } = makeKeys();
  return { key: readPrivateKey(privatePem, 'key'), publicKey: readPublicKey(publicPem, 'key') };
}

describe('a signature over the last hash of a record', () => {
  const bay = keyPair();
  const supervisor = keyPair();
  const signature = signHash(HASH, bay.key, 'bay', at);

  test('holds for the record that it was made for', () => {
    expect(checkSignature(signature, HASH).valid).toBe(true);
    expect(checkSignedBy([signature], bay.publicKey, HASH)).toEqual({
      valid: true,
      sentence: `Signed with the key ${signature.keyId} of the bay at 2026-01-02T03:04:05.678Z.`,
    });
  });

  test('does not hold for a record with another last hash', () => {
    const { valid, sentence } = checkSignature(signature, OTHER_HASH);
    expect(valid).toBe(false);
    expect(sentence).toContain('changed or continued since');
  });

  test('says so when the key asked for is another one', () => {
    const { valid, sentence } = checkSignedBy([signature], supervisor.publicKey, HASH);
    expect(valid).toBe(false);
    expect(sentence).toContain(`Wrong key: the record is signed with ${signature.keyId}`);
  });

  test('says so when there is no signature at all', () => {
    expect(checkSignedBy([], bay.publicKey, HASH)).toMatchObject({
      valid: false,
      sentence: expect.stringContaining('not signed'),
    });
  });

  test('binds role, time, key and hash: whichever is changed, it no longer holds', () => {
    const changes: Partial<Signature>[] = [
      { role: 'supervisor' },
      { at: '2026-01-02T03:04:05.679Z' },
      { hash: OTHER_HASH },
      { publicKey: supervisor.publicKey },
      { keyId: '0123456789abcdef' },
    ];
    for (const change of changes) {
      const changed = { ...signature, ...change };
      expect(checkSignature(changed, changed.hash).valid, JSON.stringify(change)).toBe(false);
    }
  });

  test('no longer holds when any digit of it is another', () => {
    fc.assert(
      fc.property(fc.nat(127), fc.integer({ min: 1, max: 15 }), (place, by) => {
        const digits = [...signature.signature];
        digits[place] = ((Number.parseInt(digits[place] ?? '0', 16) + by) % 16).toString(16);
        expect(checkSignature({ ...signature, signature: digits.join('') }, HASH).valid).toBe(false);
      }),
    );
  });
});

describe('the file of signatures beside a record', () => {
  test('is empty where there is none', async () => {
    expect(await readSignatures(join(tempFolder(), 'log.jsonl'))).toEqual([]);
  });

  test('keeps bay and supervisor side by side, and the later signature of the same key', async () => {
    const log = join(tempFolder(), 'log.jsonl');
    const [bay, supervisor] = [keyPair(), keyPair()];
    await addSignature(log, signHash(OTHER_HASH, bay.key, 'bay', at));
    await addSignature(log, signHash(HASH, supervisor.key, 'supervisor', at));
    await addSignature(log, signHash(HASH, bay.key, 'bay', at));
    const signatures = await readSignatures(log);
    expect(signatures.map(({ role, hash }) => [role, hash])).toEqual([
      ['supervisor', HASH],
      ['bay', HASH],
    ]);
    expect(signatures.every(own => checkSignature(own, HASH).valid)).toBe(true);
  });

  test('is refused with one sentence when it is something else', async () => {
    const log = join(tempFolder(), 'log.jsonl');
    for (const content of ['', '{', '[]', '{"format":"first-fire-signatures/1"}', '\u0000\u0001']) {
      writeFileSync(signaturePath(log), content);
      await expect(readSignatures(log)).rejects.toThrow(/is no file of signatures/);
    }
  });
});

describe('keys', () => {
  test('of another kind, and files that are no keys, are refused with one sentence', () => {
    expect(() => readPrivateKey('no key', 'some.pem')).toThrow(/some.pem holds no private key/);
    expect(() => readPublicKey('', 'some.pem')).toThrow(/some.pem holds no public key/);
    const notAKey = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
    expect(() => readPrivateKey(notAKey, 'package.json')).toThrow(/holds no private key/);
  });
});
