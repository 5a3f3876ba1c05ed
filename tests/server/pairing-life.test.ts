import { afterEach, describe, expect, test } from 'vitest';
import { PAIRED_FOR_MS } from '../../src/server/pairing/pairings.ts';
import { standingOf, WARN_MS } from '../../src/server/pairing/standing.ts';
import { PROTOCOL_VERSION, type Role, type ServerMessage } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { get, post } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
afterEach(() => shop.server.close());

async function opened(begin = true) {
  shop = await openShop();
  const tokens: Record<string, string> = {};
  const faces = {} as Record<Role, Face>;
  for (const role of ['technician', 'second', 'supervisor'] as const) {
    tokens[role] = await shop.pair(role);
    faces[role] = await Face.paired(shop.base, tokens[role] ?? '');
  }
  const { technician } = faces;
  if (begin) {
    await technician.do({ do: 'begin' });
    await technician.until(() => technician.key === 'job.card.asking');
  }
  const token = (role: Role) => tokens[role] ?? '';
  return { ...faces, token };
}

const news = (face: Face) =>
  face.messages.filter((one): one is Extract<ServerMessage, { type: 'pairing' }> => one.type === 'pairing');
const ended = async (face: Face) => {
  await face.until(() => face.closeCode !== null);
  return face.errors().at(-1)?.code;
};
const hello = async (token: string) => {
  const face = await Face.connect(shop.base);
  face.send({ type: 'hello', v: PROTOCOL_VERSION, token });
  return face;
};

