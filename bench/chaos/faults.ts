import { randomBytes, randomUUID } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import type { Chance } from './chance.ts';
import type { Disk } from './disk.ts';
import type { Floods } from './floods.ts';
import type { Ledger } from './ledger.ts';
import { type Crew, facesOf, leaderOf } from './people.ts';
import { FAKETIME, type ServerProcess } from './server.ts';
import type { ShopCalls } from './shop-calls.ts';
import type { Strangers } from './strangers.ts';
import type { Terminal } from './terminal.ts';
import { type Local, sendIn } from './uploads.ts';

export interface World {
  readonly chance: Chance;
  readonly server: ServerProcess;
  readonly disk: Disk;
  readonly crews: readonly Crew[];
  readonly calls: ShopCalls;
  readonly floods: Floods;
  readonly strangers: Strangers;
  readonly terminal: Terminal;
  readonly locals: readonly Local[];
  readonly ledger: Ledger;
  readonly blame: (sentence: string) => void;
}

export const faultKinds = {
  killed: 'server killed (kill -9) and started again',
  halted: 'server halted (SIGSTOP), 0.5 to 4 s',
  cut: 'connections cut without an end',
  deafened: 'connections that read nothing, 2 to 15 s',
  swallowed: 'connections that swallow all (half-open), 2 to 15 s',
  diskFull: 'disk full, 4 to 12 s',
  clockBack: 'clock set back, up to an hour, and right again',
  diskSlow: 'disk flooded with writes and syncs, 5 to 10 s',
  stops: 'floods of stops, 300 to 2000',
  rubbish: 'floods of frames that mean nothing',
  codes: 'floods of wrong codes',
  uploads: 'floods of big uploads, 16 MB each',
  reports: 'floods of lists and reports',
  takeOver: 'two leaders, both at once',
  askHold: "the supervisor's request to hold, answered or not",
  again: 'commands sent again, long after',
  strangers: "strangers' commands",
  local: 'records sent in that a tablet held alone',
  terminal: 'session in a terminal killed (kill -9) and resumed',
} as const;
export type FaultKind = keyof typeof faultKinds;

/** What cannot be done here, and why. */
export function leftOut({ disk }: Pick<World, 'disk'>): Partial<Record<FaultKind, string>> {
  return {
    ...(disk.fill ? {} : { diskFull: 'no disk of its own could be mounted (it takes root)' }),
    ...(FAKETIME === undefined ? { clockBack: "Debian's package faketime is not installed" } : {}),
  };
}

const BIG_BYTES = 16 * 1024 * 1024;
const HOUR_S = 3600;

export class Faults {
  readonly done = new Map<FaultKind, number>();
  /** Kinds that go on now. */
  readonly #active = new Map<FaultKind, number>();
  readonly #world: World;
  readonly #going = new Set<Promise<void>>();
  #bag: FaultKind[] = [];
  #serverBusy = false;
  #diskBusy = false;

  constructor(world: World) {
    this.#world = world;
  }

