import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadProfile } from '../../../src/profile/load.ts';
import type { Profile } from '../../../src/profile/schema.ts';
import { type RunningServer, startServer } from '../../../src/server/index.ts';
import { PROTOCOL_VERSION, type Role } from '../../../src/server/protocol/index.ts';
import { demoJob } from '../../../src/session/demo-job.ts';
import { VirtualClock } from '../../../src/session/virtual-clock.ts';
import { post } from './https.ts';

export interface TestShop {
  readonly server: RunningServer;
  readonly folder: string;
  readonly base: string;
  readonly told: readonly string[];
  /** The clock of the session that began last. */
  clock(): VirtualClock;
  /** Moves the wall clock by which codes and pairings run out. */
  passWall(ms: number): void;
  /** Moves the steady clock by which rates are kept. */
  passSteady(ms: number): void;
  /** From now on no time passes for the rates: what is too much is too much on any machine. */
  freezeRates(): void;
  code(role: Role, bay?: string): string;
  /** A token for a new device of this role. */
  pair(role: Role, bay?: string): Promise<string>;
}

const realJob = { ...demoJob, technician: 'Dora Sample', second: 'Emil Sample', supervisor: 'Fay Sample' };

/** A real server with real TLS on the loop; only time obeys the test. */
export async function openShop(
  options: {
    readonly folder?: string;
    readonly page?: string;
    readonly models?: string;
    readonly bays?: readonly string[];
    readonly patienceMs?: number;
    readonly awayMs?: number;
    readonly port?: number;
    /** Where it listens; on the loop only, where it is left out. */
    readonly host?: string;
    /** What the machine's addresses are; its own, where it is left out. */
    readonly addresses?: () => readonly string[];
    /** What `demo-six` is here, where it is not itself. */
    readonly profile?: Profile;
  } = {},
): Promise<TestShop> {
  const folder = options.folder ?? (await mkdtemp(join(tmpdir(), 'shop-')));
  const profile = options.profile ?? (await loadProfile('demo-six'));
  const told: string[] = [];
  let wallOffsetMs = 0;
  let steadyMs = 0;
  // Rates see a tenth of a second between one message and the next, however fast the machine is.
  let stepMs = 100;
  let clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'));
  const server = await startServer({
    port: options.port ?? 0,
    host: options.host ?? '127.0.0.1',
    bays: options.bays ?? ['bay 1'],
    shop: folder,
    page: options.page ?? join(folder, 'no-page'),
    models: options.models ?? join(folder, 'models'),
    usual: {
      profiles: new Map([['demo-six', profile]]),
      // Nobody who is invented as the demo's people are starts a real engine.
      job: profile.invented ? demoJob : realJob,
      units: 'us',
      language: 'en',
    },
    ...(options.patienceMs === undefined ? {} : { patienceMs: options.patienceMs }),
    ...(options.addresses === undefined ? {} : { addresses: options.addresses }),
    ...(options.awayMs === undefined ? {} : { awayMs: options.awayMs }),
    tell: sentence => told.push(sentence),
    makeClock: beginMs => {
      clock = new VirtualClock(new Date('2026-01-02T03:04:05Z'), beginMs);
      return clock;
    },
    wallMs: () => Date.now() + wallOffsetMs,
    steadyMs: () => {
      steadyMs += stepMs;
      return steadyMs;
    },
  });
  const base = `https://127.0.0.1:${server.port}`;
  const code = (role: Role, bay = 'bay 1') =>
    server.codes().find(open => open.role === role && open.bay === bay)?.code ?? '';
  return {
    server,
    folder,
    base,
    told,
    clock: () => clock,
    passWall: ms => {
      wallOffsetMs += ms;
    },
    passSteady: ms => {
      steadyMs += ms;
    },
    freezeRates: () => {
      stepMs = 0;
    },
    code,
    async pair(role, bay) {
      // Nobody pairs faster than the codes may be typed.
      steadyMs += 60_000;
      const { body } = await post(`${base}/api/pair`, {
        v: PROTOCOL_VERSION,
        code: code(role, bay),
        device: `a ${role}`,
      });
      return JSON.parse(body).token;
    },
  };
}
