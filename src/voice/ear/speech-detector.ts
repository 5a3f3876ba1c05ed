import type { Sound } from './sound.ts';

/** Tells speech to the tool from everything else, step by step and without looking ahead. */
export interface SpeechDetector {
  /** Speech is noticed late: an utterance takes with it what came so long before. */
  readonly preRollMs: number;
  next(sound: Sound): {
    /** So much of it up to here that an utterance begins, where none is under way. */
    readonly begins: boolean;
    /** Some of it just now, for an utterance that is under way: asks for less. */
    readonly speech: boolean;
  };
}
