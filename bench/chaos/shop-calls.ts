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

  upload(body: Buffer, token: string, address: string): Promise<Answer | null> {
    const headers = { authorization: `Bearer ${token}`, 'content-type': 'application/x-ndjson' };
    return this.#ask('/api/upload', { method: 'POST', localAddress: address, headers }, body);
  }

  pair(code: string, device: string, address: string): Promise<Answer | null> {
    const data = { v: PROTOCOL_VERSION, code, device };
    return post(`${this.#server.base}/api/pair`, data, {}, address).catch(() => null);
  }

  #ask(path: string, options: RequestOptions, body?: Buffer): Promise<Answer | null> {
    const signal = AbortSignal.timeout(PATIENCE_MS);
    return fetchRaw(this.#server.base, path, { ...options, signal }, body).catch(() => null);
  }
}
