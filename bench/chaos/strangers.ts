import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import WebSocket from 'ws';
import { PROTOCOL_VERSION } from '../../src/server/protocol/index.ts';
import { signedOffInVain } from '../../tests/server/support/forged.ts';
import type { Chance } from './chance.ts';
import type { Crew } from './people.ts';
import type { ServerProcess } from './server.ts';
import type { ShopCalls } from './shop-calls.ts';
import { sha256Of } from './uploads.ts';

/** A device whose pairing was ended before anything began. */
export interface Ended {
  readonly device: string;
  readonly token: string;
  readonly address: string;
}

/** What was tried by those whose business it is not, and what of it had an effect. */
export class Strangers {
  tried = 0;
  readonly effects: string[] = [];
  /** Of records that were made up; none of them may be found in the shop. */
  readonly forged = new Set<string>();
  readonly #server: ServerProcess;
  readonly #calls: ShopCalls;
  readonly #ended: readonly Ended[];

  constructor(server: ServerProcess, calls: ShopCalls, ended: readonly Ended[]) {
    this.#server = server;
    this.#calls = calls;
    this.#ended = ended;
  }

  /** One of the ways, by somebody of the first bay against the second. */
  async try(from: Crew, against: Crew, chance: Chance): Promise<void> {
    this.tried += 1;
    const { who } = chance.one([from.technician, from.second, from.otherLeader]);
    const target = against.technician;
    const session = target.state?.session;
    const victim = chance.one([against.technician, against.second]).connection.device;
    const turn = target.state?.turn ?? '';
    const device = from.second;
    const commands = {
      forget: () => device.do({ do: 'forget', device: victim }, 10_000),
      say: () => device.do({ do: 'say', turn: turn || 'none', text: 'correct', via: 'touch' }, 10_000),
      clear: () => device.do({ do: 'clear', turn: turn || 'none' }, 10_000),
    };
    const ways: Readonly<Record<string, () => Promise<boolean>>> = {
      ...Object.fromEntries(
        Object.entries(commands).map(([name, send]) => [
          name,
          async () => (await send())?.message.type === 'ack',
        ]),
      ),
      read: async () =>
        session != null &&
        (await this.#calls.get(`/api/sessions/${session}/log`, who.token, who.address))?.status === 200,
      report: async () =>
        session != null &&
        (await this.#calls.get(`/api/sessions/${session}/report`, who.token, who.address))?.status === 200,
      signOff: async () => session != null && this.#signOff(session, from),
      ended: () => this.#isHeard(chance.one(this.#ended)),
      madeUp: () => this.#isHeard({ device: '', token: 'a'.repeat(43), address: from.second.who.address }),
    };
    const name = chance.one(Object.keys(ways));
    if (await ways[name]?.()) this.effects.push(`${name} from ${from.bay} against ${against.bay}`);
  }

  /** Sends in the running session of another bay, gone on with to a sign-off. */
  async #signOff(session: string, from: Crew): Promise<boolean> {
    const record = await readFile(join(this.#server.shop, `${session}.jsonl`)).catch(() => null);
    // A last line that is being written is left out.
    const whole = record?.subarray(0, record.lastIndexOf(0x0a) + 1);
    const forged = whole === undefined ? null : await signedOffInVain(whole).catch(() => null);
    if (forged === null) return false;
    this.forged.add(sha256Of(forged));
    const { token, address } = from.technician.who;
    const answer = await this.#calls.upload(forged, token, address);
    return typeof answer !== 'string' && answer.status === 200;
  }

  /** Says hello with a token that is good for nothing, and stop, and something else. */
  #isHeard({ token, address }: Ended): Promise<boolean> {
    const { host } = new URL(this.#server.base);
    const socket = new WebSocket(`wss://${host}/ws`, {
      rejectUnauthorized: false,
      localAddress: address,
      headers: { origin: `https://${host}` },
      handshakeTimeout: 10_000,
    });
    return new Promise(resolve => {
      const timer = setTimeout(() => socket.terminate(), 10_000);
      let isHeard = false;
      socket.on('open', () => {
        socket.send(JSON.stringify({ type: 'hello', v: PROTOCOL_VERSION, token }));
        for (const deed of [{ do: 'stop' }, { do: 'begin' }])
          socket.send(JSON.stringify({ type: 'command', id: randomUUID(), deed }));
      });
      socket.on('message', data => {
        if (/"type":"(ack|welcome|snapshot)"/.test(String(data))) isHeard = true;
      });
      socket.on('error', () => {});
      socket.on('close', () => {
        clearTimeout(timer);
        resolve(isHeard);
      });
    });
  }
}
