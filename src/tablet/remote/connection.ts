import {
  applyPatch,
  type BayBrief,
  type BayState,
  type ClientMessage,
  type ClockOffset,
  type Command,
  clockOffset,
  type Deed,
  type ErrorCode,
  type Frame,
  type Hello,
  type PairingNews,
  PROTOCOL_VERSION,
  parseServerMessage,
  type Refusal,
  type ServerMessage,
  type TimeExchange,
} from '../../server/protocol/index.ts';

import { ANSWER_WITHIN_MS, type StopState } from '../face/stop-state.ts';
import { GivenStops } from './given-stops.ts';
import { KeptStops, type StopStore } from './kept-stops.ts';

/** What of a WebSocket is used: a real one, or its like in a test. */
export interface Line {
  send(text: string): void;
  close(): void;
  onOpen(handler: () => void): void;
  onText(handler: (text: string) => void): void;
  onClosed(handler: () => void): void;
}

export type SayFrame = Extract<Frame, { type: 'say' }>;

/** What was said while the line was broken. */
export interface Missed {
  /** Oldest first; null where it is too long ago to be told. */
  readonly said: readonly SayFrame[] | null;
  /** What was being said as the line broke was silenced. */
  readonly hushed: boolean;
  /** The question before the break. */
  readonly turn: string | undefined;
}

export type LineState = 'connecting' | 'connected' | 'broken' | 'refused';

export interface ConnectionParts {
  readonly token: string;
  readonly openLine: () => Line;
  /** Milliseconds that never run backwards, and the wall clock. */
  readonly nowMs: () => number;
  readonly wallMs: () => number;
  readonly after: (ms: number, act: () => void) => void;
  readonly newId: () => string;
  /** Where a stop without an answer outlives the page. */
  readonly keptStops: StopStore;
}

export interface ConnectionEvents {
  onState(): void;
  onSay(frame: SayFrame): void;
  onHush(): void;
  /** The line is back after a break, and the state is what it has come to meanwhile: nothing of it was given to `onSay`. */
  onCaughtUp(missed: Missed): void;
  onRefused(sentence: string): void;
  onPairing(news: PairingNews): void;
  /** A stop has not been answered in time: whoever gave it has to know what to do. */
  onUnanswered(): void;
}

const FIRST_RETRY_MS = 300;
const LONGEST_RETRY_MS = 5_000;
const PING_EVERY_MS = 2_000;
/** Without any word from the server for so long the line is taken for dead. */
const SILENCE_MS = 6_000;
/** With a stop unanswered for so long the line is taken for dead. */
const STOP_SILENCE_MS = 2 * ANSWER_WITHIN_MS;
const EXCHANGES_KEPT = 8;
/** What a person gave is acknowledged within this, or they are told that it was not. */
const ACKNOWLEDGED_WITHIN_MS = 3_000;
const UNACKNOWLEDGED =
  'The laptop has not acknowledged what was given last; see what is asked, then answer again.';

/** The laptop reads or closes a record for these: for how long nobody knows. */
const takesLong: readonly Deed['do'][] = ['begin', 'resume', 'setAside'];

/** Refusals after which to come back is no use; all others end only this line. */
const forGood: readonly ErrorCode[] = ['notPaired', 'otherVersion', 'replaced', 'wrongOrigin'];

/** A deed that a late connection would do harm with is not sent again: only a stop never comes too late. */
const isWorthRepeating = ({ do: what }: Deed) => what === 'stop';

/** One device's line to the bay: opened again when it breaks, with nothing lost and nothing done twice. */
export class Connection {
  readonly #parts: ConnectionParts;
  readonly #events: ConnectionEvents;
  #line: Line | null = null;
  #lineState: LineState = 'connecting';
  #refusal: Refusal | null = null;
  #epoch: string | null = null;
  #seq = 0;
  /** Frames up to this one are sent again; then it is told what was missed. */
  #againUpTo = 0;
  #missed: { readonly said: SayFrame[]; hushed: boolean; readonly turn: string | undefined } | null = null;
  #state: BayState | null = null;
  #device = '';
  #takenAtMs = 0;
  #waiting = new Map<string, Deed>();
  #exchanges: TimeExchange[] = [];
  #offset: ClockOffset | null = null;
  #heardMs = 0;
  #retryMs = FIRST_RETRY_MS;
  #closed = false;
  readonly #stops = new GivenStops();
  readonly #kept: KeptStops;
  readonly #leaving: (() => void)[] = [];
  #pairing: PairingNews | null = null;
  #listens = false;
  #board: readonly BayBrief[] = [];
  #boardAtMs = 0;

