import type { AudioSink, Pcm, Synthesizer } from './ports.ts';

/** Hazards cut everything else and are said twice, unless `once` is set; prompts come before notices. */
export type SpeechPriority = 'hazard' | 'prompt' | 'notice';

export interface Sentence {
  readonly text: string;
  readonly priority: SpeechPriority;
  readonly once?: true;
  /** Names the sentence for the record and for files; the text itself without. */
  readonly label?: string;
}

/** What became of a sentence. Only `spoken` means that it was played to its end (a hazard at least once). */
export type SpeechOutcome =
  | { readonly kind: 'spoken' }
  /** A hazard or `clear` took its place; it was not said, or not to its end. Say it again where it matters. */
  | { readonly kind: 'cut' }
  /** A notice that waited until it was no longer news. */
  | { readonly kind: 'stale' }
  /** It could not be made or played: one sentence, why and what to do. */
  | { readonly kind: 'failed'; readonly reason: string };

/** Called with the sentence when its sound begins, with nothing when the sound is over. */
export type SpeakingHandler = (sentence: Sentence | undefined) => void;

interface Entry {
  readonly sentence: Sentence;
  readonly sinceMs: number;
  readonly outcome: Promise<SpeechOutcome>;
  readonly settle: (outcome: SpeechOutcome) => void;
  readonly cutting: AbortController;
}

const ORDER: readonly SpeechPriority[] = ['hazard', 'prompt', 'notice'];
const TIMES_SAID: Readonly<Record<SpeechPriority, number>> = { hazard: 2, prompt: 1, notice: 1 };
/** A notice that had to wait for so long is old news. */
export const STALE_AFTER_MS = 10_000;

/** Says one sentence at a time, the weightiest first, each in the order it came. */
export class SpeechQueue {
  readonly #synthesizer: Synthesizer;
  readonly #sink: AudioSink;
  readonly #nowMs: () => number;
  #waiting: Entry[] = [];
  #current: Entry | undefined;
  #onSpeaking: SpeakingHandler = () => undefined;

  /** @param nowMs monotonic time, by which notices grow stale. */
  constructor(synthesizer: Synthesizer, sink: AudioSink, nowMs: () => number) {
    this.#synthesizer = synthesizer;
    this.#sink = sink;
    this.#nowMs = nowMs;
  }

  /** While a sentence sounds the recognizer should act on stop words only. One handler; the last set counts. */
  onSpeaking(handler: SpeakingHandler): void {
    this.#onSpeaking = handler;
  }

  /**
   * Puts a sentence in its place. The promise never rejects. A hazard that is waiting or being said already is
   * not said anew: both callers get its outcome.
   */
  enqueue(sentence: Sentence): Promise<SpeechOutcome> {
    const isHazard = sentence.priority === 'hazard';
    const same = isHazard ? this.#hazards().find(entry => entry.sentence.text === sentence.text) : undefined;
    if (same) return same.outcome;
    let settle: Entry['settle'] = () => undefined;
    const outcome = new Promise<SpeechOutcome>(resolve => {
      settle = resolve;
    });
    this.#waiting.push({ sentence, sinceMs: this.#nowMs(), outcome, settle, cutting: new AbortController() });
    if (isHazard && this.#current?.sentence.priority !== 'hazard') this.#cutCurrent();
    if (!this.#current) void this.#speakAll();
    return outcome;
  }

  /** Drops what waits and cuts what is being said, hazards excepted: those are always said to their end. */
  clear(): void {
    const dropped = this.#waiting.filter(({ sentence }) => sentence.priority !== 'hazard');
    this.#waiting = this.#waiting.filter(({ sentence }) => sentence.priority === 'hazard');
    for (const { settle } of dropped) settle({ kind: 'cut' });
    if (this.#current?.sentence.priority !== 'hazard') this.#cutCurrent();
  }

  /** Ends everything, hazards too: for the end of the program. */
  async close(): Promise<void> {
    for (const { settle } of this.#waiting) settle({ kind: 'cut' });
    this.#waiting = [];
    this.#cutCurrent();
    await this.#current?.outcome;
    await this.#sink.close();
  }

  #hazards(): readonly Entry[] {
    const all = this.#current ? [this.#current, ...this.#waiting] : this.#waiting;
    return all.filter(({ sentence }) => sentence.priority === 'hazard');
  }

  #cutCurrent(): void {
    this.#current?.cutting.abort();
  }

  async #speakAll(): Promise<void> {
    for (let entry = this.#next(); entry; entry = this.#next()) {
      this.#current = entry;
      const outcome = await this.#say(entry).catch(
        (cause: unknown): SpeechOutcome => ({
          kind: 'failed',
          reason: cause instanceof Error ? cause.message : String(cause),
        }),
      );
      this.#current = undefined;
      entry.settle(outcome);
    }
  }

  #next(): Entry | undefined {
    const stale = ({ sentence, sinceMs }: Entry) =>
      sentence.priority === 'notice' && this.#nowMs() - sinceMs > STALE_AFTER_MS;
    for (const entry of this.#waiting.filter(stale)) entry.settle({ kind: 'stale' });
    this.#waiting = this.#waiting.filter(entry => !stale(entry));
    const weight = ({ sentence }: Entry) => ORDER.indexOf(sentence.priority);
    const [first] = [...this.#waiting].sort((a, b) => weight(a) - weight(b));
    this.#waiting = this.#waiting.filter(entry => entry !== first);
    return first;
  }

  async #say({ sentence, cutting: { signal } }: Entry): Promise<SpeechOutcome> {
    const cut = new Promise<undefined>(resolve => {
      signal.addEventListener('abort', () => resolve(undefined), { once: true });
    });
    // A hazard does not wait for the sound of a sentence that nobody will hear.
    const sound = await Promise.race([this.#synthesizer.synthesize(sentence.text), cut]);
    if (!sound || signal.aborted) return { kind: 'cut' };
    const stopSound = () => this.#sink.cut();
    signal.addEventListener('abort', stopSound, { once: true });
    this.#onSpeaking(sentence);
    try {
      const { heard, failure } = await this.#playAll(sentence, sound, signal);
      if (signal.aborted) return { kind: 'cut' };
      if (heard === 0) throw failure;
      return { kind: 'spoken' };
    } finally {
      signal.removeEventListener('abort', stopSound);
      this.#onSpeaking(undefined);
    }
  }

  /** A hazard that could not be played the first time gets its second. */
  async #playAll(
    { text, priority, once, label = text }: Sentence,
    sound: Pcm,
    signal: AbortSignal,
  ): Promise<{ heard: number; failure: unknown }> {
    let heard = 0;
    let failure: unknown;
    for (let times = once ? 1 : TIMES_SAID[priority]; times > 0 && !signal.aborted; times--) {
      try {
        await this.#sink.play(sound, label);
        heard++;
      } catch (cause) {
        failure = cause;
      }
    }
    return { heard, failure };
  }
}
