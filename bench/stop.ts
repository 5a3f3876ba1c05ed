import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { request } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as wait } from 'node:timers/promises';
import WebSocket from 'ws';
import { z } from 'zod';
import { loadProfile } from '../src/profile/load.ts';
import { openNewLog } from '../src/record/index.ts';
import {
  applyPatch,
  type BayState,
  PROTOCOL_VERSION,
  pairAnswerSchema,
} from '../src/server/protocol/index.ts';
import { demoJob } from '../src/session/demo-job.ts';
import { headerData } from '../src/session/header.ts';
import { sentByServer } from './server.ts';

const PROGRAM = new URL('../tests/server/programs/serve.ts', import.meta.url).pathname;
const STOPS = 40;
const REPORT_MB = 40;

interface Load {
  readonly name: string;
  /** Begins it; what comes back ends it. */
  begin(bench: Bench): Promise<() => void>;
}

interface Bench {
  readonly port: number;
  readonly folder: string;
  readonly flooder: Line;
  readonly supervisor: string;
  readonly technician: string;
}

/** One device's socket. */
class Line {
  readonly socket: WebSocket;
  readonly waiting = new Map<string, (ms: number) => void>();
  bay: BayState | null = null;
  onFrame: (text: string) => void = () => {};

  constructor(socket: WebSocket) {
    this.socket = socket;
  }

  static async open(port: number, token: string): Promise<Line> {
    const socket = new WebSocket(`wss://127.0.0.1:${port}/ws`, {
      rejectUnauthorized: false,
      origin: `https://127.0.0.1:${port}`,
    });
    const line = new Line(socket);
    await once(socket, 'open');
    const welcomed = new Promise<void>(resolve => {
      socket.on('message', data => {
        const text = String(data);
        const message = sentByServer(text);
        if (message.type === 'snapshot') resolve();
        if (message.type === 'say') socket.send(JSON.stringify({ type: 'spoken', seq: message.seq }));
        if (message.type === 'ack' || message.type === 'error')
          line.waiting.get(message.id ?? '')?.(performance.now());
        if (message.type === 'snapshot') line.bay = message.state;
        if (message.type === 'patch' && line.bay) line.bay = applyPatch(line.bay, message.patch);
        line.onFrame(text);
      });
    });
    socket.send(JSON.stringify({ type: 'hello', v: PROTOCOL_VERSION, token }));
    await welcomed;
    return line;
  }

  /** Sends a command; when its answer came. */
  do(deed: object): Promise<number> {
    const id = randomUUID();
    const answered = new Promise<number>(resolve => this.waiting.set(id, resolve));
    this.socket.send(JSON.stringify({ type: 'command', id, deed }));
    return answered.finally(() => this.waiting.delete(id));
  }
}