  constructor(parts: ConnectionParts, events: ConnectionEvents) {
    this.#parts = parts;
    this.#events = events;
    this.#kept = new KeptStops(parts.keptStops);
    this.#takeOverStops();
    this.#open();
  }

  get lineState(): LineState {
    return this.#lineState;
  }

  /** Why the laptop has refused this device for good. */
  get refusal(): Refusal | null {
    return this.#refusal;
  }

  get state(): BayState | null {
    return this.#state;
  }

  /** This device's id in the list of devices. */
  get device(): string {
    return this.#device;
  }

  /** `nowMs` when the state was taken. */
  get takenAtMs(): number {
    return this.#takenAtMs;
  }

  /** What has become of the stops that were given. */
  get stop(): StopState {
    return this.#stops.state;
  }

  /** All bays of the shop, where this device may see them. */
  get board(): readonly BayBrief[] {
    return this.#board;
  }

  /** `nowMs` when the board was taken. */
  get boardAtMs(): number {
    return this.#boardAtMs;
  }

  get pairing(): PairingNews | null {
    return this.#pairing;
  }

  get offset(): ClockOffset | null {
    return this.#offset;
  }

  /** Sends a deed. Without a line only a stop is kept for later; the rest would answer a question that is gone. */
  command(deed: Deed): void {
    const id = this.#parts.newId();
    if (this.#lineState !== 'connected' && !isWorthRepeating(deed)) {
      this.#events.onRefused('There is no connection to the laptop: that was not sent.');
      return;
    }
    this.#waiting.set(id, deed);
    if (deed.do === 'stop') {
      // A touch shows which tab people look at; a voice is heard by each of them.
      if (deed.via !== 'voice') this.takeLine();
      this.#kept.add({ id, deed, session: this.#state?.session });
      this.#stopping(id);
    } else if (!takesLong.includes(deed.do))
      this.#parts.after(ACKNOWLEDGED_WITHIN_MS, () => {
        if (this.#waiting.delete(id)) this.#events.onRefused(UNACKNOWLEDGED);
      });
    if (this.#lineState === 'connected') this.#send({ type: 'command', id, deed } satisfies Command);
  }

  /** Whether this device hears; said again on each new line. */
  setListening(listens: boolean): void {
    this.#listens = listens;
    if (this.#lineState === 'connected') this.#send({ type: 'ear', listens });
  }

  /** Comes again, where another tab of this browser has taken the line. */
  takeLine(): void {
    if (this.#refusal?.code !== 'replaced') return;
    this.#refusal = null;
    this.#retryMs = FIRST_RETRY_MS;
    this.#setLineState('connecting');
    this.#open();
  }

  tell(
    message: Extract<ClientMessage, { type: 'level' | 'spoken' | 'battery' | 'engine' | 'voiceOfStop' }>,
  ): void {
    if (this.#lineState === 'connected' && this.#pairing?.state !== 'stopOnly') this.#send(message);
  }

  /** Ends it: at once, or as soon as each stop has its answer, or was told to have none. */
  async close(): Promise<void> {
    while (this.#stops.anyIsAwaited) await new Promise<void>(resolve => this.#leaving.push(resolve));
    this.#closed = true;
    this.#kept.clear();
    this.#line?.close();
  }

  /** Those that a page before this one gave, and nobody answered: people may not have been told yet, and are from here. */
  #takeOverStops(): void {
    const before = this.#kept.all;
    if (before.length === 0) return;
    for (const { id, deed } of before) {
      this.#waiting.set(id, deed);
      this.#stops.takeOver(id);
    }
    // Whoever listens is there only when this is made.
    this.#parts.after(0, () => this.#shoutIf(before.map(({ id }) => this.#stops.isLate(id)).includes(true)));
  }

  /** A stop of the page before goes to the session that it was given in, and to no other. */
  #judgeStops(session: string | null | undefined): void {
    const { good, gone } = this.#kept.judge(session);
    for (const { id } of gone) {
      this.#waiting.delete(id);
      this.#stops.drop(id);
    }
    for (const { id, deed } of good) this.#send({ type: 'command', id, deed });
    if (gone.length > 0) this.#stopsChanged();
  }

  #stopping(id: string): void {
    this.#stops.give(id);
    this.#events.onState();
    const late = () => this.#shoutIf(this.#stops.isLate(id));
    if (this.#lineState === 'refused') late();
    this.#parts.after(ANSWER_WITHIN_MS, late);
    this.#parts.after(STOP_SILENCE_MS, () => {
      // A line that takes a stop and gives nothing back may be dead without knowing it.
      if (this.#stops.waits(id) && this.#line && this.#lineState === 'connected') this.#abandon(this.#line);
    });
  }

  #shoutIf(isNews: boolean): void {
    if (isNews && !this.#closed) this.#events.onUnanswered();
    this.#stopsChanged();
  }

  #stopsChanged(): void {
    this.#events.onState();
    if (!this.#stops.anyIsAwaited) for (const leave of this.#leaving.splice(0)) leave();
  }

  /** Ends a line without waiting for its end: a browser tells of that only when the other side has answered, or after a minute. */
  #abandon(line: Line): void {
    line.close();
    if (this.#line === line) this.#broken();
  }

  #send(message: ClientMessage): void {
    this.#line?.send(JSON.stringify(message));
  }

