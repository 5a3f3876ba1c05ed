import { mkdtemp, readFile, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { certificateFor } from '../../src/server/tls/certificate.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';
import { fetchRaw, get, post } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
let record: Buffer;
const tokens: Record<string, string> = {};

beforeAll(async () => {
  const page = await mkdtemp(join(tmpdir(), 'page-'));
  await writeFile(join(page, 'index.html'), '<!doctype html><title>page</title>');
  await writeFile(join(page, '.secret'), 'not for the web');
  await writeFile(join(page, 'large.js'), 'as it is');
  await writeFile(join(page, 'large.js.gz'), gzipSync('as it is'));
  shop = await openShop({ page });
  for (const role of ['technician', 'second', 'supervisor'] as const) tokens[role] = await shop.pair(role);
  const finished = await rig();
  await finished.session.begin();
  await goUntil(finished, 'job.makerFirst.asking');
  await finished.record.close();
  record = await readFile(finished.path);
}, 120_000);

afterAll(() => shop.server.close());

const errorOf = ({ body }: { body: string }) => JSON.parse(body).error.code;
const upload = (content: string | Buffer, token = tokens.technician) =>
  fetchRaw(
    shop.base,
    '/api/upload',
    {
      method: 'POST',
      headers: { authorization: `Bearer ${token}`, 'content-type': 'application/x-ndjson' },
    },
    content,
  );

describe('The page', () => {
  test('comes with headers that let it load from here only, and be framed by nobody', async () => {
    const { status, headers } = await get(shop.base, '/');
    expect(status).toBe(200);
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toMatch(/'unsafe-eval'/);
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('no-referrer');
  });

  test('comes compressed, as it was built, to whoever takes it so', async () => {
    const packed = await fetchRaw(shop.base, '/large.js', { headers: { 'accept-encoding': 'gzip' } });
    expect(packed.headers['content-encoding']).toBe('gzip');
    expect(packed.headers['content-type']).toMatch(/javascript/);
    const plain = await get(shop.base, '/large.js');
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(plain.body).toBe('as it is');
  });

  test('is all there is: no path leads out of its folder, however it is written', async () => {
    const paths = [
      '/../server.ts',
      '/..%2f..%2fetc/passwd',
      '/%2e%2e/%2e%2e/etc/passwd',
      '/..%5c..%5cetc/passwd',
      '/%252e%252e/etc/passwd',
      '//etc/passwd',
      '/.secret',
      '/.server/key.pem',
      '/index.html%00.png',
      '/api/sessions/..%2f.server%2fpairings/log',
      '/api/sessions/%2e%2e%2f%2e%2e%2fetc%2fpasswd/report',
      '/api/sessions/.server%2fbays/log',
    ];
    for (const path of paths) {
      const answer = await get(shop.base, path, tokens.supervisor);
      expect([path, answer.status >= 400]).toEqual([path, true]);
      expect(answer.body).not.toMatch(/root:|PRIVATE|tokenHash|not for the web/);
    }
  });
});

describe('A request', () => {
  test('under another name, or from another page, gets nothing', async () => {
    const { port } = shop.server;
    const tries: Record<string, string>[] = [
      { host: `evil.example:${port}` },
      { host: `127.0.0.1:${port + 1}` },
      { origin: 'https://evil.example' },
      { origin: `http://127.0.0.1:${port}` },
      { origin: 'null' },
    ];
    for (const headers of tries) {
      const answer = await fetchRaw(
        shop.base,
        '/api/pair',
        { method: 'POST', headers: { 'content-type': 'application/json', ...headers } },
        JSON.stringify({ v: PROTOCOL_VERSION, code: shop.code('technician'), device: 'x' }),
      );
      expect(errorOf(answer)).toBe('wrongOrigin');
    }
  });

  test('without a token, with a wrong one or of a role that may not gets one sentence', async () => {
    for (const path of ['/api/sessions', '/api/sessions/x/log', '/api/sessions/x/report']) {
      expect(errorOf(await get(shop.base, path))).toBe('notPaired');
      expect(errorOf(await get(shop.base, path, 'a'.repeat(43)))).toBe('notPaired');
      expect(errorOf(await get(shop.base, path, tokens.second))).toBe('notYourRole');
    }
    expect(errorOf(await upload(record, tokens.supervisor))).toBe('notYourRole');
    // A token in the address is no token.
    expect(errorOf(await get(shop.base, `/api/sessions?token=${tokens.supervisor}`))).toBe('notPaired');
  });

  test('that is too long or no JSON is refused', async () => {
    expect(errorOf(await post(`${shop.base}/api/pair`, { filler: 'x'.repeat(10_000) }))).toBe('tooLong');
    const broken = await fetchRaw(
      shop.base,
      '/api/pair',
      { method: 'POST', headers: { 'content-type': 'application/json' } },
      '{"v":',
    );
    expect(errorOf(broken)).toBe('malformed');
  });
});

describe('A record that a tablet finished by itself', () => {
  test('is verified and kept, once, and its report can be read', async () => {
    const first = JSON.parse((await upload(record)).body);
    expect(first).toMatchObject({ verified: true, again: false });
    expect(JSON.parse((await upload(record)).body)).toMatchObject({
      id: first.id,
      verified: true,
      again: true,
    });
    expect(await readFile(join(shop.folder, `${first.id}.jsonl`))).toEqual(record);
    const { sessions } = JSON.parse((await get(shop.base, '/api/sessions', tokens.supervisor)).body);
    expect(sessions).toContainEqual(
      expect.objectContaining({ id: first.id, state: 'brokenOff', uploaded: true, vehicle: 'V' }),
    );
    const log = JSON.parse(
      (await get(shop.base, `/api/sessions/${first.id}/log?from=2`, tokens.supervisor)).body,
    );
    expect(log.entries[0].seq).toBe(2);
    expect(log.next).toBe(2 + log.entries.length);
    const report = await get(shop.base, `/api/sessions/${first.id}/report`, tokens.supervisor);
    expect(report.status).toBe(200);
    expect(String(report.headers['content-security-policy'])).toContain("default-src 'none'");
    expect(report.body).toContain('<!doctype html>');
  });

  test('that was altered is kept and marked; what is no record is not kept', async () => {
    const altered = record.toString('utf8').replace('"text":"', '"text":"Never ');
    expect(altered).not.toBe(record.toString('utf8'));
    const answer = JSON.parse((await upload(altered)).body);
    expect(answer).toMatchObject({ verified: false, again: false });
    expect(answer.id).toMatch(/\.damaged$/);
    const { sessions } = JSON.parse((await get(shop.base, '/api/sessions', tokens.supervisor)).body);
    expect(sessions.find(({ id }: { id: string }) => id === answer.id).state).toBe('damaged');
    expect(errorOf(await upload('{"hello":"there"}\n'))).toBe('malformed');
    expect(errorOf(await upload(''))).toBe('malformed');
  });
});

describe('The report in a tab of its own', () => {
  test('opens by a cookie, and is reloaded by it as a page; for this report only, while its device is paired', async () => {
    const { sessions } = JSON.parse((await get(shop.base, '/api/sessions', tokens.supervisor)).body);
    const [{ id }, other] = sessions;
    const pass = await post(
      `${shop.base}/api/sessions/${id}/report`,
      {},
      { authorization: `Bearer ${tokens.supervisor}` },
    );
    const cookie = String(pass.headers['set-cookie']);
    expect(cookie).toMatch(/HttpOnly/);
    expect(cookie).toMatch(/Secure/);
    expect(cookie).toMatch(/SameSite=Strict/);
    const { path } = JSON.parse(pass.body);
    const open = (at: string) => fetchRaw(shop.base, at, { headers: { cookie: cookie.split(';')[0] ?? '' } });
    for (const reload of [1, 2, 3]) expect([reload, (await open(path)).status]).toEqual([reload, 200]);
    expect(errorOf(await get(shop.base, path))).toBe('notPaired');
    const second = await post(
      `${shop.base}/api/sessions/${id}/report`,
      {},
      { authorization: `Bearer ${tokens.supervisor}` },
    );
    const stolen = String(second.headers['set-cookie']).split(';')[0] ?? '';
    const elsewhere = await fetchRaw(shop.base, `/api/sessions/${other.id}/report`, {
      headers: { cookie: stolen },
    });
    expect(errorOf(elsewhere)).toBe('notPaired');
    const reader = shop.server.devices().find(({ role }) => role === 'supervisor');
    await shop.server.letGo(reader?.id ?? '');
    expect(errorOf(await open(path))).toBe('notPaired');
    tokens.supervisor = await shop.pair('supervisor');
  });
});

describe('What the server keeps for itself', () => {
  test('is readable by its owner only, and holds no token', async () => {
    const own = join(shop.folder, '.server');
    for (const file of ['key.pem', 'certificate.pem', 'authority.json', 'pairings.json'])
      expect((await stat(join(own, file))).mode & 0o077).toBe(0);
    const pairings = await readFile(join(own, 'pairings.json'), 'utf8');
    for (const token of Object.values(tokens)) expect(pairings).not.toContain(token);
  });

  test('the certificate stays the same from run to run, while it is good for the same addresses', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'certificate-'));
    const first = await certificateFor(folder, ['localhost', '192.168.2.7']);
    expect(await certificateFor(folder, ['192.168.2.7'])).toEqual(first);
    expect((await certificateFor(folder, ['192.168.2.8'])).fingerprint).not.toBe(first.fingerprint);
  });
});

describe('Pairing', () => {
  test('with a wrong or used code fails, and after some tries fails whatever is typed', async () => {
    shop.freezeRates();
    const used = shop.code('supervisor');
    const pair = (code: string) => post(`${shop.base}/api/pair`, { v: PROTOCOL_VERSION, code, device: 'x' });
    expect((await pair(used)).status).toBe(200);
    const answers: string[] = [];
    for (let tries = 0; tries < 8; tries += 1) answers.push(errorOf(await pair(used)));
    expect(answers[0]).toMatch(/wrongCode|tooManyTries/);
    expect(answers.at(-1)).toBe('tooManyTries');
    expect(errorOf(await pair(shop.code('technician')))).toBe('tooManyTries');
  });

  test('tells the terminal nothing that is secret', () => {
    const told = shop.told.join('\n');
    for (const token of Object.values(tokens)) expect(told).not.toContain(token);
    expect(told).not.toMatch(/\d{6}/);
  });
});