function ask(
  port: number,
  path: string,
  { method = 'GET', token = '', body = '', type = 'application/json' } = {},
): Promise<string> {
  const origin = `https://127.0.0.1:${port}`;
  const headers: Record<string, string> = { origin };
  if (token !== '') headers.authorization = `Bearer ${token}`;
  if (body !== '') headers['content-type'] = type;
  return new Promise((resolve, reject) => {
    const sent = request(`${origin}${path}`, { method, rejectUnauthorized: false, headers }, answer => {
      let text = '';
      answer.on('data', part => {
        text += part;
      });
      answer.on('end', () => resolve(text));
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

/** Does something again and again until it is ended. */
function again(deed: () => Promise<unknown>): () => void {
  let goesOn = true;
  void (async () => {
    while (goesOn) await deed().catch(() => wait(100));
  })();
  return () => {
    goesOn = false;
  };
}

const reports: Load = {
  name: `a report of ${REPORT_MB} MB being written, and the next`,
  begin: async ({ port, supervisor }) =>
    again(() => ask(port, '/api/sessions/large/report', { token: supervisor }).then(() => wait(10))),
};
const lists: Load = {
  name: 'lists of the shop asked for without a pause',
  begin: async ({ port, supervisor }) =>
    again(() => ask(port, '/api/sessions', { token: supervisor }).then(() => wait(50))),
};
const uploads: Load = {
  name: 'records of 16 MB being sent in',
  begin: async ({ port, technician }) => {
    const body = `${'x'.repeat(16 * 1024 * 1024)}\n`;
    return again(() =>
      ask(port, '/api/upload', {
        method: 'POST',
        token: technician,
        body,
        type: 'application/x-ndjson',
      }).then(() => wait(50)),
    );
  },
};
const stops: Load = {
  name: 'another device sending 2,500 stops a second',
  begin: async ({ flooder }) =>
    again(async () => {
      for (let sent = 0; sent < 25; sent += 1)
        flooder.socket.send(JSON.stringify({ type: 'command', id: randomUUID(), deed: { do: 'stop' } }));
      await wait(10);
    }),
};
const strangers: Load = {
  name: 'wrong codes and strangers at the door',
  begin: async ({ port }) =>
    again(() =>
      ask(port, '/api/pair', {
        method: 'POST',
        body: JSON.stringify({ v: PROTOCOL_VERSION, code: '000000', device: 'x' }),
      }),
    ),
};

const loads: readonly Load[] = [reports, lists, uploads, stops, strangers];

/** What the program of the server says of itself, a line. */
const servedSchema = z.object({
  port: z.int(),
  codes: z.array(z.object({ role: z.string(), code: z.string() })),
});

async function serve(folder: string): Promise<{ child: ChildProcess } & z.infer<typeof servedSchema>> {
  const child = spawn(process.execPath, ['--import', 'tsx', PROGRAM, folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [line] = await once(createInterface({ input: child.stdout ?? process.stdin }), 'line');
  return { child, ...servedSchema.parse(JSON.parse(line)) };
}

async function largeRecord(path: string): Promise<void> {
  const profile = await loadProfile('demo-six');
  const header = headerData({ profile, job: demoJob, language: 'en', units: 'us' });
  const log = await openNewLog(path, header, { wall: () => new Date(), monoMs: () => 0 });
  const sentence = 'Nothing that anybody said. '.repeat(40);
  const entries = Math.round((REPORT_MB * 1e6) / (sentence.length + 300));
  await Promise.all(Array.from({ length: entries }, () => log.append('problem', { sentence })));
  await log.close();
}

/** Back to work after a stop: the technician answers what is asked. */
async function goOn(technician: Line): Promise<void> {
  for (let turn = 0; turn < 40 && technician.bay?.view?.state !== 'working'; turn += 1) {
    const choices = technician.bay?.view?.choices ?? [];
    const text = choices.find(choice => choice === 'correct') ?? choices[0] ?? 'correct';
    await technician.do({ do: 'say', turn: technician.bay?.turn ?? '', text, via: 'keys' });
    await wait(20);
  }
}

const quantile = (times: readonly number[], share: number) => {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN;
};

/**
 * A stop from the second person's device, on a server of its own process, until it is answered and until all faces
 * have a frame that says so: alone, under each load, and under all of them together.
 */
export async function benchStop(): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-stop-'));
  await largeRecord(join(folder, 'large.jsonl'));
  const { child, port, codes } = await serve(folder);
  const pair = async (role: string, code = codes.find(open => open.role === role)?.code) =>
    pairAnswerSchema.parse(
      JSON.parse(
        await ask(port, '/api/pair', {
          method: 'POST',
          body: JSON.stringify({ v: PROTOCOL_VERSION, code, device: role }),
        }),
      ),
    ).token;
  const tokens = {
    technician: await pair('technician'),
    second: await pair('second'),
    supervisor: await pair('supervisor'),
  };
  const [technician, second, flooder] = [
    await Line.open(port, tokens.technician),
    await Line.open(port, tokens.second),
    await Line.open(port, tokens.supervisor),
  ];
  await technician.do({ do: 'begin' });
  const bench: Bench = {
    port,
    folder,
    flooder,
    supervisor: tokens.supervisor,
    technician: tokens.technician,
  };
  const measure = async (name: string, active: readonly Load[]) => {
    const ends = await Promise.all(active.map(load => load.begin(bench)));
    await wait(1000);
    const [answered, seen]: [number[], number[]] = [[], []];
    for (let nth = 0; nth < STOPS; nth += 1) {
      // A flood of stops stops the session by itself; then only the answer is measured.
      if (!active.includes(stops)) await goOn(technician);
      const shown = Promise.all(
        [technician, second, flooder].map(
          line =>
            new Promise<number>(resolve => {
              line.onFrame = text => {
                if (text.includes('"state":"stopped"')) resolve(performance.now());
              };
            }),
        ),
      );
      const sentMs = performance.now();
      const measuresFaces = technician.bay?.view?.state === 'working';
      answered.push((await second.do({ do: 'stop' })) - sentMs);
      if (measuresFaces) seen.push(Math.max(...(await shown)) - sentMs);
      await wait(50);
    }
    for (const end of ends) end();
    const figures = (times: readonly number[]) =>
      times.length === 0
        ? '-'
        : `median ${quantile(times, 0.5).toFixed(0)}, p95 ${quantile(times, 0.95).toFixed(0)}, longest ${quantile(times, 1).toFixed(0)} ms`;
    console.log(`${name}: answered ${figures(answered)}; on all faces ${figures(seen)}`);
  };
  await measure('Nothing else going on', []);
  for (const load of loads) await measure(load.name, [load]);
  await measure(
    'All of these but the stops',
    loads.filter(load => load !== stops),
  );
  await measure('All of these at once', loads);
  child.kill('SIGTERM');
  await once(child, 'exit');
  await rm(folder, { recursive: true, force: true });
}
