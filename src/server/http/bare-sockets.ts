import type { Server, Socket } from 'node:net';
import type { Duplex } from 'node:stream';
import { addressKey } from '../rate-limit.ts';
import { Refused, refusalOf } from '../refused.ts';
import type { KnownAddresses } from './known-addresses.ts';

/**
 * Sockets of one address: a page opens six, and a shop may sit behind one address with fifty of them. Beyond those that all may
 * have together, a share is for addresses of paired devices.
 */
const MOST = { ofOne: 320, ofAll: 2000, share: 400 };

/**
 * Keeps sockets that come in crowds from taking the place of others.
 * @returns what closes all that are still open
 */
export function watchSockets(server: Server, known: Pick<KnownAddresses, 'has'>, most = MOST): () => void {
  const sockets = new Set<Socket>();
  const open = new Map<string, number>();
  server.maxConnections = most.ofAll + most.share;
  server.on('connection', (socket: Socket) => {
    sockets.add(socket);
    const address = socket.remoteAddress ?? '';
    const key = addressKey(address);
    const count = (open.get(key) ?? 0) + 1;
    open.set(key, count);
    socket.once('close', () => {
      sockets.delete(socket);
      const left = (open.get(key) ?? 1) - 1;
      if (left > 0) open.set(key, left);
      else open.delete(key);
    });
    if (count > most.ofOne || (sockets.size > most.ofAll && !known.has(address))) socket.destroy();
  });
  return () => {
    for (const socket of sockets) socket.destroy();
  };
}

const BAD = '400 Bad Request';

const statusText: Readonly<Record<string, string>> = {
  ERR_HTTP_REQUEST_TIMEOUT: '408 Request Timeout',
  HPE_HEADER_OVERFLOW: '431 Request Header Fields Too Large',
};

/** What is no HTTP, or came too slowly, gets one sentence of ours and the end of its connection. */
export function refuseBrokenRequest(error: Error & { readonly code?: string }, socket: Socket): void {
  // Without TLS nothing can be answered, and a socket that broke takes nothing in.
  if (!/^(HPE|ERR_HTTP)_/.test(error.code ?? '') || !socket.writable) return void socket.destroy();
  answer(socket, statusText[error.code ?? ''] ?? BAD);
}

/** What asks for a WebSocket in a way that is none. */
export function refuseBrokenUpgrade(_error: Error, socket: Duplex): void {
  answer(socket, BAD);
}

function answer(socket: Duplex, status: string): void {
  const refusal = refusalOf(
    new Refused('malformed', 'That is no request that can be read; reload the page.'),
  );
  const body = JSON.stringify({ error: refusal });
  const head = [
    `HTTP/1.1 ${status}`,
    'content-type: application/json; charset=utf-8',
    `content-length: ${Buffer.byteLength(body)}`,
    'connection: close',
  ];
  socket.end(`${head.join('\r\n')}\r\n\r\n${body}`, () => socket.destroy());
}
