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
  codes: z.array(z.object({ bay: z.string(), role: z.string(), code: z.string() })),
});

const children: ChildProcess[] = [];
afterEach(() => {
  for (const child of children) child.kill('SIGKILL');
});

async function serve(folder: string) {
  const child = spawn(process.execPath, ['--import', 'tsx', PROGRAM, folder], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  children.push(child);
  const [line] = await once(createInterface({ input: child.stdout }), 'line');
  const { port, codes } = helloSchema.parse(JSON.parse(line));
  const base = `https://127.0.0.1:${port}`;
  const codeOf = (role: string, bay = 'bay 1') =>
    codes.find(open => open.role === role && open.bay === bay)?.code ?? '';
  return { child, base, codeOf };
}

const pair = async ({ base, codeOf }: Awaited<ReturnType<typeof serve>>, bay: string): Promise<string> => {
  const code = codeOf('technician', bay);
  const { body } = await post(`${base}/api/pair`, { v: PROTOCOL_VERSION, code, device: 'tablet' });
  return JSON.parse(body).token;
};

test('a server in which something breaks stops all bays, says so, and takes stops and answers all the same', async () => {
  const server = await serve(await mkdtemp(join(tmpdir(), 'failed-')));
  const told = once(createInterface({ input: server.child.stderr }), 'line');
  const faces: Face[] = [];
  for (const bay of ['bay 1', 'bay 2']) {
    const face = await Face.paired(server.base, await pair(server, bay));
    await face.do({ do: 'begin' });
    await face.until(() => face.key === 'job.card.asking');
    faces.push(face);
  }
  server.child.kill('SIGUSR2');
  for (const face of faces)
    await face.until(() => face.closeCode !== null || face.state?.view?.state === 'stopped');
  expect(faces.map(({ closeCode }) => closeCode)).toEqual([null, null]);
  expect(String(await told)).toMatch(/Error: a fault.*all sessions were stopped/);
  for (const face of faces) {
    expect(await face.do({ do: 'stop' })).toMatchObject({ type: 'ack', stop: 'stopped' });
    expect(await face.say('all is off')).toMatchObject({ type: 'ack' });
    face.close();
  }
}, 300_000);

test('a server that is killed midway goes on from the record: devices stay paired, and nothing is done twice', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'killed-'));
  const first = await serve(folder);
  const token = await pair(first, 'bay 1');
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
