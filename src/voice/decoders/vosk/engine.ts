/** A word and how sure Vosk is of it, 0 to 1. */
export interface VoskWord {
  readonly word: string;
  readonly conf: number;
}

/** What has been recognized: the text so far, or a stretch that is finished. */
export type VoskAnswer =
  | { readonly kind: 'partial'; readonly text: string }
  | { readonly kind: 'final'; readonly words: readonly VoskWord[] };

/** A running Vosk. Answers come in the order in which they were asked for. */
export interface VoskEngine {
  /** Sets the phrases that are listened for, and forgets what was heard. */
  setPhrases(phrases: readonly string[]): void;
  /** The next sound: mono, 16 kHz, -1 to 1. */
  accept(samples: Float32Array): Promise<VoskAnswer>;
  /** Ends the utterance. */
  finish(): Promise<VoskAnswer>;
  close(): void;
}
