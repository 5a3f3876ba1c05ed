import { type Matcher, matcherOf } from '../meaning.ts';
import type { Grammar } from '../ports.ts';
import type { Decoder } from './decoder.ts';

/** What is listened for; a new one each time that the question changes, so that one is told from the next. */
export interface Question<Prepared> {
  readonly fingerprint: string;
  readonly prepared: Prepared;
  readonly matcher: Matcher;
  /** What calls for help in it, whatever answers it. */
  readonly callsOf: Matcher;
}

/** Two grammars are the same question when they have the same. */
export const fingerprintOf = (grammar: Grammar): string => JSON.stringify(grammar);

/** @throws VoiceError as `matcherOf` and the decoder's `prepare` */
export function questionOf<Prepared>(grammar: Grammar, decoder: Decoder<Prepared>): Question<Prepared> {
  const matcher = matcherOf(grammar);
  const { key, language = 'en', calls = [] } = grammar;
  return {
    fingerprint: fingerprintOf(grammar),
    prepared: decoder.prepare(grammar, matcher),
    matcher,
    callsOf: matcherOf({ key, language, stop: [], replies: [], calls }),
  };
}
