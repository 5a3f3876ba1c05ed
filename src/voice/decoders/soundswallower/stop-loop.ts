import { stopLoopJsgf } from '../../jsgf.ts';
import { containsWording, normalizeWording, wordsOf } from '../../wording.ts';
import type { GrammarDecoder } from './engine.ts';

/** What stands beside the stop wordings in the spotter's grammar. */
export interface SpotterWords {
  readonly fillers: readonly string[];
  /** Everyday words that are easily taken for a stop word. */
  readonly soundingLikeStop: readonly string[];
  /** All pronunciations of a word. */
  pronounce(word: string): readonly string[];
}

/** Listens to a stretch of speech for the stop wordings alone, whatever is said around them. */
export interface StopLoop {
  /** Sets the stop wordings, and the other words that may be said now; only between utterances. */
  listen(wordings: readonly string[], otherWords: readonly string[]): void;
  start(): void;
  /** The next piece of speech; the stop wording that stands in what has been heard so far, if any. */
  feed(samples: Float32Array): string | undefined;
  end(): string | undefined;
  close(): void;
}

/** @param decoder one of its own, which knows nothing but the filler words */
export function createStopLoop(
  decoder: GrammarDecoder,
  { fillers, soundingLikeStop, pronounce }: SpotterWords,
): StopLoop {
  let stops: readonly string[] = [];
  let inForce = '';
  const stopIn = (text: string) => stops.find(stop => containsWording(text, stop));

  return {
    listen(wordings, otherWords) {
      // The longest first, so that it is the one that is named.
      const next = wordings.map(normalizeWording).sort((a, b) => b.length - a.length);
      const stopWords = wordsOf(next);
      const others = wordsOf([...otherWords, ...soundingLikeStop]).filter(word => !stopWords.includes(word));
      const jsgf = stopLoopJsgf(next, [...fillers, ...others]);
      if (jsgf === inForce) return;
      stops = next;
      inForce = jsgf;
      const unknown = decoder.missingWords([...stopWords, ...others]);
      decoder.addWords(Object.fromEntries(unknown.map(word => [word, pronounce(word)])));
      decoder.setGrammar(jsgf);
    },
    start: () => decoder.start(),
    feed: samples => stopIn(decoder.feed(samples)),
    end: () => stopIn(decoder.stop()),
    close: () => decoder.close(),
  };
}
