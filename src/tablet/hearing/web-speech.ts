import { createMatcher, type Matcher } from '../../voice/meaning.ts';
import type { Grammar, Heard, Recognizer } from '../../voice/ports.ts';
import { heardAs, stopIn } from '../../voice/transcript.ts';
import { words } from '../words/index.ts';
import type { Hearing, Listener } from './start-hearing.ts';

/** The least that the service must be sure of its words, as it says itself. */
const LEAST_CONFIDENCE = 0.8;
/**
 * From memory, of such services: the first words of an utterance come no sooner after its beginning, and one that comes
 * only when it is over no later. What is told sooner after another question, or after the tool's own voice, began before.
 */
const FIRST_WORDS_MS = 500;
const WHOLE_AT_ONCE_MS = 1_500;

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

/** What somebody is saying, or has said. */
interface Utterance {
  /** The question that it answers, and no other; null where it began before there was time to hear the one that is asked. */
  readonly question: string | null;
  /** The tool spoke in the course of it, or right before: it can only stop. */
  underTool: boolean;
}

/**
 * Turns what the service writes down into what it means now; a stop counts before the sentence is over. What began before
 * the question changed is unclear, and nothing that was said under the tool's voice is an answer.
 */
export class TranscriptRecognizer implements Recognizer {
  readonly #nowMs: () => number;
  #asked: { readonly question: string; readonly matcher: Matcher; readonly sinceMs: number } | undefined;
  #stopOnly = false;
  #ceasedMs = Number.NEGATIVE_INFINITY;
  readonly #open = new Map<number, Utterance>();
  #onHeard: (heard: Heard) => void = () => {};

  /** @param nowMs milliseconds that never run backwards */
  constructor(nowMs: () => number) {
    this.#nowMs = nowMs;
  }

  listen(grammar: Grammar): void {
    const question = JSON.stringify(grammar);
    if (question === this.#asked?.question) return;
    const sinceMs = this.#asked ? this.#nowMs() : Number.NEGATIVE_INFINITY;
    this.#asked = { question, matcher: createMatcher(grammar), sinceMs };
  }

  onlyStop(active: boolean): void {
    if (this.#stopOnly && !active) this.#ceasedMs = this.#nowMs();
    this.#stopOnly = active;
    if (active) for (const utterance of this.#open.values()) utterance.underTool = true;
  }

  onHeard(handler: (heard: Heard) => void): void {
    this.#onHeard = handler;
  }

  /** The service gives no level. */
  onLevel(): void {}

  close(): void {
    this.#onHeard = () => {};
  }

  /** The service counts its utterances anew; what was not over never will be. */
  beginAnew(): void {
    this.#open.clear();
  }

  /** @param nth of the utterance, since the service began */
  take(nth: number, transcript: string, confidence: number, final: boolean): void {
    if (!this.#asked) return;
    const { matcher, question } = this.#asked;
    const utterance = this.#open.get(nth) ?? this.#begun(final ? WHOLE_AT_ONCE_MS : FIRST_WORDS_MS);
    if (final) this.#open.delete(nth);
    else this.#open.set(nth, utterance);
    const text = transcript.trim().toLowerCase();
    const stop = stopIn(matcher, text);
    if (stop) this.#onHeard(stop);
    else if (final && text !== '') {
      const heard = heardAs(matcher, { text, confidence }, LEAST_CONFIDENCE);
      if (heard.kind === 'stop') this.#onHeard(heard);
      else if (utterance.underTool) return;
      else if (utterance.question === question) this.#onHeard(heard);
      else this.#onHeard({ kind: 'unclear', text, reason: 'outOfGrammar' });
    }
  }

  /** One that is told of now, and began so long ago at the most. */
  #begun(agoMs: number): Utterance {
    const fromMs = this.#nowMs() - agoMs;
    return {
      question: this.#asked && fromMs >= this.#asked.sinceMs ? this.#asked.question : null,
      underTool: this.#stopOnly || fromMs < this.#ceasedMs,
    };
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
  const recognizer = new TranscriptRecognizer(() => performance.now());
  let closed = false;
  Object.assign(service, { lang: language, continuous: true, interimResults: true });
  service.onresult = ({ results, resultIndex }) => {
    for (let i = resultIndex; i < results.length; i += 1) {
      const result = results[i];
      const best = result?.[0];
      if (result && best) recognizer.take(i, best.transcript, best.confidence, result.isFinal);
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
    recognizer.beginAnew();
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
