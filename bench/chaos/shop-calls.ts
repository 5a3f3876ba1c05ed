import type { RequestOptions } from 'node:https';
import { PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { type Answer, fetchRaw, post } from '../../tests/server/support/https.ts';
import type { ServerProcess } from './server.ts';

const PATIENCE_MS = 60_000;

/** What a device asks by HTTP; null where nothing came back, as from a server that was just killed. */
export class ShopCalls {
  readonly #server: ServerProcess;

  constructor(server: ServerProcess) {
    this.#server = server;
  }

  get(path: string, token: string, address: string): Promise<Answer | null> {
    return this.#ask(path, { localAddress: address, headers: { authorization: `Bearer ${token}` } });
  }

  /** @returns why nothing came back, in words, where nothing did */
  upload(body: Buffer, token: string, address: string): Promise<Answer | string> {
    const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/x-ndjson' };
    return this.#send('/api/upload', { method: 'POST', localAddress: address, headers }, body).catch(
      (error: Error & { code?: string }) => wordsFor(error),
    );
  }

  pair(code: string, device: string, address: string): Promise<Answer | null> {
    const data = { v: PROTOCOL_VERSION, code, device };
    return post(`${this.#server.base}/api/pair`, data, {}, address).catch(() => null);
  }

  #ask(path: string, options: RequestOptions): Promise<Answer | null> {
    return this.#send(path, options).catch(() => null);
  }

  #send(path: string, options: RequestOptions, body?: Buffer): Promise<Answer> {
    const signal = AbortSignal.timeout(PATIENCE_MS);
    return fetchRaw(this.#server.base, path, { ...options, signal }, body);
  }
}

function wordsFor({ name, code, message }: Error & { readonly code?: string }): string {
  if (name === 'AbortError' || name === 'TimeoutError') return `no answer within ${PATIENCE_MS / 1000} s`;
  if (code === 'ECONNREFUSED') return 'no answer: the server was down';
  if (code === 'ECONNRESET' || code === 'EPIPE') return 'no answer: the server was killed as it was at it';
  return `no answer: ${code ?? message}`;
}
