import { z } from 'zod';
import type { VoskAnswer, VoskEngine } from '../../../voice/decoders/vosk/engine.ts';
import { VoiceError } from '../../../voice/errors.ts';
import { speechRateHz } from '../../../voice/resample.ts';
import { engineFile } from './engine-address.ts';

/** Where the engine unpacks its model: a data base of the browser. */
const UNPACKED = '/vosk';
/** Vosk takes samples in the range of 16 bits. */
const FULL_SCALE = 0x8000;

// Messages of the engine's thread: interfaces.d.ts of vosk-browser 0.0.8.
const wordSchema = z.object({ word: z.string(), conf: z.number() });
const messageSchema = z.discriminatedUnion('event', [
  z.object({ event: z.literal('load'), result: z.boolean() }),
  z.object({
    event: z.literal('error'),
    recognizerId: z.string().optional(),
    error: z.string().optional(),
  }),
  z.object({
    event: z.literal('partialresult'),
    recognizerId: z.string(),
    result: z.object({ partial: z.string() }),
  }),
  z.object({
    event: z.literal('result'),
    recognizerId: z.string(),
    result: z.object({ text: z.string(), result: z.array(wordSchema).optional() }),
  }),
]);
type Message = z.infer<typeof messageSchema>;

const unusable = (why: string) =>
  new VoiceError('modelUnusable', `Vosk cannot use the model (${why}); bring another one in the settings.`);

/** The copy of the last start goes: what is loaded is what was checked just now, never the rest of a failure. */
const forgetUnpacked = () =>
  new Promise<void>((resolve, reject) => {
    const request = indexedDB.deleteDatabase(UNPACKED);
    request.onsuccess = () => resolve();
    request.onerror = () => reject(unusable('the copy of the last start cannot be removed'));
    request.onblocked = () =>
      reject(
        new VoiceError(
          'modelUnusable',
          'Vosk is in use in another window of this page; close that one first.',
        ),
      );
  });

interface Asked {
  readonly resolve: (answer: VoskAnswer) => void;
  readonly reject: (cause: unknown) => void;
}

/** Words without a certainty of their own are worth nothing. */
function answerOf(message: Extract<Message, { event: 'result' | 'partialresult' }>): VoskAnswer {
  if (message.event === 'partialresult') return { kind: 'partial', text: message.result.partial };
  const { text, result } = message.result;
  const bare = text === '' ? [] : text.split(' ').map(word => ({ word, conf: 0 }));
  return { kind: 'final', words: result ?? bare };
}

class EngineThread implements VoskEngine {
  readonly #worker: Worker;
  #recognizer = 0;
  #asked: Asked[] = [];

  constructor(worker: Worker) {
    this.#worker = worker;
  }

  get #id(): string {
    return String(this.#recognizer);
  }

  setPhrases(phrases: readonly string[]): void {
    if (this.#recognizer > 0) this.#worker.postMessage({ action: 'remove', recognizerId: this.#id });
    this.#recognizer += 1;
    const recognizerId = this.#id;
    const grammar = JSON.stringify(phrases);
    this.#worker.postMessage({ action: 'create', recognizerId, sampleRate: speechRateHz, grammar });
    this.#worker.postMessage({ action: 'set', recognizerId, key: 'words', value: true });
  }

  accept(samples: Float32Array): Promise<VoskAnswer> {
    const data = samples.map(sample => sample * FULL_SCALE);
    return this.#ask({ action: 'audioChunk', recognizerId: this.#id, data, sampleRate: speechRateHz }, [
      data.buffer,
    ]);
  }

  finish(): Promise<VoskAnswer> {
    return this.#ask({ action: 'retrieveFinalResult', recognizerId: this.#id }, []);
  }

  close(): void {
    this.#worker.terminate();
  }

  take(message: Message): void {
    if (message.event === 'load' || (message.recognizerId ?? this.#id) !== this.#id) return;
    if (message.event === 'error') this.fail(message.error ?? 'it gives no reason');
    else this.#asked.shift()?.resolve(answerOf(message));
  }

  fail(why: string): void {
    const asked = this.#asked;
    this.#asked = [];
    for (const { reject } of asked) reject(unusable(why));
  }

  #ask(message: object, transfer: Transferable[]): Promise<VoskAnswer> {
    return new Promise((resolve, reject) => {
      this.#asked.push({ resolve, reject });
      this.#worker.postMessage(message, transfer);
    });
  }
}

/**
 * Starts the engine in a thread of its own and loads a model into it. It may never answer: whoever waits needs a
 * limit.
 * @param archive address of a tar.gz that was checked
 * @throws VoiceError `modelUnusable`
 */
export async function startEngine(archive: string): Promise<VoskEngine> {
  await forgetUnpacked();
  const worker = new Worker(new URL(`/${engineFile}`, self.location.origin));
  const engine = new EngineThread(worker);
  await new Promise<void>((resolve, reject) => {
    const fail = (why: string) => {
      reject(unusable(why));
      engine.fail(why);
    };
    worker.onerror = ({ message }) => fail(message || 'its engine does not start');
    worker.onmessage = ({ data }) => {
      // What is asked for without an answer is answered with nothing.
      if (data === undefined || data === null) return;
      const parsed = messageSchema.safeParse(data);
      if (!parsed.success) return fail('its engine gives an answer that nobody understands');
      const message = parsed.data;
      if (message.event === 'load') {
        if (message.result) resolve();
        else fail('its engine does not take it');
      } else if (message.event === 'error' && message.recognizerId === undefined)
        fail(message.error ?? 'its engine gives no reason');
      else engine.take(message);
    };
    worker.postMessage({ action: 'set', key: 'logLevel', value: -1 });
    worker.postMessage({ action: 'load', modelUrl: archive });
  }).catch((cause: unknown) => {
    worker.terminate();
    throw cause;
  });
  return engine;
}
