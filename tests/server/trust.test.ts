import { connect } from 'node:tls';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { takeAuthority } from './support/authority.ts';
import { fetchRaw, get } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
beforeAll(async () => {
  shop = await openShop();
});
afterAll(() => shop.server.close());

const CERTIFICATE = '/trust/first-fire-authority.crt';

describe('The page of trust', () => {
  test('is open to everybody, shows what the terminal shows, and loads nothing', async () => {
    const { status, body, headers } = await get(shop.base, '/trust');
    expect(status).toBe(200);
    expect(body).toContain(shop.server.authority);
    expect(body).toContain(CERTIFICATE);
    for (const system of ['Android', 'iPhone', 'Windows']) expect(body).toContain(system);
    expect(String(headers['content-security-policy'])).toContain("default-src 'none'");
    expect(body).not.toMatch(/<script|token|PRIVATE/);
  });

  test('speaks the language of the browser, where it knows it', async () => {
    const inLanguage = (accepted: string) =>
      fetchRaw(shop.base, '/trust', { headers: { 'accept-language': accepted } }).then(({ body }) => body);
    expect(await inLanguage('fr-CA,fr;q=0.9,en;q=0.8')).toContain('<html lang="fr">');
    expect(await inLanguage('xx, __proto__, en')).toContain('<html lang="en">');
  });

  test('gives out the certificate of the authority and never its key', async () => {
    expect((await takeAuthority(shop.base)).fingerprint256).toBe(shop.server.authority);
    expect((await get(shop.base, CERTIFICATE)).headers['content-type']).toBe('application/x-x509-ca-cert');
    for (const path of [
      '/trust/authority.json',
      '/trust/../.server/authority.json',
      '/.server/authority.json',
    ])
      expect((await get(shop.base, path)).status).toBeGreaterThanOrEqual(400);
  });

  test('is the way to a connection that a device trusts, without a word against it', async () => {
    const ca = (await takeAuthority(shop.base)).toString();
    const authorized = await new Promise<boolean>((resolve, reject) => {
      const { port } = new URL(shop.base);
      const socket = connect({ host: '127.0.0.1', port: Number(port), ca, servername: '' }, () => {
        resolve(socket.authorized);
        socket.destroy();
      });
      socket.on('error', reject);
    });
    expect(authorized).toBe(true);
  });
});
