import { VoiceError } from '../../errors.ts';
import { formsOf } from '../../number-words/slot.ts';
import { WordGraph, type WordPlace } from '../../phone-network/word-graph.ts';
import type { Grammar, NumberSlot } from '../../ports.ts';
import { normalizeWording, spokenWordings } from '../../wording.ts';

function numberPlace(graph: WordGraph, slot: NumberSlot): WordPlace {
  const units = graph.wordings(spokenWordings(slot.units));
  const number = graph.forms(formsOf(slot), graph.either([graph.end, units]));
  const led = graph.wordings(spokenWordings(slot.leads), number);
  return slot.leadNeeded ? led : graph.either([led, number]);
}

/**
 * Everything that may be said by a grammar, as words.
 * @throws VoiceError `grammarUnusable` on a wording without words, an unusable number slot, or nothing to say.
 */
export function grammarGraph({ key, stop, replies, number }: Grammar): WordPlace {
  const graph = new WordGraph();
  const wordings = [...stop, ...replies.flatMap(reply => reply.wordings)];
  const empty = wordings.find(wording => normalizeWording(wording) === '');
  if (empty !== undefined) {
    throw new VoiceError(
      'grammarUnusable',
      `Grammar "${key}" has a wording without words ("${empty}"); write it as it is spoken.`,
    );
  }
  const start = graph.either([
    graph.wordings(wordings.map(normalizeWording)),
    ...(number === undefined ? [] : [numberPlace(graph, number)]),
  ]);
  if (start.next.length > 0) return start;
  throw new VoiceError(
    'grammarUnusable',
    `Grammar "${key}" has nothing that may be said; give it a reply, a number or a stop wording.`,
  );
}
