import { VoiceError } from '../../voice/errors.ts';
import type { Pcm, Synthesizer } from '../../voice/ports.ts';
import type { SpeechReply, SpeechRequest } from '../../voice/speakers/speech-messages.ts';

interface Waiting {
  resolve(sound: Pcm): void;
  reject(cause: VoiceError): void;
}

/** The synthesizer that comes with the page, in a thread of its own: hearing goes on meanwhile. */
export class EmbeddedVoice implements Synthesizer {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, Waiting>();
  #lastId = 0;

  constructor() {
    this.#worker = new Worker(new URL('./speech-worker.ts', import.meta.url), { type: 'module' });
    this.#worker.onmessage = (event: MessageEvent<SpeechReply>) => this.#settle(event.data);
    this.#worker.onerror = event => {
      for (const id of [...this.#waiting.keys()])
        this.#settle({ id, failure: `it broke down, ${event.message}` });
    };
  }

  /** @throws VoiceError (by rejection) when the sentence cannot be spoken */
  synthesize(text: string): Promise<Pcm> {
    this.#lastId += 1;
    const id = this.#lastId;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      this.#worker.postMessage({ id, text } satisfies SpeechRequest);
    });
  }

  close(): void {
    this.#worker.terminate();
  }

  #settle(reply: SpeechReply): void {
    const waiting = this.#waiting.get(reply.id);
    this.#waiting.delete(reply.id);
    if ('failure' in reply) {
      const sentence = `The speech synthesizer failed (${reply.failure}); read the sentence on the screen.`;
      waiting?.reject(new VoiceError('speechUnusable', sentence));
    } else waiting?.resolve({ samples: reply.samples, sampleRateHz: reply.sampleRateHz });
  }
}
