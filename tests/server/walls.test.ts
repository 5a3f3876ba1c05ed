import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SessionRow } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { signedOffInVain } from './support/forged.ts';
import { fetchRaw, get } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
/** Of bay 1, where a session runs. */
let technician: Face;
let secondToken: string;
let secondDevice: string;
/** Of bay 2. */
let stranger: Face;
let strangerToken: string;
let supervisorToken: string;
let session: string;

beforeAll(async () => {
  shop = await openShop({ bays: ['bay 1', 'bay 2'] });
  technician = await Face.paired(shop.base, await shop.pair('technician', 'bay 1'));
  secondToken = await shop.pair('second', 'bay 1');
  const second = await Face.paired(shop.base, secondToken);
  secondDevice = second.state?.devices.find(({ role }) => role === 'second')?.id ?? '';
  second.close();
  strangerToken = await shop.pair('technician', 'bay 2');
  stranger = await Face.paired(shop.base, strangerToken);
  supervisorToken = await shop.pair('supervisor', 'bay 2');
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
  await technician.until(
    () => technician.state?.devices.find(({ id }) => id === secondDevice)?.connected === false,
  );
  session = technician.state?.session ?? '';
});

afterAll(() => shop.server.close());

const errorOf = ({ status, body }: { status: number; body: string }) =>
  status === 200 ? 'none' : JSON.parse(body).error.code;
const list = async (token: string): Promise<readonly SessionRow[]> =>
  JSON.parse((await get(shop.base, '/api/sessions', token)).body).sessions;
const upload = (content: Buffer, token: string) =>
  fetchRaw(
    shop.base,
    '/api/upload',
    { method: 'POST', headers: { authorization: `Bearer ${token}`, 'content-type': 'application/x-ndjson' } },
    content,
  );

describe('A device of another bay', () => {
  test('lets go of nobody here, and the stop of the one it named still counts', async () => {
    expect(await stranger.do({ do: 'forget', device: secondDevice })).toMatchObject({ code: 'notFound' });
    const second = await Face.paired(shop.base, secondToken);
    expect(await second.do({ do: 'stop' })).toMatchObject({ type: 'ack' });
    await technician.until(() => technician.state?.view?.state === 'stopped');
    second.close();
  });

  test('reads neither the list, the record nor the report; the supervisor reads all of them', async () => {
    for (const what of ['log', 'report']) {
      expect(errorOf(await get(shop.base, `/api/sessions/${session}/${what}`, strangerToken))).toBe(
        'notYours',
      );
      expect(errorOf(await get(shop.base, `/api/sessions/${session}/${what}`, supervisorToken))).toBe('none');
    }
    expect((await list(strangerToken)).map(({ id }) => id)).not.toContain(session);
    expect((await list(supervisorToken)).map(({ id }) => id)).toContain(session);
  });

  test('cannot end a running session by a record of it that goes on with a sign-off', async () => {
    const running = await readFile(join(shop.folder, `${session}.jsonl`));
    const forged = await signedOffInVain(running);
    expect(errorOf(await upload(forged, strangerToken))).toBe('notYours');
    const row = (await list(supervisorToken)).find(({ id }) => id === session);
    expect(row?.state).toBe('running');
    expect((await list(supervisorToken)).map(({ state }) => state)).not.toContain('signedOff');
  });
});

describe('A record', () => {
  test("that goes on from one of the laptop's own is kept as a fork, marked, and takes nobody's place", async () => {
    const running = await readFile(join(shop.folder, `${session}.jsonl`));
    const forged = await signedOffInVain(running);
    const answer = await upload(forged, await shop.pair('technician', 'bay 1'));
    const { id } = JSON.parse(answer.body);
    expect(id).toMatch(/^upload-[0-9a-f]{32}\.fork$/);
    const rows = await list(supervisorToken);
    expect(rows.find(row => row.id === id)).toMatchObject({
      fork: true,
      uploaded: true,
      state: 'notConfirmed',
    });
    expect(rows.find(row => row.id === session)).toMatchObject({ fork: false, state: 'running' });
    expect(await readFile(join(shop.folder, `${session}.jsonl`))).toEqual(running);
    expect(await technician.do({ do: 'resume', session: id })).toMatchObject({ code: 'notNow' });
  });
});

test('Nobody, of the same bay either, sends in a session that the laptop itself runs', async () => {
  const token = await shop.pair('technician', 'bay 1');
  const running = await readFile(join(shop.folder, `${session}.jsonl`));
  expect(errorOf(await upload(running, token))).toBe('notYours');
});
