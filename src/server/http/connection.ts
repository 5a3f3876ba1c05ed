import type { RawData, WebSocket } from 'ws';
import type { Bay } from '../bay/bay.ts';
import type { Pairing } from '../pairing/pairings.ts';
import { RENEWED_FOR_MS, type Standing, standingOf, standingSentence } from '../pairing/standing.ts';
import {
  type ClientMessage,
  type Command,
  type Hello,
  MAX_CLIENT_MESSAGE_BYTES,
  type PairingNews,
  PROTOCOL_VERSION,
  parseClientMessage,
  type Refusal,
  type Role,
  type ServerMessage,
} from '../protocol/index.ts';
import { TokenBucket } from '../rate-limit.ts';
import { refusalOf } from '../refused.ts';
import type { ServerContext } from './context.ts';
import type { Face, Faces } from './faces.ts';

/** People are slower than this, and a level meter needs no more. */
const MESSAGES = { burst: 100, perSecond: 40 };
/** So many bad messages at once end a connection where no session goes on; so many surplus ones are answered, the rest is not. */
const PATIENCE = 30;
/** Bad messages are forgotten so fast: a page with a fault now and then is no stranger. */
const FAULTS = { burst: PATIENCE - 1, perSecond: 1 / 60 };
/** Surplus messages after which a connection is closed all the same: its device comes back for a stop. */
const MOST_SURPLUS = 2000;
/** A face that takes nothing in any more gets a new connection, and a snapshot. */
const MOST_UNSENT_BYTES = 4 * 1024 * 1024;
/** Signs of life that are missing, one every heartbeat: then the others are told, and then the line is given up. */
const QUIET_AFTER = 2;
const GIVEN_UP_AFTER = 8;
/** A page pings every two seconds. Its browser answers for one that hangs or sleeps, so that after so many heartbeats without a word of its own it is quiet too. */
const WORDLESS_AFTER = 3;
/** Close codes: RFC 6455, section 7.4.1: policy violation. */
const POLICY = 1008;

const notPaired: Refusal = {
  code: 'notPaired',
  sentence: 'This device is not paired, or not any more; pair it again.',
};
const onlyLooksOn: Refusal = {
  code: 'notYourRole',
  sentence: "The supervisor's device looks on: what it hears counts for nothing.",
};
/** Not that it is unpaired: its hello may be on the way still, over a line that hangs, and it must come again. */
const saidNothing: Refusal = {
  code: 'notNow',
  sentence: 'This connection said nothing for too long and is closed; come again.',
};
/** Nor that of a message that came before its hello, as one does whose hello was swallowed on the way. */
const saidTooEarly: Refusal = {
  code: 'notNow',
  sentence: 'This connection has not said whose it is and is closed; come again.',
};
const tooFast: Refusal = { code: 'tooFast', sentence: 'Too many messages; slow down.' };

const bytesOf = (data: RawData): Buffer =>
  Buffer.isBuffer(data) ? data : Array.isArray(data) ? Buffer.concat(data) : Buffer.from(data);

interface Greeted {
  readonly pairing: Pairing;
  readonly bay: Bay;
  /** It has been here since its pairing was good. */
  readonly live: boolean;
  /** It takes no frames any more; null when it takes none already. */
  deaf: (() => void) | null;
  /** What it was told last of its pairing. */
  told: string;
}

/** One face at the other end of a socket. */
export class Connection implements Face {
  readonly address: string;
  readonly #socket: WebSocket;
  readonly #context: ServerContext;
  readonly #faces: Faces;
  readonly #rate: TokenBucket;
  readonly #faults: TokenBucket;
  readonly #helloTimer: NodeJS.Timeout;
  readonly #unwatch: () => void;
  #greeted: Greeted | null = null;
  #surplus = 0;
  #unanswered = 0;
  /** Heartbeats since anything was said here. */
  #wordless = 0;
  /** It has pinged as a page does, by itself: from then on it is missed where it does not. */
  #pings = false;
  #quiet = false;
  #closed = false;

