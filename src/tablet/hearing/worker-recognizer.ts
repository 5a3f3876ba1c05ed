import type { EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';
import { isHeard, voiceLanguage } from '../../voice/languages/index.ts';
import type { EarLevel, Grammar, Heard, HeardLanguage, Recognizer, VoiceHeard } from '../../voice/ports.ts';
import type { FromEar, ToEar } from './messages.ts';

/** What of a worker is used: a real one, or its like in a test. */
export interface EarThread {
  post(message: ToEar, transfer?: Transferable[]): void;
  onMessage(handler: (message: FromEar) => void): void;
  end(): void;
}

/**
 * The recognizer in a thread of its own. An answer that was heard by an earlier grammar, and arrives when the
 * question has changed already, is never taken for an answer to the new one; a stop always counts.
 */
export class WorkerRecognizer implements Recognizer {
  readonly #thread: EarThread;
  #loaded: { readonly model: string; readonly language: HeardLanguage } | undefined;
  #turn = 0;
  #grammar: { readonly fingerprint: string; readonly grammar: Grammar } | undefined;
  #stopOnly = false;
  #ready = false;
  /** The last grammar was of a language that no ear was taught. */
  #deaf = false;
  #closed = false;
  #onHeard: (heard: Heard) => void = () => {};
  #onLevel: (level: EarLevel) => void = () => {};
  #onVoice: (heard: VoiceHeard) => void = () => {};
  #onEngine: (heard: EngineHeard) => void = () => {};
  #onTrouble: (sentence: string) => void = () => {};
  #onReady: () => void = () => {};
  #onAway: () => void = () => {};

  constructor(thread: EarThread) {
    this.#thread = thread;
    thread.onMessage(message => this.#take(message));
  }

  /** Loads what listens to a language: the model that somebody brought, or the one that comes with the page. */
  load(language: HeardLanguage, model = ''): void {
    this.#ready = false;
    this.#loaded = { model, language };
    this.#thread.post({ kind: 'load', model, language });
  }

  /**
   * A grammar of another language than that which is loaded has the other one loaded first. Of a language that no ear
   * was taught nothing is heard, which is said.
   */
  listen(grammar: Grammar): void {
    const { code: language, caution } = voiceLanguage(grammar.language);
    if (!isHeard(language)) {
      if (this.#deaf) return;
      this.#deaf = true;
      this.#ready = false;
      this.#grammar = undefined;
      if (caution !== undefined) this.#onTrouble(caution);
      return;
    }
    if (this.#loaded && (this.#deaf || language !== this.#loaded.language)) {
      this.#deaf = false;
      this.load(language, this.#loaded.model);
      this.#onAway();
    }
    const fingerprint = JSON.stringify(grammar);
    if (fingerprint === this.#grammar?.fingerprint) return;
    this.#grammar = { fingerprint, grammar };
    this.#turn += 1;
    if (this.#ready) this.#thread.post({ kind: 'listen', turn: this.#turn, grammar });
  }

  onlyStop(active: boolean): void {
    this.#stopOnly = active;
    if (this.#ready) this.#thread.post({ kind: 'onlyStop', active });
  }

  onHeard(handler: (heard: Heard) => void): void {
    this.#onHeard = handler;
  }

  onLevel(handler: (level: EarLevel) => void): void {
    this.#onLevel = handler;
  }

  onVoice(handler: (heard: VoiceHeard) => void): void {
    this.#onVoice = handler;
  }

  /** Listens for an engine that fires so in the same sound. */
  listenToEngine(firing: Firing, handler: (heard: EngineHeard) => void): void {
    this.#onEngine = handler;
    this.#thread.post({ kind: 'engine', firing });
  }

  /** Loaded, and listening as soon as there is sound. */
  get ready(): boolean {
    return this.#ready;
  }

  onReady(handler: () => void): void {
    this.#onReady = handler;
  }

  /** It does not hear until it is ready again. */
  onAway(handler: () => void): void {
    this.#onAway = handler;
  }

  /** What goes wrong while it listens: one sentence. */
  onTrouble(handler: (sentence: string) => void): void {
    this.#onTrouble = handler;
  }

  close(): void {
    this.#closed = true;
    this.#thread.end();
  }

  #take(message: FromEar): void {
    if (this.#closed) return;
    switch (message.kind) {
      case 'ready':
        if (this.#deaf) return;
        this.#ready = true;
        if (this.#grammar) {
          this.#thread.post({ kind: 'listen', turn: this.#turn, grammar: this.#grammar.grammar });
        }
        this.#thread.post({ kind: 'onlyStop', active: this.#stopOnly });
        this.#onReady();
        return;
      case 'failed':
        this.#onTrouble(message.sentence);
        return;
      case 'level':
        this.#onLevel(message.level);
        return;
      case 'engine':
        this.#onEngine(message.heard);
        return;
      case 'voice':
        this.#onVoice(message.heard);
        return;
      case 'heard':
        this.#hear(message.turn, message.heard);
    }
  }

  #hear(turn: number, heard: Heard): void {
    if (heard.kind === 'stop') this.#onHeard(heard);
    else if (this.#stopOnly || this.#deaf) return;
    else if (turn === this.#turn) this.#onHeard(heard);
    else this.#onHeard({ kind: 'unclear', text: heard.text, reason: 'outOfGrammar' });
  }
}
