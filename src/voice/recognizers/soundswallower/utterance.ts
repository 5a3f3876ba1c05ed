import { concatenate } from '../../concatenate.ts';
import type { Matcher } from '../../meaning.ts';
import type { Heard, UnclearReason } from '../../ports.ts';
import { speechRateHz } from '../../resample.ts';
import { leastCertainty } from './certainty.ts';
import type { Decoded, GrammarDecoder } from './decoder.ts';
import type { StopSpotter } from './stop-spotter.ts';

/** How often the text so far is looked at for a stop wording. */
const checkEverySamples = (speechRateHz * 60) / 1000;
/** A stop wording counts once it has stood in the text this many looks in a row. */
const looksToStop = 2;
/** The text as people read it: without the pseudo-words that stand for other talk. */
const readable = (text: string) =>
  text
    .split(' ')
    .filter(word => !word.startsWith('ph_'))
    .join(' ');

/** What an utterance is decoded with; the spotter must be between utterances when it begins. */
export interface UtteranceParts {
  readonly decoder: GrammarDecoder;
  readonly spotter: StopSpotter;
  readonly matcher: Matcher;
  readonly report: (heard: Heard) => void;
}

const nothing: Decoded = { text: '', confidence: 0 };

/**
 * One stretch of speech. Stop wordings are listened for as it comes, and reported at once; the rest
 * is decoded in each pause, so that the answer is there when a pause turns out to be the end.
 */
export class Utterance {
  private readonly parts: UtteranceParts;
  private readonly heard: Float32Array[] = [];
  private waiting: Float32Array[] = [];
  private waitingSamples = 0;
  /** What was said up to the last pause. */
  private said = nothing;
  private looksWithStop = 0;
  private stopped = false;
  private muted: boolean;
  private outdated = false;

  /** @param muted only stop wordings are reported: the tool is speaking */
  constructor(parts: UtteranceParts, muted: boolean) {
    this.parts = parts;
    this.muted = muted;
    parts.spotter.start();
  }

  /** From now on only stop wordings are reported. */
  mute(): void {
    this.muted = true;
  }

  /** The question has changed since the utterance began: it can only stop, or be unclear. */
  outdate(): void {
    this.outdated = true;
  }

  /** A stop was reported from it already: nothing else is. */
  settle(): void {
    this.stopped = true;
  }

  hear(samples: Float32Array): void {
    this.waiting.push(samples);
    this.waitingSamples += samples.length;
    if (this.waitingSamples >= checkEverySamples) this.look();
  }

  pause(): void {
    if (this.waitingSamples > 0) this.look();
    if (this.stopped || this.muted) return;
    this.said = this.parts.decoder.decode(concatenate(this.heard));
  }

  private look(): void {
    const samples = concatenate(this.waiting);
    this.waiting = [];
    this.waitingSamples = 0;
    const stop = this.parts.spotter.feed(samples);
    this.looksWithStop = stop === undefined ? 0 : this.looksWithStop + 1;
    if (stop !== undefined && this.looksWithStop >= looksToStop) this.stop(stop);
    this.heard.push(samples);
  }

  /** A stop wording was heard in it: reported once, and nothing else is. */
  stop(text: string): void {
    if (this.stopped) return;
    this.stopped = true;
    this.parts.report({ kind: 'stop', text });
  }

  end(cause: 'silence' | 'tooLong'): void {
    if (this.waitingSamples > 0) this.look();
    const stop = this.parts.spotter.end();
    if (stop !== undefined) this.stop(stop);
    if (this.stopped || this.muted) return;
    if (cause === 'tooLong') {
      this.parts.report({ kind: 'unclear', text: '', reason: 'tooLong' });
      return;
    }
    this.answer(this.said);
  }

  private answer({ text, confidence }: Decoded): void {
    const meaning = this.parts.matcher.meaningOf(text);
    const unclear = (reason: UnclearReason) =>
      this.parts.report({ kind: 'unclear', text: readable(text), reason });
    if (meaning?.kind === 'stop') this.stop(readable(text));
    else if (text === '') unclear('nothingRecognized');
    else if (meaning === undefined || this.outdated) unclear('outOfGrammar');
    else if (!(confidence >= leastCertainty)) unclear('lowConfidence');
    else this.parts.report({ ...meaning, text, confidence });
  }
}
