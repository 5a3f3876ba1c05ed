import { concatenate } from '../../endpointing.ts';
import type { Matcher } from '../../meaning.ts';
import type { Heard } from '../../ports.ts';
import { speechRateHz } from '../../resample.ts';
import type { GrammarDecoder } from './decoder.ts';

/** How often the text so far is looked at for a stop wording. */
const checkEverySamples = (speechRateHz * 60) / 1000;
/** A stop wording counts once it has stood in the text this many looks in a row. */
const looksToStop = 2;
/** Below this certainty of its least certain word a reply is asked for again. */
const leastConfidence = 0.72;
/** The text as people read it: without the pseudo-words that stand for other talk. */
const readable = (text: string) =>
  text
    .split(' ')
    .filter(word => !word.startsWith('ph_'))
    .join(' ');

/** One stretch of speech: decoded as it comes, stop wordings reported at once, the rest at its end. */
export class Utterance {
  private readonly decoder: GrammarDecoder;
  private readonly matcher: Matcher;
  private readonly report: (heard: Heard) => void;
  private waiting: Float32Array[] = [];
  private waitingSamples = 0;
  private looksWithStop = 0;
  private stopped = false;
  private muted: boolean;
  private outdated = false;

  /** The decoder must be between utterances; it is taken until `end`. */
  constructor(decoder: GrammarDecoder, matcher: Matcher, muted: boolean, report: (heard: Heard) => void) {
    this.decoder = decoder;
    this.matcher = matcher;
    this.muted = muted;
    this.report = report;
    decoder.start();
  }

  /** From now on only stop wordings are reported. */
  mute(): void {
    this.muted = true;
  }

  /** The question has changed since the utterance began: it can only stop, or be unclear. */
  outdate(): void {
    this.outdated = true;
  }

  hear(samples: Float32Array): void {
    this.waiting.push(samples);
    this.waitingSamples += samples.length;
    if (this.waitingSamples >= checkEverySamples) this.look();
  }

  private look(): void {
    const text = this.decoder.feed(concatenate(this.waiting));
    this.waiting = [];
    this.waitingSamples = 0;
    const stop = this.matcher.meaningOf(text)?.kind === 'stop';
    this.looksWithStop = stop ? this.looksWithStop + 1 : 0;
    if (this.looksWithStop >= looksToStop) this.reportStop(text);
  }

  private reportStop(text: string): void {
    if (this.stopped) return;
    this.stopped = true;
    this.report({ kind: 'stop', text: readable(text) });
  }

  /** `cut` ends it without an answer: only a stop wording is still reported. */
  end(cause: 'silence' | 'tooLong' | 'cut'): void {
    if (this.waitingSamples > 0) this.look();
    const { text, confidence } = this.decoder.stop();
    const meaning = this.matcher.meaningOf(text);
    if (meaning?.kind === 'stop') this.reportStop(text);
    if (this.stopped || this.muted || cause === 'cut') return;
    const unclear = (reason: (Heard & { kind: 'unclear' })['reason']) =>
      this.report({ kind: 'unclear', text: readable(text), reason });
    if (cause === 'tooLong') unclear('tooLong');
    else if (text === '') unclear('nothingRecognized');
    else if (meaning === undefined || meaning.kind === 'stop' || this.outdated) unclear('outOfGrammar');
    else if (!(confidence >= leastConfidence)) unclear('lowConfidence');
    else this.report({ ...meaning, text, confidence });
  }
}
