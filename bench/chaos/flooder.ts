import { createInterface } from 'node:readline';
import { z } from 'zod';
import { PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { fetchRaw, post } from '../../tests/server/support/https.ts';

/** A flood over HTTP: one request, or so many bytes sent in, so often. */
export const floodSchema = z.object({
  id: z.number(),
  base: z.string(),
  address: z.string(),
  token: z.string(),
  what: z.discriminatedUnion('kind', [
    z.object({ kind: z.literal('get'), paths: z.array(z.string()) }),
    z.object({ kind: z.literal('upload'), bytes: z.number(), times: z.number() }),
    z.object({ kind: z.literal('codes'), times: z.number() }),
  ]),
});
export type Flood = z.infer<typeof floodSchema>;

const PATIENCE_MS = 60_000;

/** A process of its own: what floods must not keep those waiting who measure. Says each id when that is done. */
createInterface({ input: process.stdin }).on('line', line => {
  const flood = floodSchema.parse(JSON.parse(line));
  void flow(flood).finally(() => process.stdout.write(`${flood.id}\n`));
});

async function flow({ base, address, token, what }: Flood): Promise<void> {
  const authorization = `Bearer ${token}`;
  const options = () => ({ localAddress: address, signal: AbortSignal.timeout(PATIENCE_MS) });
  const failed = () => undefined;
  switch (what.kind) {
    case 'get':
      await Promise.all(
        what.paths.map(path =>
          fetchRaw(base, path, { ...options(), headers: { authorization } }).catch(failed),
        ),
      );
      return;
    case 'upload': {
      const headers = { authorization, 'content-type': 'application/x-ndjson' };
      const body = Buffer.alloc(what.bytes, 'x\n');
      await Promise.all(
        Array.from({ length: what.times }, () =>
          fetchRaw(base, '/api/upload', { ...options(), method: 'POST', headers }, body).catch(failed),
        ),
      );
      return;
    }
    case 'codes':
      for (let sent = 0; sent < what.times; sent += 1)
        await post(
          `${base}/api/pair`,
          { v: PROTOCOL_VERSION, code: '000000', device: 'x' },
          {},
          address,
        ).catch(failed);
  }
}
