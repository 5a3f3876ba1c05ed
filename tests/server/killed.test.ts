import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtemp, readdir } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterEach, expect, test } from 'vitest';
import { z } from 'zod';
import { verifyLog } from '../../src/record/index.ts';
import { PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { Face } from './support/face.ts';
import { post } from './support/https.ts';

const PROGRAM = new URL('programs/serve.ts', import.meta.url).pathname;
const helloSchema = z.object({
  port: z.number(),
  codes: z.array(z.object({ role: z.string(), code: z.string() })),
});

const children: ChildProcess[] = [];
afterEach(() => {
  for (const child of children) child.kill('SIGKILL');
});

async function serve(folder: string) {
  const child = spawn(process.execPath, ['--import', 'tsx', PROGRAM, folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  children.push(child);
  const [line] = await once(createInterface({ input: child.stdout }), 'line');
  const { port, codes } = helloSchema.parse(JSON.parse(line));
  const base = `https://127.0.0.1:${port}`;
  const codeOf = (role: string) => codes.find(open => open.role === role)?.code ?? '';
  return { child, base, codeOf };
}

test('a server that is killed midway goes on from the record: devices stay paired, and nothing is done twice', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'killed-'));
  const first = await serve(folder);
  const paired = await post(`${first.base}/api/pair`, {
    v: PROTOCOL_VERSION,
    code: first.codeOf('technician'),
    device: 'tablet',
  });
  const { token } = JSON.parse(paired.body);
  const face = await Face.paired(first.base, token);
  await face.do({ do: 'begin' });
  await face.until(() => face.key === 'job.card.asking');
  const id = randomUUID();
  const deed = { do: 'say', turn: face.state?.turn ?? '', text: 'card is right', via: 'touch' } as const;
  expect(await face.do(deed, id)).toMatchObject({ type: 'ack', again: false });
  const { place } = face;
  first.child.kill('SIGKILL');
  await face.until(() => face.closeCode !== null);

  const next = await serve(folder);
  const back = await Face.paired(next.base, token, place);
  expect(back.epoch).not.toBe(place.epoch);
  await back.until(() => back.state?.view?.state === 'stopped');
  expect(back.key).toBe('stopped.makingSafe');
  // The answer to it may have been lost: the device sends it again.
  expect(await back.do(deed, id)).toMatchObject({ type: 'ack', again: true });
  await back.settled();
  expect(back.key).toBe('stopped.makingSafe');
  const records = (await readdir(folder)).filter(name => name.endsWith('.jsonl'));
  expect(records).toHaveLength(1);
  expect(await verifyLog(join(folder, records[0] ?? ''))).toMatchObject({ ok: true });
  back.close();
}, 300_000);
