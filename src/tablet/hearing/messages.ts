import type { EarLevel, Grammar, Heard, HeardLanguage, VoiceHeard } from '../../voice/ports.ts';

/** From the page to the thread that listens. */
export type ToEar =
  /**
   * What to listen for, before anything else and whenever it changes, and the model that somebody brought: its address;
   * empty for the one that comes with the page.
   */
  | { readonly kind: 'load'; readonly model: string; readonly language: HeardLanguage }
  /** Blocks of sound come through the port, straight from the audio thread. */
  | { readonly kind: 'sound'; readonly port: MessagePort; readonly sampleRateHz: number }
  /** The turn comes back with what was heard by this grammar. */
  | { readonly kind: 'listen'; readonly turn: number; readonly grammar: Grammar }
  | { readonly kind: 'onlyStop'; readonly active: boolean };

export type FromEar =
  | { readonly kind: 'ready' }
  | { readonly kind: 'failed'; readonly sentence: string }
  | { readonly kind: 'heard'; readonly turn: number; readonly heard: Heard }
  /** Whose voice it was in, right before what was heard. */
  | { readonly kind: 'voice'; readonly heard: VoiceHeard }
  | { readonly kind: 'level'; readonly level: EarLevel };
