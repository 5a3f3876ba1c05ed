import type { EngineHeard } from '../../engineering/engine-sound/ear.ts';
import type { Firing } from '../../engineering/engine-sound/firing.ts';
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
  | { readonly kind: 'onlyStop'; readonly active: boolean }
  /** An engine that fires so is listened for in the same sound. */
  | { readonly kind: 'engine'; readonly firing: Firing };

export type FromEar =
  | { readonly kind: 'ready' }
  | { readonly kind: 'failed'; readonly sentence: string }
  | { readonly kind: 'heard'; readonly turn: number; readonly heard: Heard }
  /** Whose voice it was in, right before what was heard. */
  | { readonly kind: 'voice'; readonly heard: VoiceHeard }
  | { readonly kind: 'engine'; readonly heard: EngineHeard }
  | { readonly kind: 'level'; readonly level: EarLevel };
