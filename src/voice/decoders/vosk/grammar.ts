import { formsOf } from '../../number-words/slot.ts';
import type { Form } from '../../number-words/vocabulary.ts';
import type { Grammar, NumberSlot } from '../../ports.ts';
import { spokenWordings } from '../../wording.ts';

/** What Vosk writes for speech that is none of the phrases; it has to be among them to be heard as such. */
export const UNKNOWN = '[unk]';

/** Words of a form that may follow one another, that may begin it and end it. */
function links(form: Form) {
  const pairs: string[] = [];
  const optional = (i: number) => form[i]?.includes('') ?? false;
  const spoken = (i: number) => form[i]?.filter(word => word !== '') ?? [];
  for (let i = 0; i < form.length; i += 1) {
    for (let next = i + 1; next < form.length; next += 1) {
      for (const a of spoken(i)) for (const b of spoken(next)) pairs.push(`${a} ${b}`);
      if (!optional(next)) break;
    }
  }
  const edge = (order: readonly number[]) => {
    const words: string[] = [];
    for (const i of order) {
      words.push(...spoken(i));
      if (!optional(i)) break;
    }
    return words;
  };
  const forward = form.map((_, i) => i);
  return { pairs, first: edge(forward), last: edge(forward.toReversed()) };
}

/**
 * A number in phrases of two words. Vosk makes a model of word pairs from its phrases (`UpdateGrammarFst` in
 * src/recognizer.cc of github.com/alphacep/vosk-api: n-gram order 2), so the pairs that may occur say as much as
 * thousands of numbers written out; whether the whole is a number of the slot is decided afterwards.
 */
function numberPhrases(slot: NumberSlot): readonly string[] {
  const all = formsOf(slot).map(form => ({ form, ...links(form) }));
  const single = all.flatMap(({ first, last }) => first.filter(word => last.includes(word)));
  const [leads, units] = [spokenWordings(slot.leads), spokenWordings(slot.units)];
  const firsts = new Set(all.flatMap(({ first }) => first));
  const lasts = new Set(all.flatMap(({ last }) => last));
  return [
    ...single,
    ...all.flatMap(({ pairs }) => pairs),
    ...leads.flatMap(lead => [...firsts].map(word => `${lead} ${word}`)),
    ...units.flatMap(unit => [...lasts].map(word => `${word} ${unit}`)),
  ];
}

/** What may be said now as phrases for Vosk, with everything else as `UNKNOWN`. */
export function voskGrammar(grammar: Grammar): readonly string[] {
  const { stop, replies, number } = grammar;
  const phrases = [
    ...spokenWordings([...stop, ...replies.flatMap(({ wordings }) => wordings)]),
    ...(number === undefined ? [] : numberPhrases(number)),
    UNKNOWN,
  ];
  return [...new Set(phrases)];
}
