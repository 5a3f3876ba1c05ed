import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addFiles } from '../../src/archive/add-files.ts';
import { openArchive } from '../../src/archive/open.ts';
import type { SessionRow } from '../../src/server/protocol/index.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';
import { Face } from './support/face.ts';
import { fetchRaw, get } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';

const ARCHIVE = 'first-fire-archive.sqlite';

let shop: TestShop;
let supervisor: string;
let technician: string;
/** A record, and the same session some answers later. */
let shorter: Buffer;
let longer: Buffer;

async function recordUntil(...keys: string[]): Promise<Buffer[]> {
  const run = await rig();
  await run.session.begin();
  const versions: Buffer[] = [];
  for (const key of keys) {
    await goUntil(run, key);
    await run.session.settled();
    versions.push(await readFile(run.path));
  }
  await run.record.close();
  return versions;
}

beforeAll(async () => {
  shop = await openShop();
  supervisor = await shop.pair('supervisor');
  technician = await shop.pair('technician');
  const [before, after] = await recordUntil('job.makerFirst.asking', 'job.hazards.asking');
  shorter = before ?? Buffer.of();
  longer = after ?? Buffer.of();
}, 120_000);

afterAll(() => shop.server.close());

async function list(find = '', own = shop, token = supervisor): Promise<readonly SessionRow[]> {
  const { body } = await get(own.base, `/api/sessions?find=${encodeURIComponent(find)}`, token);
  return JSON.parse(body).sessions;
}

const upload = (content: Buffer | string, headers: Record<string, string> = {}) =>
  fetchRaw(
    shop.base,
    '/api/upload',
    {
      method: 'POST',
      headers: {
        authorization: `Bearer ${technician}`,
        'content-type': 'application/x-ndjson',
        ...headers,
      },
    },
    content,
  );
/** @returns the id under which it is kept */
async function sendTo(own: TestShop, token: string, content: Buffer): Promise<string> {
  const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/x-ndjson' };
  const { body } = await fetchRaw(own.base, '/api/upload', { method: 'POST', headers }, content);
  return JSON.parse(body).id;
}

const errorOf = ({ body }: { body: string }) => JSON.parse(body).error.code;

describe('The sessions of the shop', () => {
  test('are found by a vehicle, an engine or a person in them, whatever the case', async () => {
    expect(await list()).toEqual([]);
    await upload(shorter);
    for (const find of ['', 'demo SIX', 'v'])
      expect(await list(find)).toEqual([
        expect.objectContaining({ vehicle: 'V', state: 'brokenOff', uploaded: true }),
      ]);
    expect(await list('no such vehicle')).toEqual([]);
    expect(errorOf(await get(shop.base, `/api/sessions?find=${'x'.repeat(81)}`, supervisor))).toBe(
      'malformed',
    );
  });

  test('are listed once, by their longest record, when a tablet went on and sent it again', async () => {
    const answers = [await upload(longer), await upload(shorter), await upload(longer)].map(({ body }) =>
      JSON.parse(body),
    );
    expect(answers.map(({ again, verified }) => ({ again, verified }))).toEqual([
      { again: false, verified: true },
      { again: true, verified: true },
      { again: true, verified: true },
    ]);
    const [row, ...others] = await list();
    expect(others).toEqual([]);
    expect(row?.id).toBe(answers[0]?.id);
  });

  test('hold the one that runs, and what is no record at all, marked', async () => {
    writeFileSync(join(shop.folder, 'stray.jsonl'), 'shopping list\n');
    const face = await Face.paired(shop.base, technician);
    await face.do({ do: 'begin' });
    const rows = await list();
    expect(rows.find(({ id }) => id === face.state?.session)?.state).toBe('running');
    expect(rows.find(({ id }) => id === 'stray')?.state).toBe('damaged');
    rmSync(join(shop.folder, 'stray.jsonl'));
    expect((await list()).some(({ id }) => id === 'stray')).toBe(false);
    face.close();
  });
});

