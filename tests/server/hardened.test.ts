import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { readdir, stat } from 'node:fs/promises';
import { connect } from 'node:net';
import { join } from 'node:path';
import { connect as connectTls } from 'node:tls';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { secure } from '../../src/server/http/headers.ts';
import { Face } from './support/face.ts';
import { get } from './support/https.ts';
import { openShop, type TestShop } from './support/shop.ts';

let shop: TestShop;
let token: string;
const PATIENCE_MS = 2000;

beforeAll(async () => {
  shop = await openShop({ patienceMs: PATIENCE_MS });
  token = await shop.pair('technician');
  const face = await Face.paired(shop.base, token);
  await face.do({ do: 'begin' });
  await get(shop.base, '/api/sessions', token);
  face.close();
});

afterAll(() => shop.server.close());

/** Much longer than a socket is waited for here. */
const LONGEST_MS = 60_000;

/** What comes back for these bytes over TLS, until the server ends the connection. */
async function raw(text: string): Promise<string> {
  const socket = connectTls({ port: shop.server.port, host: '127.0.0.1', rejectUnauthorized: false });
  let answer = '';
  socket.on('data', part => {
    answer += part;
  });
  socket.on('error', () => {});
  await once(socket, 'secureConnect');
  socket.write(text);
  await once(socket, 'close', { signal: AbortSignal.timeout(LONGEST_MS) });
  return answer;
}

describe('A socket', () => {
  test('that never begins to speak TLS is closed', async () => {
    const socket = connect(shop.server.port, '127.0.0.1');
    socket.on('error', () => {});
    let answer = '';
    socket.on('data', part => {
      answer += part;
    });
    await once(socket, 'close', { signal: AbortSignal.timeout(LONGEST_MS) });
    expect(answer).toBe('');
  });

  test('that asks for nothing, or for half of something, is closed with one sentence', async () => {
    for (const text of ['', 'GET / HTTP/1.1\r\nhost: x'])
      expect(await raw(text)).toMatch(/^HTTP\/1\.1 408|^$/);
  });

  test('that never says hello is closed', async () => {
    const face = await Face.connect(shop.base);
    await face.until(() => face.closeCode !== null);
    // Its hello may be on the way: a page that is told that it is not paired does not come again.
    expect(face.errors().at(-1)).toMatchObject({ code: 'notNow', final: true });
  });

  test.each([
    ['ping', { type: 'ping', sentMs: 0 }],
    ['a stop', { type: 'command', id: randomUUID(), deed: { do: 'stop' } }],
  ])('whose hello was swallowed, and of which %s comes first, is told to come again', async (_, message) => {
    const face = await Face.connect(shop.base);
    face.send(message);
    await face.until(() => face.closeCode !== null);
    expect(face.errors().at(-1)).toMatchObject({ code: 'notNow', final: true });
  });
});

describe('Whatever is wrong with a request', () => {
  const host = () => `127.0.0.1:${shop.server.port}`;
  const upgrade = () =>
    `host: ${host()}\r\norigin: https://${host()}\r\nconnection: upgrade\r\nupgrade: websocket`;

  test.each([
    ['no HTTP at all', () => 'hello there\r\n\r\n'],
    [
      'a header beyond measure',
      () => `GET / HTTP/1.1\r\nhost: ${host()}\r\nx: ${'y'.repeat(100_000)}\r\n\r\n`,
    ],
    ['an address that is none', () => `GET /%zz HTTP/1.1\r\nhost: ${host()}\r\nconnection: close\r\n\r\n`],
    [
      'a name that is too long',
      () =>
        `GET /api/sessions/${'x'.repeat(900)}/log HTTP/1.1\r\nhost: ${host()}\r\nconnection: close\r\n\r\n`,
    ],
    [
      'an upgrade without a key',
      () => `GET /ws HTTP/1.1\r\n${upgrade()}\r\nsec-websocket-version: 13\r\n\r\n`,
    ],
    [
      'an upgrade of another version',
      () =>
        `GET /ws HTTP/1.1\r\n${upgrade()}\r\nsec-websocket-key: ${'a'.repeat(22)}==\r\nsec-websocket-version: 5\r\n\r\n`,
    ],
    ['an upgrade where there is none', () => `GET /nowhere HTTP/1.1\r\n${upgrade()}\r\n\r\n`],
    [
      'a body of another kind',
      () =>
        `POST /api/pair HTTP/1.1\r\nhost: ${host()}\r\norigin: https://${host()}\r\ncontent-type: text/xml\r\ncontent-length: 1\r\nconnection: close\r\n\r\nx`,
    ],
  ])('is told in one sentence of our own: %s', async (_what, text) => {
    const answer = await raw(text());
    const body = answer.slice(answer.indexOf('\r\n\r\n') + 4);
    const { error } = JSON.parse(
      body.startsWith('{') ? body : body.slice(body.indexOf('{'), body.lastIndexOf('}') + 1),
    );
    expect(error.sentence).toMatch(/^[A-Z].*\.$/);
    expect(answer).not.toMatch(/fastify|FST_|HPE_|statusCode|sec-websocket-key/i);
  });

  test('who opens an address in a tab gets the sentence alone', async () => {
    const { fetchRaw } = await import('./support/https.ts');
    const answer = await fetchRaw(shop.base, '/api/sessions', { headers: { accept: 'text/html,*/*' } });
    expect(answer.body).toBe('This device is not paired, or not any more; pair it again.');
  });
});

test('A browser is told to come over TLS only, but for names of this machine alone', () => {
  const headersFor = (host: string) => {
    const sent: Record<string, string> = {};
    const reply = {
      header: (name: string, value: string) => {
        sent[name] = value;
      },
      headers: (all: Record<string, string>) => Object.assign(sent, all),
      hasHeader: (name: string) => name in sent,
    };
    secure({ headers: { host }, url: '/' } as never, reply as never);
    return sent;
  };
  expect(headersFor('shop-laptop:8443')['strict-transport-security']).toMatch(/max-age=\d{8}/);
  expect(headersFor('localhost:8443')['strict-transport-security']).toBeUndefined();
});

test('What is kept of sessions is readable by its owner only: records, archive, and what the server notes', async () => {
  const files = await readdir(shop.folder, { withFileTypes: true, recursive: true });
  expect(files.some(({ name }) => name.endsWith('.jsonl'))).toBe(true);
  expect(files.some(({ name }) => name.endsWith('.sqlite'))).toBe(true);
  for (const file of files.filter(each => each.isFile())) {
    const { mode } = await stat(join(file.parentPath, file.name));
    expect([file.name, mode & 0o077]).toEqual([file.name, 0]);
  }
});
