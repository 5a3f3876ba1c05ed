import { VoiceError } from '../../errors.ts';
import { type Pronounce, wordsFrom } from '../../phone-network/phone-graph.ts';
import type { Grammar } from '../../ports.ts';
import { wordsOf } from '../../wording.ts';
import { grammarGraph } from './grammar-graph.ts';

/**
 * A grammar without the wordings of replies that have a word nobody taught to pronounce: one of them never takes the
 * ear away from the others, and from the stops.
 * @throws VoiceError `wordUnknown` for a stop wording or the words of a number, which have to be heard; `grammarUnusable`
 */
export function pronounceable(grammar: Grammar, pronounce: Pronounce): Grammar {
  const isKnown = (word: string) => pronounce(word).length > 0;
  const replies = grammar.replies.map(reply => ({
    ...reply,
    wordings: reply.wordings.filter(wording => wordsOf([wording]).every(isKnown)),
  }));
  const kept = { ...grammar, replies };
  const unknown = wordsFrom(grammarGraph(kept)).filter(word => !isKnown(word));
  if (unknown.length === 0) return kept;
  throw new VoiceError(
    'wordUnknown',
    `Grammar "${grammar.key}" has words without a known pronunciation (${unknown.join(', ')}); add them to its language in src/voice/languages.`,
  );
}
