import { randomUUID } from 'node:crypto';
import WebSocket from 'ws';
import {
  applyPatch,
  type BayState,
  type Deed,
  PROTOCOL_VERSION,
  parseServerMessage,
  type ServerMessage,
} from '../../../src/server/protocol/index.ts';

type Of<Type extends ServerMessage['type']> = Extract<ServerMessage, { type: Type }>;

export interface Resume {
  readonly epoch: string;
  readonly seq: number;
}

/** Longer than anything takes on a busy machine. */
const PATIENCE_MS = 120_000;

/** A face as a page would be, without a screen: it keeps the state from snapshot and patches. */
export class Face {
  readonly #socket: WebSocket;
  readonly messages: ServerMessage[] = [];
  state: BayState | null = null;
  epoch = '';
  seq = 0;
  /** Numbers of frames in the order they came. */
  readonly seqs: number[] = [];
  closeCode: number | null = null;
  /** False: it does not answer when it has been told to speak. */
  speaks = true;
  readonly #waiting = new Set<() => void>();

  private constructor(socket: WebSocket) {
    this.#socket = socket;
    socket.on('message', data => this.#take(String(data)));
    socket.on('close', code => {
      this.closeCode = code;
      this.#look();
    });
    socket.on('error', () => {});
  }

  static connect(base: string, headers: Record<string, string> = {}, autoPong = true): Promise<Face> {
    const { host } = new URL(base);
    const socket = new WebSocket(`wss://${host}/ws`, {
      rejectUnauthorized: false,
      headers: { origin: `https://${host}`, ...headers },
      autoPong,
    });
    const face = new Face(socket);
    return new Promise((resolve, reject) => {
      socket.on('open', () => resolve(face));
      socket.on('unexpected-response', (_request, answer) =>
        reject(new Error(`status ${answer.statusCode}`)),
      );
      socket.on('error', reject);
    });
  }

  /** A paired face that has said hello and knows the state. */
  static async paired(
    base: string,
    token: string,
    resume?: Resume,
    state: BayState | null = null,
  ): Promise<Face> {
    const face = await Face.connect(base);
    face.state = state;
    if (resume) face.seq = resume.seq;
    face.send({ type: 'hello', v: PROTOCOL_VERSION, token, ...(resume ? { resume } : {}) });
    await face.until(() => face.epoch !== '' && face.state !== null);
    return face;
  }

  send(message: unknown): void {
    this.sendRaw(JSON.stringify(message));
  }

  sendRaw(data: string | Buffer): void {
    this.#socket.send(data);
  }

  /** Sends a command; what came of it. */
  async do(deed: Deed, id: string = randomUUID()): Promise<Of<'ack'> | Of<'error'>> {
    const from = this.messages.length;
    this.send({ type: 'command', id, deed });
    return this.reply(id, from);
  }

  async reply(id: string, from = 0): Promise<Of<'ack'> | Of<'error'>> {
    const find = () =>
      this.messages
        .slice(from)
        .find(
          (one): one is Of<'ack'> | Of<'error'> =>
            (one.type === 'ack' || one.type === 'error') && one.id === id,
        );
    await this.until(() => find() !== undefined || this.closeCode !== null);
    const found = find();
    if (!found) throw new Error('the connection was closed without an answer');
    return found;
  }

  /** Says what is typed, in answer to what is asked now. */
  say(text: string) {
    return this.do({ do: 'say', turn: this.state?.turn ?? '', text, via: 'keys' });
  }

  get key(): string {
    return this.state?.view?.key ?? '';
  }

  errors(): readonly Of<'error'>[] {
    return this.messages.filter((one): one is Of<'error'> => one.type === 'error');
  }

  says(): readonly Of<'say'>[] {
    return this.messages.filter((one): one is Of<'say'> => one.type === 'say');
  }

  /**
   * Waits until something is so; only what comes in can make it so.
   * @throws what was awaited and how it stood, where it has not become so in two minutes
   */
  until(isSo: () => boolean): Promise<void> {
    const error = new Error();
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => {
        this.#waiting.delete(look);
        const stands = `at ${this.key || 'no question'}, ${this.closeCode === null ? 'connected' : `closed (${this.closeCode})`}`;
        error.message = `after two minutes it is not so that ${isSo}; the face is ${stands}`;
        reject(error);
      }, PATIENCE_MS);
      const look = () => {
        if (!isSo()) return;
        clearTimeout(late);
        this.#waiting.delete(look);
        resolve();
      };
      this.#waiting.add(look);
      look();
    });
  }

  /** Everything that was sent before has been taken in and answered. */
  async settled(): Promise<void> {
    const sentMs = Math.floor(Math.random() * 1e12);
    this.send({ type: 'ping', sentMs });
    await this.until(
      () =>
        this.closeCode !== null ||
        // From the end: over twenty sessions there are many.
        this.messages.findLast(one => one.type === 'pong')?.sentMs === sentMs,
    );
  }

  close(): void {
    this.#socket.close();
  }

  /** The line of a phone that has died in its pocket: open, and no sign of life comes back over it. */
  static async silent(base: string, token: string): Promise<Face> {
    const face = await Face.connect(base, {}, false);
    face.send({ type: 'hello', v: PROTOCOL_VERSION, token });
    await face.until(() => face.state !== null);
    return face;
  }

  /** A sign of life from one that gave none. */
  revive(): void {
    this.#socket.on('ping', () => this.#socket.pong());
  }

  /** As when the battery falls out. */
  cut(): void {
    this.#socket.terminate();
  }

  get place(): Resume {
    return { epoch: this.epoch, seq: this.seq };
  }

  #take(text: string): void {
    const parsed = parseServerMessage(text);
    if (!parsed.ok) throw new Error(`${parsed.refusal.sentence} ${text.slice(0, 200)}`);
    const { message } = parsed;
    this.messages.push(message);
    if (message.type === 'welcome') this.epoch = message.epoch;
    if (message.type === 'snapshot') {
      this.state = message.state;
      this.seq = message.seq;
    }
    if (message.type === 'patch' || message.type === 'say' || message.type === 'hush') {
      this.seq = message.seq;
      this.seqs.push(message.seq);
    }
    if (message.type === 'patch' && this.state) this.state = applyPatch(this.state, message.patch);
    if (message.type === 'say' && this.speaks && this.#socket.readyState === WebSocket.OPEN)
      this.send({ type: 'spoken', seq: message.seq });
    this.#look();
  }

  #look(): void {
    for (const look of [...this.#waiting]) look();
  }
}