describe('A session that only the archive has', () => {
  test('is listed, and its report is read from there', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'shop-'));
    const [record] = await recordUntil('job.protection.asking');
    const file = join(mkdtempSync(join(tmpdir(), 'elsewhere-')), 'record.jsonl');
    writeFileSync(file, record ?? '');
    const archive = await openArchive(join(folder, ARCHIVE));
    for await (const { kind } of addFiles(archive, [file])) expect(kind).toBe('new');
    await archive.close();

    const other = await openShop({ folder });
    const token = await other.pair('supervisor');
    const [row] = await list('', other, token);
    expect(row).toMatchObject({ vehicle: 'V', uploaded: false });
    expect(row?.id).toMatch(/^[0-9a-f]{64}$/);
    const report = await get(other.base, `/api/sessions/${row?.id}/report`, token);
    expect(report.status).toBe(200);
    expect(report.body).toContain('<!doctype html>');
    for (const id of ['f'.repeat(64), row?.id.slice(0, 12), '..%2f..%2fetc%2fpasswd', `${row?.id}%00`])
      expect((await get(other.base, `/api/sessions/${id}/report`, token)).status).toBe(404);
    await other.server.close();
  });
});

test('An archive that cannot be used costs nobody the list: the folder is shown, and the terminal says why', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'shop-'));
  writeFileSync(join(folder, ARCHIVE), 'not a database, whatever its name says');
  writeFileSync(join(folder, 'one.jsonl'), longer);
  const other = await openShop({ folder });
  const token = await other.pair('supervisor');
  expect(await list('', other, token)).toEqual([expect.objectContaining({ id: 'one', vehicle: 'V' })]);
  expect(await list('another', other, token)).toEqual([]);
  expect(other.told.join()).toContain(ARCHIVE);
  await other.server.close();
});

describe('A session that a tablet held without the laptop, and ended there', () => {
  test('is gone on with by nobody, however often it is asked for, and leaves no copy as one of the laptop', async () => {
    const run = await rig();
    await run.session.begin();
    await goUntil(run, 'job.makerFirst.asking');
    for (const words of ['stop', 'all is off', 'end the session', 'correct']) await run.type(words);
    await run.session.outcome;
    await run.record.close();
    const other = await openShop();
    const token = await other.pair('technician');
    const id = await sendTo(other, token, await readFile(run.path));
    const face = await Face.paired(other.base, token);
    for (let asked = 0; asked < 3; asked += 1)
      expect(await face.do({ do: 'resume', session: id })).toMatchObject({
        code: 'notNow',
        sentence: 'That session is over; begin a new one.',
      });
    expect(readdirSync(other.folder).filter(name => name.endsWith('.jsonl'))).toEqual([`${id}.jsonl`]);
    const owners = await readFile(join(other.folder, '.server', 'owners.jsonl'), 'utf8');
    expect(owners).not.toContain('"device":null');
    face.close();
    await other.server.close();
  });

  test('but not ended, is gone on with in a copy that says where it comes from', async () => {
    const other = await openShop();
    const token = await other.pair('technician');
    const id = await sendTo(other, token, longer);
    const face = await Face.paired(other.base, token);
    expect(await face.do({ do: 'resume', session: id })).toMatchObject({ type: 'ack' });
    const owners = await readFile(join(other.folder, '.server', 'owners.jsonl'), 'utf8');
    expect(owners).toContain(`"copiedFrom":"${id}"`);
    face.close();
    await other.server.close();
  });
});

describe('What is sent in', () => {
  test('is refused with one sentence when it is too large, of another kind, or from a device that is not paired', async () => {
    expect(errorOf(await upload(Buffer.alloc(32 * 1024 * 1024 + 1, 'x')))).toBe('tooLong');
    expect(errorOf(await upload(longer, { 'content-type': 'text/html' }))).toBe('malformed');
    expect(
      errorOf(await upload(JSON.stringify({ path: '../x' }), { 'content-type': 'application/json' })),
    ).toBe('malformed');
    expect(errorOf(await upload(longer, { authorization: 'Bearer guess' }))).toBe('notPaired');
    expect(errorOf(await upload(longer, { origin: 'https://evil.example' }))).toBe('wrongOrigin');
  });

  test('never becomes part of a path, whatever stands in it', async () => {
    const tricky = longer.toString('utf8').replaceAll('"V"', '"../../../../tmp/first-fire-escape"');
    const { id, verified } = JSON.parse((await upload(tricky)).body);
    expect(verified).toBe(false);
    expect(id).toMatch(/^upload-[0-9a-f]{32}\.damaged$/);
    const row = (await list()).find(each => each.id === id);
    expect(row?.state).toBe('damaged');
  });

  test('too often by one device is sent later', async () => {
    shop.freezeRates();
    const codes: string[] = [];
    for (let nth = 0; nth < 25; nth += 1) {
      const { status, body } = await upload('{"hello":"there"}\n');
      codes.push(status === 200 ? 'kept' : JSON.parse(body).error.code);
    }
    expect(codes.at(-1)).toBe('tooFast');
  });
});
