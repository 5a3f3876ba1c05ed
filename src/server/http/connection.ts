import type { RawData, WebSocket } from 'ws';
import type { Bay } from '../bay/bay.ts';
import type { Pairing } from '../pairing/pairings.ts';
import {
  type ClientMessage,
  type Hello,
  MAX_CLIENT_MESSAGE_BYTES,
  PROTOCOL_VERSION,
  parseClientMessage,
  type Refusal,
  type ServerMessage,
} from '../protocol/index.ts';
import { TokenBucket } from '../rate-limit.ts';
import { refusalOf } from '../refused.ts';
import type { ServerContext } from './context.ts';
import type { Face, Faces } from './faces.ts';

/** People are slower than this, and a level meter needs no more. */
const MESSAGES = { burst: 100, perSecond: 40 };
/** Bad or surplus messages after which a connection is closed. */
const PATIENCE = 30;
/** A face that takes nothing in any more gets a new connection, and a snapshot. */
const MOST_UNSENT_BYTES = 4 * 1024 * 1024;
const HELLO_WITHIN_MS = 5000;
/** Close codes: RFC 6455, section 7.4.1: policy violation. */
const POLICY = 1008;

const notPaired: Refusal = {
  code: 'notPaired',
  sentence: 'This device is not paired, or not any more; pair it again.',
};

const bytesOf = (data: RawData): Buffer =>
  Buffer.isBuffer(data) ? data : Array.isArray(data) ? Buffer.concat(data) : Buffer.from(data);

/** One face at the other end of a socket. */
export class Connection implements Face {
  readonly address: string;
  readonly #socket: WebSocket;
  readonly #context: ServerContext;
  readonly #faces: Faces;
  readonly #rate: TokenBucket;
  readonly #helloTimer: NodeJS.Timeout;
  #greeted: { readonly pairing: Pairing; readonly bay: Bay; readonly deaf: () => void } | null = null;
  #faults = 0;
  #alive = true;
  #closed = false;

  constructor(socket: WebSocket, address: string, context: ServerContext, faces: Faces) {
    this.#socket = socket;
    this.address = address;
    this.#context = context;
    this.#faces = faces;
    this.#rate = new TokenBucket(MESSAGES, context.nowMs);
    this.#helloTimer = setTimeout(() => this.#end(notPaired), HELLO_WITHIN_MS);
    faces.add(this);
    socket.on('message', (data, isBinary) => this.#take(data, isBinary));
    socket.on('pong', () => {
      this.#alive = true;
    });
    // A broken frame, or one beyond all measure: the library closes the connection.
    socket.on('error', () => {});
    socket.on('close', () => this.#gone());
  }

  get pairing(): Pairing | null {
    return this.#greeted?.pairing ?? null;
  }

  /** Ends a connection whose other end has not been heard of since the last time. */
  checkAlive() {
    if (!this.#alive) return this.#socket.terminate();
    this.#alive = false;
    this.#socket.ping();
  }

  send(message: ServerMessage): void {
    this.sendText(JSON.stringify(message));
  }

  sendText(text: string) {
    if (this.#closed) return;
    if (this.#socket.bufferedAmount > MOST_UNSENT_BYTES) return this.#socket.terminate();
    this.#socket.send(text);
  }

  #take(data: RawData, isBinary: boolean) {
    if (this.#closed) return;
    const bytes = bytesOf(data);
    if (isBinary) return this.#fault({ code: 'malformed', sentence: 'Messages are text.' });
    if (bytes.length > MAX_CLIENT_MESSAGE_BYTES)
      return this.#end({
        code: 'tooLong',
        sentence: `The message is longer than ${MAX_CLIENT_MESSAGE_BYTES} bytes.`,
      });
    const inTime = this.#rate.take();
    const parsed = parseClientMessage(bytes.toString('utf8'));
    if (!parsed.ok) return this.#greeted ? this.#fault(parsed.refusal) : this.#end(parsed.refusal);
    const { message } = parsed;
    const isStop = message.type === 'command' && message.deed.do === 'stop';
    // A stop is never too much.
    if (!inTime && !isStop)
      return this.#fault({ code: 'tooFast', sentence: 'Too many messages; slow down.' }, message);
    this.#handle(message);
  }

  #handle(message: ClientMessage) {
    if (message.type === 'hello') return this.#hello(message);
    const greeted = this.#greeted;
    if (!greeted || !this.#context.pairings.isGood(greeted.pairing)) return this.#end(notPaired);
    const { pairing, bay } = greeted;
    switch (message.type) {
      case 'command':
        void this.#perform(pairing, bay, message);
        break;
      case 'ping':
        if (message.found) bay.found(pairing, message.found);
        this.send({
          type: 'pong',
          sentMs: message.sentMs,
          serverMs: Date.now(),
          sessionMs: bay.sessionMs,
        });
        break;
      case 'level': {
        const { type: _, ...level } = message;
        const { levelDbfs, clipping, speech } = level;
        if (!bay.crew.isOwner(pairing)) break;
        bay.level(level);
        for (const face of this.#faces.ofBay(bay.name))
          if (face !== this) face.send({ type: 'levelNews', levelDbfs, clipping, speech });
        break;
      }
      case 'spoken':
        bay.spoken(pairing, message.seq);
        break;
    }
  }

  #hello({ token, resume }: Hello) {
    const pairing = this.#context.pairings.find(token);
    const bay = pairing ? this.#context.bays.get(pairing.bay) : undefined;
    if (!pairing || !bay) return this.#end(notPaired);
    if (this.#greeted) return this.#fault({ code: 'malformed', sentence: 'Hello was said already.' });
    clearTimeout(this.#helloTimer);
    for (const face of this.#faces.ofDevice(pairing.device)) face.replaced();
    const { stream } = bay;
    this.send({
      type: 'welcome',
      v: PROTOCOL_VERSION,
      epoch: stream.epoch,
      role: pairing.role,
      bay: bay.name,
      device: pairing.device,
      serverMs: Date.now(),
    });
    const missed = resume?.epoch === stream.epoch ? stream.since(resume.seq) : null;
    if (missed === null) this.send({ type: 'snapshot', ...stream.snapshot() });
    else for (const text of missed) this.sendText(text);
    this.#greeted = { pairing, bay, deaf: stream.listen(text => this.sendText(text)) };
    bay.came(pairing);
  }

  replaced(): void {
    this.#end({ code: 'replaced', sentence: 'This device is connected in another place now.' });
  }

  async #perform(pairing: Pairing, bay: Bay, command: Extract<ClientMessage, { type: 'command' }>) {
    try {
      const again = await bay.perform(pairing, command);
      this.send({ type: 'ack', id: command.id, again });
    } catch (error) {
      const refusal = refusalOf(error);
      if (refusal.code === 'failed') this.#context.tell(`A command failed: ${String(error)}`);
      this.send({ type: 'error', id: command.id, ...refusal, final: false });
    }
  }

  #fault(refusal: Refusal, message?: ClientMessage) {
    this.#faults += 1;
    if (this.#faults >= PATIENCE) return this.#end(refusal);
    const id = message?.type === 'command' ? message.id : null;
    this.send({ type: 'error', id, ...refusal, final: false });
  }

  #end(refusal: Refusal): void {
    this.send({ type: 'error', id: null, ...refusal, final: true });
    this.#socket.close(POLICY);
    this.#gone();
  }

  #gone(): void {
    if (this.#closed) return;
    this.#closed = true;
    clearTimeout(this.#helloTimer);
    this.#faces.remove(this);
    this.#greeted?.deaf();
    if (this.#greeted) this.#greeted.bay.left(this.#greeted.pairing);
  }
}
