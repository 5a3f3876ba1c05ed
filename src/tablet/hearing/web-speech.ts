import { createMatcher, type Matcher } from '../../voice/meaning.ts';
import type { Grammar, Heard, Recognizer } from '../../voice/ports.ts';
import { heardAs, stopIn } from '../../voice/transcript.ts';
import { words } from '../words/index.ts';
import type { Hearing, Listener } from './start-hearing.ts';

/** The least that the service must be sure of its words, as it says itself. */
const LEAST_CONFIDENCE = 0.8;

interface Alternative {
  readonly transcript: string;
  readonly confidence: number;
}
interface Result extends ArrayLike<Alternative> {
  readonly isFinal: boolean;
}
interface ResultEvent {
  readonly resultIndex: number;
  readonly results: ArrayLike<Result>;
}

/**
 * The browser's own recognition service, as far as it is used. What puts itself in its place has often no listeners but
 * these, and starts by a promise: it is asked for nothing else.
 */
interface Service {
  lang: string;
  continuous: boolean;
  interimResults: boolean;
  onresult: ((event: ResultEvent) => void) | null;
  onerror: ((event: { readonly error: string }) => void) | null;
  onend: (() => void) | null;
  start(): unknown;
  abort(): unknown;
}

/** The service's constructor under either of its names; undefined in a browser without one. */
function findService(): (new () => Service) | undefined {
  for (const name of ['SpeechRecognition', 'webkitSpeechRecognition']) {
    const found: unknown = Reflect.get(globalThis, name);
    if (typeof found === 'function') return found as new () => Service;
  }
  return undefined;
}

/** Turns what the service writes down into what it means now; a stop counts before the sentence is over. */
export class TranscriptRecognizer implements Recognizer {
  #matcher: Matcher | undefined;
  #stopOnly = false;
  #onHeard: (heard: Heard) => void = () => {};

  listen(grammar: Grammar): void {
    this.#matcher = createMatcher(grammar);
  }

  onlyStop(active: boolean): void {
    this.#stopOnly = active;
  }

  onHeard(handler: (heard: Heard) => void): void {
    this.#onHeard = handler;
  }

  /** The service gives no level. */
  onLevel(): void {}

  close(): void {
    this.#onHeard = () => {};
  }

  take(transcript: string, confidence: number, final: boolean): void {
    const text = transcript.trim().toLowerCase();
    if (!this.#matcher) return;
    const stop = stopIn(this.#matcher, text);
    if (stop) this.#onHeard(stop);
    else if (final && text !== '') {
      const heard = heardAs(this.#matcher, { text, confidence }, LEAST_CONFIDENCE);
      if (heard.kind === 'stop' || !this.#stopOnly) this.#onHeard(heard);
    }
  }
}

/** Faults after which asking again is no use, each with what to do. */
const finalFaults: Readonly<Record<string, string>> = {
  'not-allowed': 'it was not allowed; allow the microphone, or answer by touch',
  'service-not-allowed': 'the browser does not allow it; choose the embedded one',
  'language-not-supported': 'it does not know this language; choose the embedded one',
  network: 'it needs a network and has none; choose the embedded one',
  'audio-capture': 'it hears no microphone, or cannot be reached; choose the embedded one',
};

/** Listens through the browser's service. Where there is none, or it fails, that is said in one sentence. */
export function startWebSpeech(language: string, listener: Listener): Hearing {
  const Service = findService();
  if (!Service) {
    listener.report(words.hearing.noService);
    return { close() {} };
  }
  let service: Service;
  try {
    service = new Service();
  } catch (cause) {
    listener.report(`The browser's recognition service cannot be used: ${String(cause)}.`);
    return { close() {} };
  }
  const recognizer = new TranscriptRecognizer();
  let closed = false;
  Object.assign(service, { lang: language, continuous: true, interimResults: true });
  service.onresult = ({ results, resultIndex }) => {
    for (let i = resultIndex; i < results.length; i += 1) {
      const result = results[i];
      const best = result?.[0];
      if (result && best) recognizer.take(best.transcript, best.confidence, result.isFinal);
    }
  };
  const giveUp = (why: string) => {
    if (closed) return;
    closed = true;
    listener.listensWith('keys');
    listener.report(`The browser's recognition service cannot be used: ${why}.`);
  };
  service.onerror = ({ error }) => {
    const why = finalFaults[error];
    if (why) giveUp(why);
  };
  const start = () => {
    Promise.resolve(service.start()).catch((cause: unknown) => giveUp(String(cause)));
  };
  // It ends by itself after a silence.
  service.onend = () => {
    if (!closed) start();
  };
  listener.attach(recognizer);
  start();
  listener.listensWith("the browser's service");
  return {
    close() {
      closed = true;
      recognizer.close();
      void service.abort();
    },
  };
}