describe('A pairing that runs out while a session goes on', () => {
  test('is told of an hour before, in words of its own for the supervisor', async () => {
    const { technician, supervisor } = await opened();
    shop.passWall(PAIRED_FOR_MS - WARN_MS + 1000);
    for (const face of [technician, supervisor]) {
      await face.settled();
      expect(news(face).at(-1)).toMatchObject({ state: 'endsSoon' });
    }
    expect(news(supervisor).at(-1)?.sentence).toContain('can only stop');
  });

  test('is renewed on a connection that lives, and works as before', async () => {
    const { technician, second } = await opened();
    shop.passWall(PAIRED_FOR_MS + 1000);
    expect(await technician.say('card is right')).toMatchObject({ type: 'ack' });
    expect(await second.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
    expect(news(technician).at(-1)?.expiresAtMs).toBeGreaterThan(Date.now() + PAIRED_FOR_MS);
  });

  test('is not renewed for the supervisor, who keeps the stop and nothing else, and hears no more', async () => {
    const { technician, supervisor, token } = await opened();
    shop.passWall(PAIRED_FOR_MS + 1000);
    const { seq } = supervisor;
    await technician.say('card is right');
    await technician.settled();
    await supervisor.settled();
    expect(supervisor.seq).toBe(seq);
    expect(news(supervisor).at(-1)).toMatchObject({ state: 'stopOnly' });
    expect(await supervisor.do({ do: 'askHold' })).toMatchObject({ code: 'notPaired' });
    expect((await get(shop.base, '/api/sessions', token('supervisor'))).status).toBe(401);
    expect(await supervisor.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
    await technician.until(() => technician.state?.view?.state === 'stopped');
  });

  test('keeps its stop however much its microphone goes on sending', async () => {
    const { supervisor } = await opened();
    shop.passWall(PAIRED_FOR_MS + 1000);
    await supervisor.until(() => news(supervisor).at(-1)?.state === 'stopOnly');
    for (let sent = 0; sent < 200; sent += 1)
      supervisor.send({ type: 'level', levelDbfs: -40, clipping: false, speech: false });
    // What somebody asks for is refused each time, and does not cost the line either.
    for (let asked = 0; asked < 40; asked += 1)
      expect(await supervisor.do({ do: 'askHold' })).toMatchObject({ code: 'notPaired', final: false });
    expect(await supervisor.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
    expect(supervisor.closeCode).toBeNull();
  });

  test('and was not there meanwhile, comes back for a stop and nothing else', async () => {
    const { second, token } = await opened();
    second.close();
    await second.until(() => second.closeCode !== null);
    shop.passWall(PAIRED_FOR_MS + 1000);
    const back = await hello(token('second'));
    await back.until(() => news(back).length > 0);
    expect(back.messages.some(({ type }) => type === 'snapshot' || type === 'patch')).toBe(false);
    expect(await back.do({ do: 'clear', turn: 'x' })).toMatchObject({ code: 'notPaired' });
    expect(await back.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
  });

  test('is worth nothing where no session goes on', async () => {
    const { technician, token } = await opened(false);
    shop.passWall(PAIRED_FOR_MS + 1000);
    technician.send({ type: 'ping', sentMs: 1 });
    expect(await ended(technician)).toBe('notPaired');
    expect(await ended(await hello(token('technician')))).toBe('notPaired');
  });
});

describe('A pairing is ended', () => {
  test('by the device itself, whoever it is, in mid-connection', async () => {
    const { technician, second, supervisor, token } = await opened();
    for (const [role, face] of Object.entries({ second, supervisor, technician })) {
      const device = face.state?.devices.find(each => each.role === role)?.id ?? '';
      face.send({ type: 'command', id: crypto.randomUUID(), deed: { do: 'forget', device } });
      expect(await ended(face)).toBe('notPaired');
      // Let go of, it does not even stop: it may be in other hands.
      expect(await ended(await hello(token(role as Role)))).toBe('notPaired');
    }
  });

  test("from the supervisor's face, while the device is connected; by nobody else's", async () => {
    const { technician, second, supervisor } = await opened();
    const device = technician.state?.devices.find(({ role }) => role === 'second')?.id ?? '';
    expect(await technician.do({ do: 'forget', device })).toMatchObject({ code: 'notNow' });
    expect(await supervisor.do({ do: 'forget', device })).toMatchObject({ type: 'ack' });
    expect(await ended(second)).toBe('notPaired');
    await technician.until(() => technician.state?.devices.length === 2);
  });

  test('from the terminal', async () => {
    const { second } = await opened();
    const { id = '' } = shop.server.devices().find(({ role }) => role === 'second') ?? {};
    expect(await shop.server.letGo(id)).toBe(true);
    expect(await ended(second)).toBe('notPaired');
    expect(await shop.server.letGo(id)).toBe(false);
  });

  test('for good: a session that goes on renews none that was let go of', () => {
    const attendance = { role: 'technician', letGo: true, leftMs: 0, sessionOpen: true, live: true } as const;
    expect(standingOf(attendance)).toBe('gone');
    expect(standingOf({ ...attendance, letGo: false })).toBe('renew');
    expect(standingOf({ ...attendance, letGo: false, role: 'supervisor' })).toBe('stopOnly');
  });
});

describe('A code that is refused', () => {
  const guess = () => post(`${shop.base}/api/pair`, { v: PROTOCOL_VERSION, code: '000000', device: 'x' });

  test('is told of in the terminal, with its address and without the code', async () => {
    shop = await openShop();
    await guess();
    expect(shop.told.join('\n')).toContain('A pairing code was refused: a device at 127.0.0.1');
    expect(shop.told.join('\n')).not.toContain('000000');
  });

  test('keeps its own address from trying on, and nobody else from pairing', async () => {
    shop = await openShop();
    const codes = shop.server.codes();
    shop.freezeRates();
    const statuses: number[] = [];
    for (let tries = 0; tries < 40; tries += 1) statuses.push((await guess()).status);
    expect(statuses.filter(status => status === 403).length).toBeLessThanOrEqual(10);
    expect(statuses.at(-1)).toBe(429);
    expect(shop.server.codes()).toEqual(codes);
    const paired = await post(
      `${shop.base}/api/pair`,
      { v: PROTOCOL_VERSION, code: shop.code('technician'), device: 'x' },
      {},
      '127.0.0.2',
    );
    expect(paired.status).toBe(200);
  });
});
