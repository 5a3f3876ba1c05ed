/** Sound as every part of the voice chain hands it on: mono, -1 to 1. */
export interface Pcm {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
}

/** Languages that are listened for; each has its model and its pronunciations in `languages/`. */
export type HeardLanguage = 'en' | 'fr';

/** Languages whose words and numbers are known, in `languages/`: each can be written, and spoken where there is a voice. */
export type SpokenLanguage = HeardLanguage | 'es';

/** Another unit of the same kind, and how a number in it becomes one in the unit the user speaks. */
export interface OtherUnit {
  readonly wordings: readonly string[];
  readonly scale: number;
  readonly offset: number;
}

/** A number that may be said now: only values a sensor could show are in the grammar. */
export interface NumberSlot {
  /** What is being read, e.g. `oilPressure`. */
  readonly id: string;
  /** Words that may come before the number ("oil pressure", "pressure"); saying none is allowed. */
  readonly leads: readonly string[];
  /** Words that may follow it ("psi", "volts"); saying none is allowed. */
  readonly units: readonly string[];
  /** What may follow it in writing besides ("psi", "°F", "V"). */
  readonly writtenUnits?: readonly string[];
  /** Typed in one of these it is meant as well: times `scale`, plus `offset`. */
  readonly otherUnits?: readonly OtherUnit[];
  /** What is measured in one of these is something else. */
  readonly wrongUnits?: readonly string[];
  /** Smallest and largest value, in the unit the user speaks. */
  readonly min: number;
  readonly max: number;
  /** Typed in words it reaches no further than this, where figures reach further. */
  readonly inWords?: { readonly min: number; readonly max: number };
  /** Distance between values that can be said: 1, 0.1, 10... */
  readonly step: number;
  /** One of the leads has to be said: a bare number does not count. */
  readonly leadNeeded?: boolean;
  /** After repeated misunderstanding only digit-by-digit speech is accepted. */
  readonly digitsOnly?: boolean;
  /** The language of its words; English when it says none. */
  readonly language?: SpokenLanguage;
}

/** Everything that may be said now. */
export interface Grammar {
  /** Names the moment, e.g. `fill.coolantFull.asking`; for the record and for recorded sessions. */
  readonly key: string;
  /** The language of its wordings; English when it says none. */
  readonly language?: SpokenLanguage;
  /** Wordings that stop everything, acted on from a partial result. */
  readonly stop: readonly string[];
  readonly replies: readonly { readonly id: string; readonly wordings: readonly string[] }[];
  /** What calls for help: taken like a stop, at any moment, and told by its id what for. */
  readonly calls?: readonly { readonly id: string; readonly wordings: readonly string[] }[];
  /** The reply that lets count what has been read back: only somebody who is surely near may say it. */
  readonly agreement?: string;
  readonly number?: NumberSlot;
}

export type Heard =
  /** `calls`: what was called out to be the matter, by its id. */
  | { readonly kind: 'stop'; readonly text: string; readonly calls?: string }
  | { readonly kind: 'reply'; readonly id: string; readonly text: string; readonly confidence: number }
  | {
      readonly kind: 'number';
      readonly id: string;
      /** In the unit the user speaks. */
      readonly value: number;
      readonly text: string;
      readonly confidence: number;
    }
  /** Speech was there, but nothing that counts: never a yes. */
  | { readonly kind: 'unclear'; readonly text: string; readonly reason: UnclearReason };

export type UnclearReason =
  | 'nothingRecognized'
  | 'outOfGrammar'
  | 'lowConfidence'
  | 'tooLong'
  /** Somebody said what may be said, and was hardly near: who it was is unknown. */
  | 'farAway'
  /** A number, typed, that no gauge here shows: out of range, or in a unit of something else. */
  | 'outOfRange';

/** What the ear reports besides what was said, for the face's level meter. */
export interface EarLevel {
  /** Root mean square of the last block, dB relative to full scale. */
  readonly levelDbfs: number;
  readonly clipping: boolean;
  readonly speech: boolean;
  /** Level of what is heard while nobody speaks; missing until there was enough of it. */
  readonly noiseDbfs?: number | undefined;
  /** The last utterance that has ended. */
  readonly utterance?: UtteranceLevel | undefined;
}

/** How loud somebody spoke, measured before any noise is taken out. */
export interface UtteranceLevel {
  /** Counts up from 1, so that one is told from the next wherever it is sent. */
  readonly nth: number;
  readonly speechDbfs: number;
  /** How far the speech stood above the noise. */
  readonly aboveNoiseDb: number;
}

/** Whose voice an utterance was in, as numbers: near those of the same voice (`who-speaks`). */
export interface VoiceHeard {
  readonly voice: Float32Array;
  /** A stop was said in it, which was reported before. */
  readonly stopped: boolean;
}

/** Turns sound, keys or a browser's service into `Heard`. */
export interface Recognizer {
  /** Sets what may be said from now on. Takes effect before the next utterance; cheap to call. */
  listen(grammar: Grammar): void;
  /** While the tool speaks only the stop words are acted on. */
  onlyStop(active: boolean): void;
  onHeard(handler: (heard: Heard) => void): void;
  onLevel(handler: (level: EarLevel) => void): void;
  /** Where voices are told apart: called right before what was said is reported, or after a stop in it. */
  onVoice?(handler: (heard: VoiceHeard) => void): void;
  close(): void;
}

/** A recognizer that is fed sound block by block by an `AudioSource`. */
export interface SoundRecognizer extends Recognizer {
  /** Any block length, any rate; what is heard is reported before the promise settles. */
  hear(block: Pcm): Promise<void>;
}

export type SourceEnd =
  | { readonly kind: 'finished' }
  /** The microphone vanished, or the file broke off: one sentence, what and what to do. */
  | { readonly kind: 'lost'; readonly reason: string };

/** A microphone, a file, a recorded session. */
export interface AudioSource {
  /** One line for the record and the face: "recording.wav, 44100 Hz stereo". */
  readonly description: string;
  /**
   * Delivers blocks until the sound ends or `close` is called. Awaits `onBlock`, so that a file
   * played as fast as possible never runs ahead of the listener.
   */
  run(onBlock: (block: Pcm) => Promise<void>): Promise<SourceEnd>;
  close(): void;
}

/** Turns a sentence into sound. */
export interface Synthesizer {
  synthesize(text: string): Promise<Pcm>;
}

/** Plays sound: a sound device, a folder of WAV files, or silence. */
export interface AudioSink {
  readonly description: string;
  /** Settles when the sound has been played or cut short. Never two at once: callers wait. */
  play(sound: Pcm, label: string): Promise<void>;
  /** Cuts the sound being played. */
  cut(): void;
  close(): Promise<void>;
}
