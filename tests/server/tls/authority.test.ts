import { X509Certificate } from 'node:crypto';
import { mkdtemp, readFile, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { authorityFor } from '../../../src/server/tls/authority.ts';
import { certificateFor } from '../../../src/server/tls/certificate.ts';
import { permits, permittedFor } from '../../../src/server/tls/name-constraints.ts';

const newFolder = () => mkdtemp(join(tmpdir(), 'authority-'));

describe("The shop's authority", () => {
  test('is made once, kept where its owner only reads it, and vouches for the server of each run', async () => {
    const folder = await newFolder();
    const first = await certificateFor(folder, ['localhost', '192.168.7.7']);
    const moved = await certificateFor(folder, ['localhost', '10.1.2.3']);
    expect(moved.authority).toEqual(first.authority);
    expect(moved.fingerprint).not.toBe(first.fingerprint);
    const authority = new X509Certificate(first.authority.der);
    for (const { cert } of [first, moved]) {
      const server = new X509Certificate(cert);
      expect(server.checkIssued(authority)).toBe(true);
      expect(server.verify(authority.publicKey)).toBe(true);
      expect(server.ca).toBe(false);
    }
    expect(authority.ca).toBe(true);
    expect((await stat(join(folder, 'authority.json'))).mode & 0o077).toBe(0);
  });

  test('is made anew where its file says nothing that can be used', async () => {
    const folder = await newFolder();
    const { fingerprint } = await authorityFor(folder, ['localhost']);
    const path = join(folder, 'authority.json');
    const kept = JSON.parse(await readFile(path, 'utf8'));
    for (const broken of [
      '',
      '{}',
      JSON.stringify({ ...kept, key: 'no key' }),
      JSON.stringify({ ...kept, cert: '' }),
    ]) {
      await writeFile(path, broken);
      expect((await authorityFor(folder, ['localhost'])).fingerprint).not.toBe(fingerprint);
    }
  });

  test('takes the place of a certificate that signed itself', async () => {
    const folder = await newFolder();
    const other = await certificateFor(await newFolder(), ['localhost']);
    await writeFile(join(folder, 'key.pem'), other.key);
    await writeFile(join(folder, 'certificate.pem'), other.cert);
    expect((await certificateFor(folder, ['localhost'])).fingerprint).not.toBe(other.fingerprint);
  });

  test('may vouch for nothing in the world at large, but for what the machine itself was called on its first run', async () => {
    const { mayVouchFor } = await authorityFor(await newFolder(), [
      '203.0.113.9',
      'Shop-Laptop',
      '2001:db8::9',
    ]);
    for (const own of [
      '203.0.113.9',
      '2001:db8::9',
      'shop-laptop',
      'localhost',
      'laptop.local',
      '192.168.1.4',
      '10.255.0.1',
      '172.31.9.9',
      '127.0.0.1',
      'fd00::1',
    ])
      expect([own, mayVouchFor(own)]).toEqual([own, true]);
    for (const foreign of ['203.0.113.10', 'example.com', 'notlocal', '172.32.0.1', '8.8.8.8', '2001:db8::a'])
      expect([foreign, mayVouchFor(foreign)]).toEqual([foreign, false]);
  });

  test('leaves out of the certificate what it may not vouch for, and it is told', async () => {
    const folder = await newFolder();
    await authorityFor(folder, ['localhost']);
    const { cert, untrusted } = await certificateFor(folder, ['localhost', '203.0.113.9']);
    expect(untrusted).toEqual(['203.0.113.9']);
    expect(new X509Certificate(cert).checkIP('203.0.113.9')).toBeUndefined();
  });

  test('permits whatever addresses the machine has, and not their neighbours in the world at large', () => {
    fc.assert(
      fc.property(fc.ipV4(), address => {
        const permitted = permittedFor([address]);
        expect(permits(permitted, address)).toBe(true);
        const isPrivate = permits(permittedFor([]), address);
        expect(permitted.ranges.some(range => range === `${address}/32`)).toBe(!isPrivate);
      }),
    );
  });
});