  constructor(socket: WebSocket, address: string, context: ServerContext, faces: Faces) {
    this.#socket = socket;
    this.address = address;
    this.#context = context;
    this.#faces = faces;
    this.#rate = new TokenBucket(MESSAGES, context.nowMs);
    this.#faults = new TokenBucket(FAULTS, context.nowMs);
    this.#helloTimer = setTimeout(() => this.#end(saidNothing), context.patienceMs);
    this.#unwatch = context.pairings.watch(() => this.look());
    faces.add(this);
    socket.on('message', (data, isBinary) => this.#takeSafely(data, isBinary));
    socket.on('pong', () => this.#answered());
    // A broken frame, or one beyond all measure: the library closes the connection.
    socket.on('error', () => {});
    socket.on('close', () => this.#gone());
  }

  get pairing(): Pairing | null {
    return this.#greeted?.pairing ?? null;
  }

  /** Asks the other end for a sign of life; tells the bay of one that gives none, and ends it when it is given up. */
  checkAlive() {
    if (this.#unanswered >= GIVEN_UP_AFTER) return this.#socket.terminate();
    this.#tellIfQuiet();
    this.#unanswered += 1;
    this.#wordless += 1;
    this.#socket.ping();
  }

  #answered(): void {
    this.#unanswered = 0;
    this.#tellIfQuiet();
  }

  #spoke(): void {
    this.#wordless = 0;
    this.#tellIfQuiet();
  }

  #tellIfQuiet(): void {
    const quiet = this.#unanswered >= QUIET_AFTER || (this.#pings && this.#wordless >= WORDLESS_AFTER);
    const greeted = this.#greeted;
    if (quiet === this.#quiet || !greeted?.deaf) return;
    this.#quiet = quiet;
    greeted.bay.setQuiet(greeted.pairing, quiet);
  }

  send(message: ServerMessage): void {
    this.sendText(JSON.stringify(message));
  }

  sendText(text: string) {
    if (this.#closed) return;
    if (this.#socket.bufferedAmount > MOST_UNSENT_BYTES) return this.#socket.terminate();
    this.#socket.send(text);
  }

  /** Sees how it stands with this device's pairing, and tells it what has changed. */
  look(): Standing {
    const greeted = this.#greeted;
    if (!greeted || this.#closed) return 'gone';
    const { pairing, bay, live } = greeted;
    const { pairings } = this.#context;
    const { role } = pairing;
    const standing = standingOf({
      role,
      letGo: pairings.current(pairing) === null,
      leftMs: pairings.leftMs(pairing),
      sessionOpen: bay.isOpen,
      live,
    });
    if (standing === 'gone') {
      this.#end(notPaired);
      return standing;
    }
    if (standing === 'renew')
      pairings
        .renew(pairing, RENEWED_FOR_MS)
        .catch((error: Error) =>
          this.#context.tell(`A pairing could not be kept on the disk: ${error.message}`),
        );
    if (standing === 'stopOnly') this.#hearsNothingMore(greeted);
    this.#tellOfPairing(greeted, standing === 'renew' ? 'endsSoon' : standing);
    return standing;
  }

  #tellOfPairing(greeted: Greeted, state: PairingNews['state']): void {
    const expiresAtMs = this.#context.pairings.current(greeted.pairing)?.expiresAtMs ?? 0;
    const told = `${state} ${expiresAtMs}`;
    if (greeted.told === told || (greeted.told === '' && state === 'good')) return;
    greeted.told = told;
    this.send({
      type: 'pairing',
      state,
      expiresAtMs,
      sentence: standingSentence(state, greeted.pairing.role),
    });
  }

  #hearsNothingMore(greeted: Greeted): void {
    if (!greeted.deaf) return;
    greeted.deaf();
    greeted.deaf = null;
    greeted.bay.left(greeted.pairing);
  }

  /** What breaks here stays in its bay: nobody is told that it counted, and what goes on there is stopped. */
  #takeSafely(data: RawData, isBinary: boolean): void {
    try {
      this.#take(data, isBinary);
    } catch (error) {
      this.#context.tell(`A message failed: ${String(error)}`);
      this.#greeted?.bay.fails(error);
    }
  }

  #take(data: RawData, isBinary: boolean) {
    if (this.#closed) return;
    this.#spoke();
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
    // A stop is never too much, and never too late.
    if (message.type === 'command' && this.#greeted?.bay.isStop(message.deed)) return this.#stop(message);
    if (!inTime) return this.#tooMuch(message);
    this.#handle(message);
  }

  /** The path of a stop: past every limit, to the session and back, with nothing to wait for. */
  #stop({ id, deed }: Command): void {
    if (!this.#greeted || this.look() === 'gone') return;
    const { bay, pairing } = this.#greeted;
    this.send({ type: 'ack', id, ...bay.stop(pairing, id, deed.do === 'stop' ? deed : {}) });
  }

  #handle(message: ClientMessage) {
    if (message.type === 'hello') return this.#hello(message);
    const greeted = this.#greeted;
    if (!greeted) return this.#end(saidTooEarly);
    const standing = this.look();
    if (standing === 'gone') return;
    const { pairing, bay } = greeted;
    if (standing === 'stopOnly' && message.type !== 'ping') {
      // What a device sends by itself is passed over; what somebody asks for is refused. Neither ends a line that may stop.
      if (message.type === 'command')
        this.#refuse({ code: 'notPaired', sentence: standingSentence(standing, pairing.role) }, message);
      return;
    }
    switch (message.type) {
      case 'command':
        void this.#perform(pairing, bay, message);
        break;
      case 'ping':
        // What it has found of the clocks, a page knows from its own ping before.
        if (message.found) this.#pings = true;
        if (message.found && standing !== 'stopOnly') bay.noteOffset(pairing, message.found);
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
      case 'engine':
      case 'voiceOfStop':
        if (pairing.role === 'supervisor') return this.#fault(onlyLooksOn, message);
        if (message.type === 'engine') bay.hearsEngine(pairing, message.session, message.heard);
        else bay.voiceOfStop(pairing, message.voice);
        break;
      case 'ear':
        bay.setListening(pairing, message.listens);
        break;
      case 'battery':
        bay.noteBattery(pairing, { share: message.share, charging: message.charging });
        break;
      case 'spoken':
        bay.spoken(pairing, message.seq);
        break;
    }
  }

  #hello({ token, resume }: Hello) {
    const { pairings, bays } = this.#context;
    const pairing = pairings.recall(token);
    const bay = pairing ? bays.get(pairing.bay) : undefined;
    if (!pairing || !bay) return this.#end(notPaired);
    if (this.#greeted) return this.#fault({ code: 'malformed', sentence: 'Hello was said already.' });
    const live = pairings.isGood(pairing);
    if (!live && !bay.isOpen) return this.#end(notPaired);
    clearTimeout(this.#helloTimer);
    this.#context.known.note(this.address);
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
      seq: stream.seq,
    });
    this.#greeted = { pairing, bay, live, deaf: null, told: '' };
    if (live) {
      const missed = resume?.epoch === stream.epoch ? stream.since(resume.seq) : null;
      if (missed === null) this.send({ type: 'snapshot', ...stream.snapshot() });
      else for (const text of missed) this.sendText(text);
      this.#greeted.deaf = this.#listen(bay, pairing.role);
      bay.came(pairing);
      if (pairing.role === 'supervisor') this.send(this.#context.board.news());
    }
    this.look();
  }

  /** Frames of its own bay; for the supervisor the board of all bays too, and for nobody else. */
  #listen(bay: Bay, role: Role): () => void {
    const stopFrames = bay.stream.listen(text => this.#frame(text));
    if (role !== 'supervisor') return stopFrames;
    const { board } = this.#context;
    const stopBoard = board.watch(text => this.#frame(text));
    return () => {
      stopFrames();
      stopBoard();
    };
  }

  /** Nothing of a session goes to a device whose time has run out, however silent it is. */
  #frame(text: string): void {
    const standing = this.look();
    if (standing !== 'gone' && standing !== 'stopOnly') this.sendText(text);
  }

  replaced(): void {
    this.#end({ code: 'replaced', sentence: 'This device is connected in another place now.' });
  }

  async #perform(pairing: Pairing, bay: Bay, command: Command) {
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
    if (this.#faults.take()) return this.#refuse(refusal, message);
    // It may be the one that has to stop.
    if (!this.#greeted?.bay.isOpen) this.#end(refusal);
  }

  /** A device that is too fast is not cut off while it is merely that: it may be the one that has to stop. */
  #tooMuch(message: ClientMessage) {
    this.#surplus += 1;
    if (this.#surplus >= MOST_SURPLUS || !this.#greeted) return this.#end(tooFast);
    if (this.#surplus <= PATIENCE) this.#refuse(tooFast, message);
  }

  #refuse(refusal: Refusal, message?: ClientMessage): void {
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
    this.#unwatch();
    this.#faces.remove(this);
    if (this.#greeted) this.#hearsNothingMore(this.#greeted);
  }
}