  #open(): void {
    if (this.#closed) return;
    const line = this.#parts.openLine();
    this.#line = line;
    const isCurrent = () => this.#line === line && !this.#closed;
    line.onOpen(() => {
      if (!isCurrent()) return;
      this.#heardMs = this.#parts.nowMs();
      // Where no state has come yet, there is nothing that frames could change.
      const resume =
        this.#epoch === null || this.#state === null
          ? {}
          : { resume: { epoch: this.#epoch, seq: this.#seq } };
      const hello: Hello = { type: 'hello', v: PROTOCOL_VERSION, token: this.#parts.token, ...resume };
      this.#send(hello);
    });
    line.onText(text => {
      if (isCurrent()) this.#read(text);
    });
    line.onClosed(() => {
      if (isCurrent()) this.#broken();
    });
    // One on which nothing comes is no better than none: on a network that swallows everything it may hang for minutes.
    this.#parts.after(SILENCE_MS, () => {
      if (isCurrent() && this.#lineState !== 'connected' && this.#lineState !== 'refused')
        this.#abandon(line);
    });
  }

  #broken(): void {
    this.#line = null;
    if (this.#lineState === 'refused') return;
    this.#setLineState('broken');
    const lost = [...this.#waiting].filter(([, deed]) => !isWorthRepeating(deed));
    for (const [id] of lost) this.#waiting.delete(id);
    if (lost.length > 0) this.#events.onRefused(UNACKNOWLEDGED);
    if (this.#stops.anyWaits) this.#retryMs = FIRST_RETRY_MS;
    this.#parts.after(this.#retryMs, () => this.#open());
    this.#retryMs = Math.min(LONGEST_RETRY_MS, this.#retryMs * 2);
  }

  #read(text: string): void {
    this.#heardMs = this.#parts.nowMs();
    const parsed = parseServerMessage(text);
    if (!parsed.ok) {
      this.#events.onRefused(parsed.refusal.sentence);
      if (this.#line) this.#abandon(this.#line);
      return;
    }
    this.#take(parsed.message);
  }

  #take(message: ServerMessage): void {
    switch (message.type) {
      case 'welcome':
        if (this.#epoch !== message.epoch) {
          this.#seq = 0;
          this.#missed = null;
        } else if (message.seq > this.#seq) {
          // A line that broke as it caught up left something for the next one.
          this.#missed ??= { said: [], hushed: false, turn: this.#state?.turn };
        }
        this.#epoch = message.epoch;
        this.#againUpTo = message.seq;
        this.#device = message.device;
        this.#retryMs = FIRST_RETRY_MS;
        this.#setLineState('connected');
        for (const [id, deed] of this.#waiting)
          if (!this.#kept.isDoubtful(id)) this.#send({ type: 'command', id, deed });
        if (this.#listens) this.#send({ type: 'ear', listens: true });
        this.#ping();
        return;
      case 'snapshot':
        this.#seq = message.seq;
        this.#setState(message.state);
        this.#judgeStops(message.state.session);
        this.#caughtUp(null);
        return;
      case 'patch':
      case 'say':
      case 'hush':
        this.#frame(message);
        return;
      case 'ack':
        this.#acknowledged(message);
        return;
      case 'pairing':
        this.#pairing = message;
        // Of the session it is told nothing any more.
        if (message.state === 'stopOnly') this.#judgeStops(undefined);
        this.#events.onPairing(message);
        this.#events.onState();
        return;
      case 'error':
        if (message.id !== null) {
          this.#waiting.delete(message.id);
          this.#kept.remove(message.id);
          if (this.#stops.waits(message.id)) this.#shoutIf(this.#stops.refused(message.id));
        }
        this.#events.onRefused(message.sentence);
        if (message.final && forGood.includes(message.code))
          this.#refused({ code: message.code, sentence: message.sentence });
        return;
      case 'pong':
        this.#pong(message);
        return;
      case 'board':
        this.#board = message.bays;
        this.#boardAtMs = this.#parts.nowMs();
        this.#events.onState();
        return;
      case 'levelNews':
        return;
    }
  }

  #refused(refusal: Refusal): void {
    this.#refusal = refusal;
    this.#setLineState('refused');
    this.#shoutIf(this.#stops.allAreLate());
  }

  #frame(frame: Frame): void {
    // Frames come without a gap; what is missing is sent again on a new line.
    if (frame.seq <= this.#seq) return;
    if (frame.seq !== this.#seq + 1) {
      if (this.#line) this.#abandon(this.#line);
      return;
    }
    this.#seq = frame.seq;
    const missed = frame.seq <= this.#againUpTo ? this.#missed : null;
    if (frame.type === 'patch') {
      if (this.#state) this.#setState(applyPatch(this.#state, frame.patch));
    } else if (frame.type === 'say') {
      if (missed) missed.said.push(frame);
      else this.#events.onSay(frame);
    } else if (missed) missed.hushed = true;
    else this.#events.onHush();
    if (missed && frame.seq === this.#againUpTo) this.#caughtUp(missed.said);
  }

  #caughtUp(said: Missed['said']): void {
    const missed = this.#missed;
    this.#missed = null;
    if (missed) this.#events.onCaughtUp({ ...missed, said });
  }

  #acknowledged({ id, stop }: Extract<ServerMessage, { type: 'ack' }>): void {
    this.#waiting.delete(id);
    this.#kept.remove(id);
    if (!this.#stops.waits(id)) return;
    this.#stops.answered(id, stop ?? 'none');
    this.#stopsChanged();
  }

  #setState(state: BayState): void {
    // What was stopped is no longer there: nothing of it is shown over what comes.
    if (this.#state?.session && state.session === null) this.#stops.forget();
    this.#state = state;
    this.#takenAtMs = this.#parts.nowMs();
    this.#events.onState();
  }

  #setLineState(state: LineState): void {
    this.#lineState = state;
    this.#events.onState();
  }

  #ping(): void {
    const line = this.#line;
    if (this.#closed || !line || this.#lineState !== 'connected') return;
    if (this.#parts.nowMs() - this.#heardMs > SILENCE_MS) {
      this.#abandon(line);
      return;
    }
    const found = this.#offset ? { found: this.#offset } : {};
    this.#send({ type: 'ping', sentMs: this.#parts.wallMs(), ...found });
    this.#parts.after(PING_EVERY_MS, () => {
      if (this.#line === line) this.#ping();
    });
  }

  #pong({ sentMs, serverMs }: { readonly sentMs: number; readonly serverMs: number }): void {
    const exchange = { sentMs, serverMs, receivedMs: this.#parts.wallMs() };
    this.#exchanges = [...this.#exchanges, exchange].slice(-EXCHANGES_KEPT);
    this.#offset = clockOffset(this.#exchanges);
    this.#events.onState();
  }
}
