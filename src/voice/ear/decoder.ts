import type { Matcher } from '../meaning.ts';
import type { Grammar, UnclearReason } from '../ports.ts';
import type { Sound } from './sound.ts';

/** How far somebody has got who is silent just now. */
export type Outlook =
  /** Nothing that may be said goes on from here. */
  | 'complete'
  /** It may be all, and it may go on ("forty", "forty two"). */
  | 'extensible'
  /** The same of figures, one after the other: people draw breath between them. */
  | 'figures'
  /** It means something only if it goes on. */
  | 'unfinished';

export interface Progress {
  readonly outlook: Outlook;
  /** Whether all that was said is known; missing where the decoder cannot tell. */
  readonly settled?: boolean;
  /** Whether it is over, however near the noise may seem: all is known, and nothing goes on from it. */
  readonly over?: boolean;
  /** A stop wording that stands in what was said so far, however it goes on. */
  readonly stop?: string | undefined;
}

/** What an utterance comes to. What a text means is the ear's business, not the decoder's. */
export type Verdict =
  /** A wording of the grammar, and how sure the decoder is of it: 0 to 1, never less than its own bound. */
  | { readonly kind: 'taken'; readonly text: string; readonly certainty: number }
  /** Somebody spoke: it is asked again. */
  | { readonly kind: 'unclear'; readonly text: string; readonly reason: UnclearReason }
  | { readonly kind: 'stop'; readonly text: string }
  /** Nobody said anything. */
  | { readonly kind: 'nothing' };

type Soon<T> = T | Promise<T>;

/**
 * Finds out what was said in an utterance. When one begins and ends, whether it counts, and stop words on the way (where
 * there is a network) are the ear's business. Utterances come one after the other: `begin`, `hear` ..., `end`.
 * @typeParam Prepared whatever the decoder makes of a grammar
 */
export interface Decoder<Prepared> {
  /**
   * Makes a grammar ready, and changes nothing: an utterance may be under way.
   * @param matcher of this grammar
   * @throws VoiceError `grammarUnusable` or `wordUnknown`, and the grammar before stays in force.
   */
  prepare(grammar: Grammar, matcher: Matcher): Prepared;
  /** @param backgroundDbfs how loud the seconds before were, where that is known */
  begin(prepared: Prepared, backgroundDbfs?: number): void;
  /**
   * The next step of the utterance, the first with the steps from shortly before it was noticed.
   * @param silentMs for how long nobody has spoken
   */
  hear(sound: Sound, silentMs: number): Soon<Progress>;
  end(): Soon<Verdict>;
  close(): void;
}
