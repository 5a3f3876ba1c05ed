import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import type { SessionRow } from '../../src/server/protocol/index.ts';
import { goUntil, rig } from '../helpers/session-rig.ts';
import { signedOffInVain } from './support/forged.ts';
import { fetchRaw, get } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
let technician: string;
let supervisor: string;

async function recordOf(profile: string): Promise<Buffer> {
  const run = await rig(profile);
  await run.session.begin();
  await goUntil(run, 'job.makerFirst.asking');
  await run.record.close();
  return readFile(run.path);
}

beforeAll(async () => {
  const before = await recordOf('demo-four');
  const folder = await mkdtemp(join(tmpdir(), 'shop-'));
  await writeFile(join(folder, 'copied.jsonl'), await signedOffInVain(before));
  shop = await openShop({ folder });
  technician = await shop.pair('technician');
  supervisor = await shop.pair('supervisor');
});

afterAll(() => shop.server.close());

const upload = async (content: Buffer) =>
  JSON.parse(
    (
      await fetchRaw(
        shop.base,
        '/api/upload',
        {
          method: 'POST',
          headers: { authorization: `Bearer ${technician}`, 'content-type': 'application/x-ndjson' },
        },
        content,
      )
    ).body,
  );
const row = async (id: string): Promise<SessionRow | undefined> =>
  JSON.parse((await get(shop.base, '/api/sessions', supervisor)).body).sessions.find(
    (each: SessionRow) => each.id === id,
  );

test('A sign-off that its events do not lead to is shown as not confirmed, and never as anything better', async () => {
  const seen = new Set<string>();
  await vi.waitFor(
    async () => {
      seen.add((await row('copied'))?.state ?? 'none');
      expect(seen).toContain('notConfirmed');
    },
    { timeout: 120_000, interval: 100 },
  );
  expect([...seen].filter(state => !['unchecked', 'notConfirmed'].includes(state))).toEqual([]);
});

test('A record that is sent in is looked at before anybody sees it: an honest one is confirmed, a false sign-off is not', async () => {
  const own = await recordOf('demo-six');
  const good = await upload(own);
  expect(good).toMatchObject({ verified: true, confirmed: true });
  expect((await row(good.id))?.state).toBe('brokenOff');
  const vain = await upload(await signedOffInVain(own));
  expect(vain).toMatchObject({ verified: true, confirmed: false });
  expect((await row(vain.id))?.state).toBe('notConfirmed');
});
