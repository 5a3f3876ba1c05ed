import type { Clock } from '../../session/clock.ts';
import type { AudioSink, Pcm, Synthesizer } from '../../voice/ports.ts';
import { type Sentence, type SpeechOutcome, SpeechQueue } from '../../voice/speech-queue.ts';

/** How long speech takes, roughly; flite's voice says about 14 letters a second (measured on our prompts). */
const MS_PER_LETTER = 70;
const PAUSE_MS = 500;
/** How much longer than that a device may take before it is no longer waited for. */
const SLOW = 2;

/** What the server asks of the faces: say this, be silent. */
export interface Mouths {
  /** @returns the number of the frame that asked for it */
  say(text: string, priority: Sentence['priority']): number;
  hush(): void;
  /** A device speaks for this bay and will tell when it is done. */
  attended(): boolean;
}

/** Speech without sound of its own: each sentence goes to the faces, and is over when the owner's says so. */
export class RemoteVoice implements Synthesizer, AudioSink {
  readonly description = 'the paired devices';
  readonly #mouths: Mouths;
  readonly #clock: Clock;
  readonly #priorities = new Map<string, Sentence['priority']>();
  readonly #texts = new WeakMap<Pcm, string>();
  #saying: { readonly seq: number; readonly over: AbortController } | null = null;

  constructor(mouths: Mouths, clock: Clock) {
    this.#mouths = mouths;
    this.#clock = clock;
  }

  /** The sentence that comes next under this text is so weighty. */
  expect({ text, priority }: Sentence): void {
    this.#priorities.set(text, priority);
  }

  async synthesize(text: string): Promise<Pcm> {
    const sound: Pcm = { samples: new Float32Array(0), sampleRateHz: 16_000 };
    this.#texts.set(sound, text);
    return sound;
  }

  async play(sound: Pcm): Promise<void> {
    const text = this.#texts.get(sound) ?? '';
    const over = new AbortController();
    const seq = this.#mouths.say(text, this.#priorities.get(text) ?? 'prompt');
    const usualMs = PAUSE_MS + text.length * MS_PER_LETTER;
    this.#saying = { seq, over };
    await this.#clock.sleep(this.#mouths.attended() ? SLOW * usualMs : usualMs, over.signal);
    this.#saying = null;
  }

  /** The owner's device has said the sentence of this frame. */
  spoken(seq: number): void {
    if (this.#saying?.seq === seq) this.#saying.over.abort();
  }

  cut(): void {
    if (!this.#saying) return;
    this.#mouths.hush();
    this.#saying.over.abort();
  }

  async close(): Promise<void> {
    this.cut();
  }
}

/** A speech queue whose mouths are the paired devices. */
export class RemoteSpeech extends SpeechQueue {
  readonly voice: RemoteVoice;
  #isClosed = false;

  constructor(mouths: Mouths, clock: Clock) {
    const voice = new RemoteVoice(mouths, clock);
    super(voice, voice, () => clock.nowMs());
    this.voice = voice;
  }

  override enqueue(sentence: Sentence): Promise<SpeechOutcome> {
    if (this.#isClosed) return Promise.resolve({ kind: 'cut' });
    this.voice.expect(sentence);
    return super.enqueue(sentence);
  }

  /** What a session that is left had still to say is not said into the next one of its bay. */
  override close(): Promise<void> {
    this.#isClosed = true;
    return super.close();
  }
}
