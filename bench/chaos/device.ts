import { randomUUID } from 'node:crypto';
import type { Socket } from 'node:net';
import WebSocket from 'ws';
import {
  type BayState,
  type Deed,
  parseServerMessage,
  type Role,
  type ServerMessage,
} from '../../src/server/protocol/index.ts';
import { Connection, type Line } from '../../src/tablet/remote/connection.ts';
import type { Ledger } from './ledger.ts';
import type { ServerProcess } from './server.ts';

/** What came of a command, and when. */
export interface Answer {
  readonly message: Extract<ServerMessage, { type: 'ack' | 'error' }>;
  readonly atMs: number;
  /** The question that was asked when the answer came, as far as this device knew. */
  readonly turn: string;
}

export interface Who {
  readonly name: string;
  readonly role: Role;
  readonly bay: string;
  readonly token: string;
  /** Its own address, as each device of a shop has one. */
  readonly address: string;
}

/** One device: the page's own connection on a real socket that can be cut, deafened and made a black hole. */
export class Device {
  readonly who: Who;
  readonly connection: Connection;
  readonly #server: ServerProcess;
  readonly #ledger: Ledger;
  readonly #answers = new Map<string, (answer: Answer) => void>();
  readonly #watchers = new Set<() => void>();
  #socket: WebSocket | null = null;
  #nextId = '';
  #isBlackHole = false;
  /** Counts its lines, and what was done to them: nobody can tell how fast an answer was across such a change. */
  changes = 0;
  /** Its line is paused, or a black hole. */
  isFaulty = false;
  /** How often its page said that a stop was not answered within a second. */
  shouts = 0;
  /** The text being taken in now came then. */
  tookAtMs = 0;
  /** Sentences of final refusals. */
  readonly turnedAway: string[] = [];

  constructor(who: Who, server: ServerProcess, ledger: Ledger) {
    this.who = who;
    this.#server = server;
    this.#ledger = ledger;
    this.connection = new Connection(
      {
        token: who.token,
        openLine: () => this.#openLine(),
        nowMs: () => performance.now(),
        wallMs: () => Date.now(),
        after: (ms, act) => void setTimeout(act, ms),
        newId: () => this.#nextId,
        // It is never loaded anew.
        keptStops: { read: () => [], write() {} },
      },
      {
        onState: () => this.#look(),
        onSay: frame => this.connection.tell({ type: 'spoken', seq: frame.seq }),
        onHush: () => {},
        onCaughtUp: ({ said }) => {
          for (const { seq } of said?.slice(-1) ?? []) this.connection.tell({ type: 'spoken', seq });
        },
        onRefused: () => {},
        onPairing: () => {},
        onUnanswered: () => {
          this.shouts += 1;
        },
      },
    );
  }

  get state(): BayState | null {
    return this.connection.state;
  }

  get view() {
    return this.state?.view ?? null;
  }

  get isThere(): boolean {
    return this.connection.lineState === 'connected' && !this.isFaulty;
  }

  /** As far as it was told, a session goes on in its bay. */
  get goesOn(): boolean {
    return this.view !== null && this.view.state !== 'over';
  }

  /** Sends a command as the page does; its answer, however late, or null where the page gave it up. */
  do(deed: Deed, withinMs = 60_000): Promise<Answer | null> {
    const id = randomUUID();
    return this.#command(
      id,
      deed,
      () => {
        this.#nextId = id;
        this.connection.command(deed);
      },
      withinMs,
    );
  }

  /** The very same command once more, as where the answer was lost. */
  again(id: string, deed: Deed): Promise<Answer | null> {
    return this.#command(id, deed, () => this.raw(JSON.stringify({ type: 'command', id, deed })), 20_000);
  }

  /** Anything at all. */
  raw(data: string | Buffer): void {
    if (!this.#isBlackHole && this.#socket?.readyState === WebSocket.OPEN) this.#socket.send(data);
  }

  #command(id: string, deed: Deed, send: () => void, withinMs: number): Promise<Answer | null> {
    const wentOn = this.goesOn;
    return new Promise(resolve => {
      const timer = setTimeout(() => {
        this.#answers.delete(id);
        resolve(null);
      }, withinMs);
      this.#answers.set(id, answer => {
        clearTimeout(timer);
        this.#answers.delete(id);
        this.#ledger.answered(this, id, deed, answer.message, wentOn);
        resolve(answer);
      });
      send();
    });
  }

  /** Calls back after each message until it is called itself. */
  watch(watcher: () => void): () => void {
    this.#watchers.add(watcher);
    return () => this.#watchers.delete(watcher);
  }

  /** As when the battery falls out: the server gets a reset, or not even an end. */
  cut(): void {
    this.changes += 1;
    const { _socket: socket } = (this.#socket ?? {}) as { _socket?: Socket };
    if (socket) socket.destroy();
  }

  /** It reads nothing for so long; what it sends goes out. */
  deafenFor(ms: number): void {
    this.#faulty(ms, false);
  }

  /** Nothing comes, nothing goes, and nobody is told. */
  swallowFor(ms: number): void {
    this.#faulty(ms, true);
  }

  close(): void {
    this.connection.close();
    this.#socket?.terminate();
  }

  #faulty(ms: number, swallows: boolean): void {
    const socket = this.#socket;
    if (!socket || this.isFaulty) return;
    this.changes += 1;
    this.isFaulty = true;
    this.#isBlackHole = swallows;
    socket.pause();
    setTimeout(() => {
      this.changes += 1;
      this.isFaulty = false;
      this.#isBlackHole = false;
      socket.resume();
      if (swallows) socket.terminate();
    }, ms);
  }

  #openLine(): Line {
    const { host } = new URL(this.#server.base);
    const socket = new WebSocket(`wss://${host}/ws`, {
      rejectUnauthorized: false,
      localAddress: this.who.address,
      headers: { origin: `https://${host}` },
      handshakeTimeout: 10_000,
    });
    this.#socket = socket;
    this.changes += 1;
    socket.on('error', () => {});
    return {
      send: text => this.raw(text),
      // A page's close waits for the other end; a line that is taken for dead is dead here.
      close: () => socket.terminate(),
      onOpen: handler => socket.on('open', handler),
      onClosed: handler =>
        socket.on('close', () => {
          this.changes += 1;
          handler();
        }),
      onText: handler =>
        socket.on('message', data => {
          this.tookAtMs = performance.now();
          const text = String(data);
          handler(text);
          this.#took(text);
        }),
    };
  }

  #took(text: string): void {
    const parsed = parseServerMessage(text);
    if (!parsed.ok) return;
    const { message } = parsed;
    if (message.type === 'error' && message.final) this.turnedAway.push(message.sentence);
    if (message.type !== 'ack' && message.type !== 'error') return;
    const turn = this.state?.turn ?? '';
    if (message.id !== null) this.#answers.get(message.id)?.({ message, atMs: this.tookAtMs, turn });
  }

  #look(): void {
    this.#ledger.sees(this);
    for (const watcher of [...this.#watchers]) watcher();
  }
}
