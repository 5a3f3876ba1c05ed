import { createHash } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { keepModel } from '../../src/server/models/model-folder.ts';
import { modelListSchema } from '../../src/server/protocol/index.ts';
import { readModel } from '../../src/voice/decoders/vosk/model/read-model.ts';
import { zippedModel } from '../voice/decoders/vosk/model-files.ts';
import { get } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
let models: string;

beforeAll(async () => {
  models = await mkdtemp(join(tmpdir(), 'models-'));
  const model = await readModel(zippedModel(), { archiveName: 'small-en.zip', stopWords: ['stop'] });
  await keepModel(models, model, new Date('2026-01-02T03:04:05Z'));
  shop = await openShop({ models });
});
afterAll(() => shop.server.close());

/** The SHA-256 of what is sent, byte for byte. */
const sha256Of = (path: string, token: string) =>
  new Promise<string>((resolve, reject) => {
    const { hostname, port } = new URL(shop.base);
    const headers = { authorization: `Bearer ${token}` };
    request({ hostname, port, path, headers, rejectUnauthorized: false, agent: false }, answer => {
      const hash = createHash('sha256');
      answer.on('data', (part: Buffer) => hash.update(part));
      answer.on('end', () => resolve(hash.digest('hex')));
    })
      .on('error', reject)
      .end();
  });

test('A paired device that listens sees the models of the laptop and gets one, whole', async () => {
  for (const role of ['technician', 'second'] as const) {
    const token = await shop.pair(role);
    const { models: listed } = modelListSchema.parse(
      JSON.parse((await get(shop.base, '/api/models', token)).body),
    );
    expect(listed.map(({ name }) => name)).toEqual(['small-en']);
    expect(await sha256Of('/api/models/small-en', token)).toBe(listed[0]?.sha256);
  }
});

test('Nobody unpaired, and no supervisor, gets a model or the list', async () => {
  const supervisor = await shop.pair('supervisor');
  for (const path of ['/api/models', '/api/models/small-en']) {
    expect((await get(shop.base, path)).status).toBe(401);
    expect((await get(shop.base, path, 'guessed')).status).toBe(401);
    expect((await get(shop.base, path, supervisor)).status).toBe(403);
  }
});

test('No name leads out of the folder', async () => {
  const token = await shop.pair('technician');
  const names = [
    '..',
    '..%2fsmall-en',
    '%2e%2e%2f%2e%2e%2fetc%2fpasswd',
    'small-en.json',
    'small-en.tar.gz',
    '%00',
  ];
  for (const name of names) {
    const { status, body } = await get(shop.base, `/api/models/${name}`, token);
    expect([name, status]).toEqual([name, status >= 400 ? status : 'refused']);
    expect(body).not.toContain('sha256');
  }
});

test('A laptop without models has an empty list', async () => {
  const token = await shop.pair('technician');
  await rm(models, { recursive: true });
  expect(JSON.parse((await get(shop.base, '/api/models', token)).body)).toEqual({ models: [] });
});
