import type { ReplyId } from '../prompts/types.ts';
import type { Cause, Person, Quantity, Via } from './vocabulary.ts';

/** On every event: when it reached the session (monotonic, since the session began), from whom, and how. */
export interface Stamp {
  readonly atMs: number;
  readonly by: Person;
  readonly via: Via;
}

/** What the vehicle bus showed at the moment of an answer that it can contradict; only fresh, good values. */
export interface BusSight {
  /** Of the quantity that was spoken, in SI. */
  readonly si?: number;
  readonly speedRpm?: number;
  /** Lamps by their id in the profile. */
  readonly lamps?: Readonly<Record<string, 'lit' | 'dark'>>;
  /** All active codes of the engine. */
  readonly codes?: readonly Code[];
}

export interface Code {
  readonly spn: number;
  readonly fmi: number;
}

/** All that can happen to a session. Together with the profile and the job card they determine it wholly. */
export type SessionEvent = Stamp &
  (
    | { readonly type: 'stop'; readonly cause?: Cause }
    | { readonly type: 'hold' | 'continue' | 'sayAgain' | 'goBack' | 'skip' | 'status' | 'timeLeft' | 'help' }
    | { readonly type: 'reply'; readonly id: ReplyId; readonly bus?: BusSight }
    | { readonly type: 'value'; readonly quantity: Quantity; readonly si: number; readonly bus?: BusSight }
    /** All active codes, from the bus. */
    | { readonly type: 'codes'; readonly codes: readonly Code[] }
    /** Something was said that does not count. */
    | { readonly type: 'unclear' }
    /** A free-text reason, from keys or touch. */
    | { readonly type: 'reason'; readonly text: string }
    | { readonly type: 'clock' }
  );

export type EventType = SessionEvent['type'];
