import { randomUUID } from 'node:crypto';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import WebSocket from 'ws';
import { loadProfile } from '../src/profile/load.ts';
import { type RunningServer, startServer } from '../src/server/index.ts';
import {
  PROTOCOL_VERSION,
  pairAnswerSchema,
  parseServerMessage,
  type ServerMessage,
} from '../src/server/protocol/index.ts';
import { demoJob } from '../src/session/demo-job.ts';

const BAYS = 50;
const ROLES = ['technician', 'second', 'supervisor', 'technician'] as const;
const PAUSE_MS = 1000;

interface BenchFace {
  readonly socket: WebSocket;
  seq: number;
  gaps: number;
  /** Called with each frame: its text is looked at only for what is awaited. */
  onFrame: (text: string) => void;
}

function pair(port: number, code: string, device: string): Promise<string> {
  const body = JSON.stringify({ v: PROTOCOL_VERSION, code, device });
  const origin = `https://127.0.0.1:${port}`;
  return new Promise((resolve, reject) => {
    const sent = request(
      `${origin}/api/pair`,
      { method: 'POST', rejectUnauthorized: false, headers: { origin, 'content-type': 'application/json' } },
      answer => {
        let text = '';
        answer.on('data', part => {
          text += part;
        });
        answer.on('end', () => resolve(pairAnswerSchema.parse(JSON.parse(text)).token));
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });
}

/** @throws Error on what is no message of the server */
export function sentByServer(text: string): ServerMessage {
  const parsed = parseServerMessage(text);
  if (!parsed.ok) throw new Error(`The server sent what is no message of it: ${parsed.refusal.sentence}`);
  return parsed.message;
}

function connect(port: number, token: string, owner: boolean): Promise<BenchFace> {
  const socket = new WebSocket(`wss://127.0.0.1:${port}/ws`, {
    rejectUnauthorized: false,
    origin: `https://127.0.0.1:${port}`,
  });
  const face: BenchFace = { socket, seq: -1, gaps: 0, onFrame: () => {} };
  return new Promise((resolve, reject) => {
    socket.on('error', reject);
    socket.on('open', () => socket.send(JSON.stringify({ type: 'hello', v: PROTOCOL_VERSION, token })));
    socket.on('message', data => {
      const text = String(data);
      const message = sentByServer(text);
      if (message.type === 'snapshot') {
        face.seq = message.seq;
        resolve(face);
      }
      if (message.type !== 'patch' && message.type !== 'say' && message.type !== 'hush') return;
      if (message.seq !== face.seq + 1) face.gaps += 1;
      face.seq = message.seq;
      if (message.type === 'say' && owner) socket.send(JSON.stringify({ type: 'spoken', seq: message.seq }));
      face.onFrame(text);
    });
  });
}

const command = (face: BenchFace | undefined, deed: object) =>
  face?.socket.send(JSON.stringify({ type: 'command', id: randomUUID(), deed }));

/** From sending until the last of the faces has a frame with this text, in ms. */
function spread(
  faces: readonly BenchFace[],
  by: BenchFace | undefined,
  deed: object,
  text: string,
): Promise<number> {
  const sentMs = performance.now();
  const arrived = faces.map(
    face =>
      new Promise<void>(resolve => {
        face.onFrame = frame => {
          if (frame.includes(text)) resolve();
        };
      }),
  );
  command(by, deed);
  return Promise.all(arrived).then(() => performance.now() - sentMs);
}

const quantile = (sorted: readonly number[], share: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;

function show(what: string, timesMs: readonly number[]): void {
  const sorted = [...timesMs].sort((a, b) => a - b);
  const [half, most, longest] = [0.5, 0.95, 1].map(share => quantile(sorted, share).toFixed(0));
  console.log(`${what}: ${sorted.length} times, median ${half} ms, p95 ${most} ms, longest ${longest} ms`);
}

/** What is held on to, in MB: measured after everything else was let go of. */
function heldMb(): number {
  setFlagsFromString('--expose-gc');
  runInNewContext('gc')();
  return process.memoryUsage().heapUsed / 1e6;
}

/** Entries in all records of a shop. */
async function entriesIn(shop: string): Promise<number> {
  const names = (await readdir(shop)).filter(name => name.endsWith('.jsonl'));
  const texts = await Promise.all(names.map(name => readFile(join(shop, name), 'utf8')));
  return texts.reduce((sum, text) => sum + text.split('\n').length - 1, 0);
}

async function pairAll(server: RunningServer): Promise<BenchFace[][]> {
  const bays: BenchFace[][] = [];
  for (let bay = 1; bay <= BAYS; bay += 1) {
    const faces: BenchFace[] = [];
    for (const [index, role] of ROLES.entries()) {
      const code = server.codes().find(open => open.bay === `bay ${bay}` && open.role === role)?.code ?? '';
      const token = await pair(server.port, code, `${role} ${index}`);
      faces.push(await connect(server.port, token, index === 0));
    }
    bays.push(faces);
  }
  return bays;
}

/**
 * 50 bays with 4 faces each on one server, over TLS on the loop, the faces in the same process: every face of
 * every bay sees one event a second. BENCH_SECONDS=600 for the whole ten minutes.
 */
export async function benchServer(): Promise<void> {
  const seconds = Number(process.env.BENCH_SECONDS ?? 20);
  const shop = await mkdtemp(join(tmpdir(), 'bench-shop-'));
  const server = await startServer({
    port: 0,
    host: '127.0.0.1',
    bays: Array.from({ length: BAYS }, (_, index) => `bay ${index + 1}`),
    shop,
    page: join(shop, 'no-page'),
    models: 'no-models',
    usual: {
      profiles: new Map([['demo-six', await loadProfile('demo-six')]]),
      job: demoJob,
      units: 'us',
      language: 'en',
    },
    tell: sentence => {
      if (!sentence.startsWith('Paired')) console.log(sentence);
    },
    // Two hundred devices pair from one address: the rates are not what is measured.
    steadyMs: () => performance.now() * 10_000,
  });
  const bays = await pairAll(server);
  for (const faces of bays) await spread(faces, faces[0], { do: 'begin' }, '"job.card.asking"');
  console.log(`${BAYS} bays with ${ROLES.length} faces each, ${seconds} s, one event a second in each bay`);

  const times: number[] = [];
  const [beforeMb, entriesBefore] = [heldMb(), await entriesIn(shop)];
  const cpuBefore = process.cpuUsage();
  const endMs = performance.now() + seconds * 1000;
  await Promise.all(
    bays.map(async (faces, index) => {
      await wait((index / BAYS) * PAUSE_MS);
      while (performance.now() < endMs) {
        times.push(
          await spread(faces, faces[0], { do: 'control', turn: 'any', id: 'status' }, '"type":"say"'),
        );
        await wait(PAUSE_MS);
      }
    }),
  );
  const { user, system } = process.cpuUsage(cpuBefore);
  show('Event to all faces', times);
  console.log(
    `Work of the processor: ${((user + system) / 1000 / times.length).toFixed(1)} ms for each event`,
  );
  const stops: number[] = [];
  for (const faces of bays) stops.push(await spread(faces, faces[2], { do: 'stop' }, '"state":"stopped"'));
  show('Stop from the supervisor to all faces, one bay after another', stops);
  await wait(PAUSE_MS);
  const all = bays.flat();
  const gaps = all.reduce((sum, face) => sum + face.gaps, 0);
  const apart = bays.filter(faces => faces.some(face => face.seq !== faces[0]?.seq)).length;
  console.log(`Frames missed: ${gaps}; bays whose faces are not at the same frame: ${apart}`);
  const [afterMb, entries] = [heldMb(), (await entriesIn(shop)) - entriesBefore];
  console.log(
    `Memory held (server and faces together): ${beforeMb.toFixed(0)} MB before, ${afterMb.toFixed(0)} MB after; ${entries} entries were recorded meanwhile: ${(((afterMb - beforeMb) * 1e6) / entries).toFixed(0)} bytes an entry`,
  );

  for (const face of all) face.socket.terminate();
  await server.close();
  await rm(shop, { recursive: true, force: true });
}