  get active(): string {
    return [...this.#active.keys()].sort().join(' + ') || 'nothing else';
  }

  /** One after another, overlapping, each kind as often as the others. */
  async go(goesOn: () => boolean): Promise<void> {
    const { chance, blame } = this.#world;
    while (goesOn()) {
      await wait(chance.between(500, 3500));
      if (this.#bag.length === 0) {
        const isLeftOut = leftOut(this.#world);
        const kinds = (Object.keys(faultKinds) as FaultKind[]).filter(kind => !(kind in isLeftOut));
        this.#bag = chance.shuffled(kinds);
      }
      const kind = this.#bag.pop();
      if (kind === undefined || !goesOn()) continue;
      const going = this.#do(kind).catch((error: Error) =>
        blame(`The fault "${kind}" failed: ${error.stack}`),
      );
      this.#going.add(going);
      void going.then(() => this.#going.delete(going));
    }
    await Promise.all(this.#going);
  }

  async #do(kind: FaultKind): Promise<void> {
    if (['killed', 'halted'].includes(kind)) {
      if (this.#serverBusy) return;
      this.#serverBusy = true;
    } else if (['diskFull', 'diskSlow'].includes(kind)) {
      if (this.#diskBusy) return;
      this.#diskBusy = true;
    }
    this.done.set(kind, (this.done.get(kind) ?? 0) + 1);
    this.#active.set(kind, (this.#active.get(kind) ?? 0) + 1);
    try {
      await this.#carryOut(kind);
    } finally {
      const left = (this.#active.get(kind) ?? 1) - 1;
      if (left > 0) this.#active.set(kind, left);
      else this.#active.delete(kind);
      if (['killed', 'halted'].includes(kind)) this.#serverBusy = false;
      if (['diskFull', 'diskSlow'].includes(kind)) this.#diskBusy = false;
    }
  }

  async #carryOut(kind: FaultKind): Promise<void> {
    const { chance, server, disk, crews, calls, floods, strangers, terminal, locals, ledger, blame } =
      this.#world;
    const crew = chance.one(crews);
    const other = crews[(crews.indexOf(crew) + 1) % crews.length] ?? crew;
    const some = chance.shuffled(facesOf(crew)).slice(0, 1 + Math.floor(chance.between(0, 3)));
    const forMs = chance.between(2000, 15_000);
    switch (kind) {
      case 'killed':
        ledger.kills.push({ run: server.runs, atMs: performance.now() });
        return server.killFor(chance.between(0, 3000));
      case 'halted':
        return server.haltFor(chance.between(500, 4000));
      case 'cut':
        for (const device of some) device.cut();
        return;
      case 'deafened':
        for (const device of some) device.deafenFor(forMs);
        return void (await wait(forMs));
      case 'swallowed':
        for (const device of some) device.swallowFor(forMs);
        return void (await wait(forMs));
      case 'diskFull': {
        const free = await disk.fill?.();
        await wait(chance.between(4000, 12_000));
        return free?.();
      }
      case 'clockBack':
        server.setClockBack(chance.between(10, HOUR_S));
        await wait(chance.between(5000, 20_000));
        return server.setClockBack(0);
      case 'diskSlow':
        return disk.flood(chance.between(5000, 10_000));
      case 'stops':
        return this.#floodStops(crew, Math.floor(chance.between(300, 2000)));
      case 'rubbish':
        return this.#floodRubbish(crew);
      case 'codes':
        return floods.flow({ address: '127.0.9.9', token: '', what: { kind: 'codes', times: 40 } });
      case 'uploads': {
        const { token, address } = crew.flooder.who;
        return floods.flow({ address, token, what: { kind: 'upload', bytes: BIG_BYTES, times: 3 } });
      }
      case 'reports':
        return this.#floodReports();
      case 'takeOver': {
        const follower = leaderOf(crew) === crew.technician ? crew.otherLeader : crew.technician;
        const answering = leaderOf(crew).do({ do: 'control', turn: 'x', id: 'sayAgain' }, 10_000);
        await follower.do({ do: 'takeOver' }, 10_000);
        await answering;
        return;
      }
      case 'askHold':
        await crews.find(each => each.supervisor)?.supervisor?.do({ do: 'askHold' }, 10_000);
        await wait(chance.between(0, 3000));
        if (chance.happens(0.5)) await leaderOf(crew).do({ do: 'declineHold' }, 10_000);
        return;
      case 'again': {
        const mine = ledger.promised.filter(
          ({ device, isStop }) => !isStop && device === crew.technician.connection.device,
        );
        const id = mine.at(-1)?.id;
        if (id === undefined || !crew.technician.isThere) return;
        await crew.technician.again(id, { do: 'say', turn: 'again', text: 'correct', via: 'touch' });
        return;
      }
      case 'strangers':
        for (let tries = 0; tries < 3; tries += 1) await strangers.try(crew, other, chance);
        return;
      case 'local':
        return sendIn(locals, crews, chance, calls, blame);
      case 'terminal':
        return terminal.kill();
    }
  }

  async #floodStops({ flooder }: Crew, stops: number): Promise<void> {
    for (let sent = 0; sent < stops; sent += 1) {
      flooder.raw(JSON.stringify({ type: 'command', id: randomUUID(), deed: { do: 'stop' } }));
      if (sent % 25 === 24) await wait(10);
    }
  }

  async #floodRubbish({ flooder }: Crew): Promise<void> {
    const kinds: readonly (() => string | Buffer)[] = [
      () => '{"type":',
      () => randomBytes(200),
      () => JSON.stringify({ type: 'command', id: 'none', deed: { do: 'dance' } }),
      () => JSON.stringify({ type: 'ping', sentMs: 0 }),
      () => 'x'.repeat(20_000),
    ];
    for (let sent = 0; sent < 300; sent += 1) {
      flooder.raw(this.#world.chance.one(kinds)());
      if (sent % 10 === 9) await wait(5);
    }
  }

  async #floodReports(): Promise<void> {
    const { crews, floods, chance } = this.#world;
    const supervisor = crews.find(each => each.supervisor)?.supervisor;
    if (!supervisor) return;
    const sessions = crews.flatMap(({ technician }) => technician.state?.session ?? []);
    const paths = Array.from({ length: 8 }, (_, nth) =>
      nth % 2 === 0 || sessions.length === 0
        ? '/api/sessions'
        : `/api/sessions/${chance.one(sessions)}/report`,
    );
    const { token, address } = supervisor.who;
    await floods.flow({ address, token, what: { kind: 'get', paths } });
  }
}
