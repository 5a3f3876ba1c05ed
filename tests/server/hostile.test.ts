import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { MAX_CLIENT_MESSAGE_BYTES, PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
let technician: Face;
let token: string;
let secondToken: string;

beforeAll(async () => {
  shop = await openShop({ bays: ['bay 1', 'bay 2'] });
  token = await shop.pair('technician');
  secondToken = await shop.pair('second');
  technician = await Face.paired(shop.base, token);
  await technician.do({ do: 'begin' });
  await technician.until(() => technician.key === 'job.card.asking');
}, 120_000);

afterAll(() => shop.server.close());

const ended = async (face: Face) => {
  await face.until(() => face.closeCode !== null);
  return face.errors().at(-1)?.code;
};

/** Nothing that a test did has changed the session. */
async function unchanged(): Promise<void> {
  await technician.settled();
  expect(technician.key).toBe('job.card.asking');
  expect(technician.state?.view?.state).toBe('working');
}

describe('A connection', () => {
  test('from another page or under another name is not opened', async () => {
    for (const headers of [
      { origin: 'https://evil.example' },
      { origin: '' },
      { host: `evil.example:${shop.server.port}` },
    ])
      await expect(Face.connect(shop.base, headers)).rejects.toThrow('403');
  });

  test('that begins with anything but a hello of a paired device is ended, and nothing is done', async () => {
    const beginnings: unknown[] = [
      { type: 'command', id: randomUUID(), deed: { do: 'stop' } },
      { type: 'hello', v: PROTOCOL_VERSION, token: 'guess' },
      { type: 'hello', v: PROTOCOL_VERSION + 1, token },
      { type: 'ping', sentMs: 1 },
      'hello',
      null,
    ];
    for (const beginning of beginnings) {
      const face = await Face.connect(shop.base);
      face.send(beginning);
      expect(await ended(face)).toMatch(/notNow|notPaired|malformed|otherVersion/);
    }
    await unchanged();
  });

  test('of one bay sees and moves nothing of another', async () => {
    const next = await Face.paired(shop.base, await shop.pair('technician', 'bay 2'));
    expect(next.state?.bay).toBe('bay 2');
    expect(next.state?.view).toBeNull();
    expect(await next.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'nothingRuns' });
    expect(
      await next.do({ do: 'say', turn: technician.state?.turn ?? '', text: 'card is right', via: 'keys' }),
    ).toMatchObject({
      code: 'notNow',
    });
    next.close();
    await unchanged();
  });
});

describe('A message', () => {
  test('that is too long ends the connection with a sentence, one beyond all measure without', async () => {
    for (const bytes of [MAX_CLIENT_MESSAGE_BYTES + 1, MAX_CLIENT_MESSAGE_BYTES * 9]) {
      const face = await Face.paired(shop.base, await shop.pair('second'));
      face.sendRaw('x'.repeat(bytes));
      await face.until(() => face.closeCode !== null);
      if (bytes < MAX_CLIENT_MESSAGE_BYTES * 8)
        expect(face.errors().at(-1)).toMatchObject({ code: 'tooLong', final: true });
    }
    await unchanged();
  });

  test('of any other shape gets an error and changes nothing', async () => {
    const supervisor = await shop.pair('supervisor');
    let face = await Face.paired(shop.base, supervisor);
    const shapes = fc.oneof(
      fc.string(),
      fc.json(),
      fc.jsonValue().map(deed => JSON.stringify({ type: 'command', id: randomUUID(), deed })),
      fc
        .record({
          do: fc.constantFrom('say', 'heard', 'control', 'clear', 'begin'),
          turn: fc.string(),
          text: fc.string(),
          id: fc.string(),
        })
        .map(deed => JSON.stringify({ type: 'command', id: randomUUID(), deed })),
    );
    await fc.assert(
      fc.asyncProperty(shapes, async text => {
        // One that has sent so many at once is not answered any more.
        if (face.errors().length >= 29) face = await Face.paired(shop.base, supervisor);
        const before = face.errors().length;
        face.sendRaw(text);
        await face.settled();
        expect(face.errors().length).toBeGreaterThan(before);
        for (const { sentence } of face.errors()) expect(sentence).toMatch(/\.$/);
      }),
      { numRuns: 60 },
    );
    face.close();
    await unchanged();
  });

  test('that is binary gets an error', async () => {
    technician.sendRaw(Buffer.from(JSON.stringify({ type: 'ping', sentMs: 1 })));
    await technician.until(() => technician.errors().some(({ code }) => code === 'malformed'));
    await unchanged();
  });
});

test('A device of a session that goes on keeps its stop, however many of its messages are no messages', async () => {
  const face = await Face.paired(shop.base, await shop.pair('second'));
  shop.freezeRates();
  for (let sent = 0; sent < 90; sent += 1) face.sendRaw('no message');
  await face.settled();
  expect(face.closeCode).toBeNull();
  expect(face.errors().length).toBeLessThan(90);
  // Of a bay where nothing goes on it is ended.
  const idle = await Face.paired(shop.base, await shop.pair('second', 'bay 2'));
  for (let sent = 0; sent < 90; sent += 1) idle.sendRaw('no message');
  await idle.until(() => idle.closeCode !== null);
  face.close();
  await unchanged();
});

describe('A flood', () => {
  const send = (face: Face, count: number) => {
    for (let sent = 0; sent < count; sent += 1)
      face.send({ type: 'command', id: randomUUID(), deed: { do: 'control', turn: 'x', id: 'goBack' } });
  };

  test('is dammed and soon not even answered; the session does not notice', async () => {
    const face = await Face.paired(shop.base, await shop.pair('second'));
    shop.freezeRates();
    send(face, 1000);
    // A ping would be too much too: what comes after it says that it was read.
    const binary = Buffer.from('x');
    face.sendRaw(binary);
    await face.until(() => face.errors().at(-1)?.code === 'malformed');
    expect(face.errors().filter(({ code }) => code === 'tooFast')).toHaveLength(30);
    await unchanged();
    face.close();
  });

  test('that does not end is cut off', async () => {
    const face = await Face.paired(shop.base, secondToken);
    send(face, 2500);
    expect(await ended(face)).toBe('tooFast');
  });
});
