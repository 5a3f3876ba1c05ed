import { concatenate } from '../concatenate.ts';
import type { Matcher } from '../meaning.ts';
import type { Heard } from '../ports.ts';
import { speechRateHz } from '../resample.ts';
import { heardAs, stopIn } from '../transcript.ts';
import type { VoskAnswer, VoskEngine, VoskWord } from './engine.ts';
import { UNKNOWN } from './grammar.ts';

/** Sound is handed on in pieces of this length: each is an answer that may hold a stop. */
const pieceSamples = speechRateHz / 10;
/**
 * The least that Vosk must be sure of its least certain word. Not measured: there was no model to measure with. It is
 * the bound that is used for other services which give a certainty.
 */
const leastConfidence = 0.8;

export interface VoskUtteranceParts {
  readonly engine: VoskEngine;
  readonly matcher: Matcher;
  readonly report: (heard: Heard) => void;
}

/** One stretch of speech: a stop counts as soon as it stands in the text, the rest when the speaker is through. */
export class VoskUtterance {
  readonly #parts: VoskUtteranceParts;
  #waiting: Float32Array[] = [];
  #waitingSamples = 0;
  /** Vosk may take a pause for an end: what it finished before the speaker was through. */
  readonly #words: VoskWord[] = [];
  #stopped = false;
  #muted: boolean;
  #outdated = false;

  /** @param muted only stop wordings are reported: the tool is speaking */
  constructor(parts: VoskUtteranceParts, muted: boolean) {
    this.#parts = parts;
    this.#muted = muted;
  }

  mute(): void {
    this.#muted = true;
  }

  /** The question has changed since it began: it can only stop, or be unclear. */
  outdate(): void {
    this.#outdated = true;
  }

  async hear(samples: Float32Array): Promise<void> {
    this.#waiting.push(samples);
    this.#waitingSamples += samples.length;
    if (this.#waitingSamples >= pieceSamples) await this.#handOn();
  }

  async end(cause: 'silence' | 'tooLong'): Promise<void> {
    await this.#handOn();
    this.#take(await this.#parts.engine.finish());
    if (this.#stopped || this.#muted) return;
    const { matcher, report } = this.#parts;
    const text = this.#text();
    const confidence = Math.min(...this.#words.map(({ conf }) => conf));
    if (cause === 'tooLong') report({ kind: 'unclear', text: '', reason: 'tooLong' });
    else if (this.#outdated || this.#words.some(({ word }) => word === UNKNOWN))
      report({ kind: 'unclear', text, reason: 'outOfGrammar' });
    else report(heardAs(matcher, { text, confidence }, leastConfidence));
  }

  async #handOn(): Promise<void> {
    if (this.#waitingSamples === 0) return;
    const samples = concatenate(this.#waiting);
    this.#waiting = [];
    this.#waitingSamples = 0;
    this.#take(await this.#parts.engine.accept(samples));
  }

  #text(unfinished = ''): string {
    const words = [...this.#words.map(({ word }) => word), unfinished];
    return words.filter(word => word !== '').join(' ');
  }

  #take(answer: VoskAnswer): void {
    if (answer.kind === 'final') this.#words.push(...answer.words);
    if (this.#stopped) return;
    const { matcher, report } = this.#parts;
    const stop = stopIn(matcher, this.#text(answer.kind === 'partial' ? answer.text : ''));
    if (!stop) return;
    this.#stopped = true;
    report(stop);
  }
}
