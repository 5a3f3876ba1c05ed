import { VoiceError } from '../../errors.ts';
import { toJsgf } from '../../jsgf.ts';
import { formsOf } from '../../number-words/slot.ts';
import type { Grammar } from '../../ports.ts';
import { wordsOf } from '../../wording.ts';
import type { GrammarDecoder } from './engine.ts';

/**
 * Weight of the filler loop against the grammar. On clean speech, with the least confidence of
 * `Utterance`: 1e-8 let 3 % of other talk through for 97.7 % exact replies, 1e-14 let 5.5 % through.
 */
const fillerWeight = 1e-8;

/** A grammar made ready for the decoder. */
export interface ListeningGrammar {
  readonly grammar: Grammar;
  readonly jsgf: string;
  /** Every word in it. */
  readonly words: readonly string[];
}

function wordsIn({ stop, replies, number }: Grammar): readonly string[] {
  const around = number === undefined ? [] : [...number.leads, ...number.units];
  const inNumber = number === undefined ? [] : formsOf(number).flat(2);
  return wordsOf([...stop, ...replies.flatMap(reply => reply.wordings), ...around, ...inNumber]);
}

/**
 * Prepares a grammar.
 * @throws VoiceError `wordUnknown` naming the words that nobody taught the decoder to pronounce,
 * `grammarUnusable` as `toJsgf` does.
 */
export function prepareGrammar(
  grammar: Grammar,
  decoder: GrammarDecoder,
  fillers: readonly string[],
): ListeningGrammar {
  const words = wordsIn(grammar);
  const missing = decoder.missingWords(words);
  if (missing.length > 0) {
    throw new VoiceError(
      'wordUnknown',
      `Grammar "${grammar.key}" has words without a known pronunciation (${missing.join(', ')}); add them to its language in src/voice/languages.`,
    );
  }
  const jsgf = toJsgf(grammar, { words: fillers, weight: fillerWeight });
  return { grammar, jsgf, words };
}
