import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { procedureReplies } from '../../../../bench/procedure-replies.ts';
import { grammarGraph } from '../../../../src/voice/decoders/network/grammar-graph.ts';
import { pronounceEnglish } from '../../../../src/voice/languages/pronunciations/english.ts';
import { createMatcher } from '../../../../src/voice/meaning.ts';
import { phrasesOf } from '../../../../src/voice/number-words/forms.ts';
import { formsOf } from '../../../../src/voice/number-words/slot.ts';
import { phoneGraphOf, wordsFrom } from '../../../../src/voice/phone-network/phone-graph.ts';
import type { WordPlace } from '../../../../src/voice/phone-network/word-graph.ts';
import type { Grammar } from '../../../../src/voice/ports.ts';

const asked = await procedureReplies();
const grammars = [...new Map(asked.map(({ grammar }) => [JSON.stringify(grammar), grammar])).values()];

/** A way through the graph, chosen by the given numbers: it goes on while it has to, and now and then when it may. */
function walk(start: WordPlace, choices: readonly number[]): string {
  const words: string[] = [];
  let place = start;
  for (let i = 0; place.next.length > 0; i++) {
    const choice = choices[i % choices.length] ?? 0;
    const last = place.mayEnd && choice % 3 === 0;
    const step = place.next[Math.floor(choice / 3) % place.next.length];
    if (last || step === undefined) break;
    words.push(step.word);
    place = step.to;
  }
  return words.join(' ');
}

/** Whether a text can be said on a way through the graph. */
function allows(start: WordPlace, text: string): boolean {
  let places = new Set([start]);
  for (const word of text.split(' ')) {
    places = new Set(
      [...places].flatMap(({ next }) => next.filter(step => step.word === word).map(({ to }) => to)),
    );
  }
  return [...places].some(({ mayEnd }) => mayEnd);
}

describe('the graph of a grammar', () => {
  it('holds nothing that the grammar does not mean: every way through it has a meaning, or is ambiguous', () => {
    const matchers = new Map(grammars.map(grammar => [grammar, createMatcher(grammar)]));
    fc.assert(
      fc.property(
        fc.constantFrom(...grammars),
        fc.array(fc.nat(3_000), { minLength: 1, maxLength: 9 }),
        (grammar, choices) => {
          const text = walk(grammarGraph(grammar), choices);
          const meaning = matchers.get(grammar)?.meaningOf(text);
          if (meaning === undefined) {
            // A fault code is longer than its slot allows, or a number can be read in two ways.
            expect(grammar.number, text).toBeDefined();
            expect(grammar.number?.digitsOnly === true || isAmbiguous(grammar, text), text).toBe(true);
          }
        },
      ),
      { numRuns: 300 },
    );
  });

  it('holds everything that the grammar means: replies, stops, and numbers in all their forms, led and with units', () => {
    for (const grammar of grammars) {
      const start = grammarGraph(grammar);
      const { replies, stop, number } = grammar;
      for (const wording of [...stop, ...replies.flatMap(({ wordings }) => wordings)])
        expect(allows(start, wording), wording).toBe(true);
      if (number === undefined || number.digitsOnly) continue;
      const forms = formsOf(number);
      for (const form of forms.filter((_, i) => i % 17 === 0)) {
        for (const phrase of phrasesOf(form)) {
          const led = number.leads.slice(0, 2).map(lead => `${lead} ${phrase}`);
          const all = [...(number.leadNeeded ? [] : [phrase]), ...led];
          for (const text of all.flatMap(each => [each, ...number.units.map(unit => `${each} ${unit}`)]))
            expect(allows(start, text), text).toBe(true);
        }
      }
    }
  });

  it('is spelled in phones from end to end: every word of every English grammar has a pronunciation', () => {
    const missing = grammars
      .flatMap(grammar => wordsFrom(grammarGraph(grammar)))
      .filter(word => pronounceEnglish(word).length === 0);
    expect([...new Set(missing)]).toEqual([]);
  });

  it('keeps equal places once, so that a gauge with thousands of values stays small', () => {
    const number = { id: 'n', leads: ['engine speed'], units: ['rpm', 'revs'], min: 0, max: 4_000, step: 10 };
    const graph = phoneGraphOf(
      grammarGraph({ key: 'speed', stop: ['stop'], replies: [], number }),
      pronounceEnglish,
    );
    expect(formsOf(number).length).toBeGreaterThan(900);
    expect(graph.stateCount).toBeLessThan(3_000);
  });
});

/** Whether several numbers can be meant. */
function isAmbiguous(grammar: Grammar, text: string): boolean {
  const { number } = grammar;
  if (number === undefined) return false;
  return allows(grammarGraph({ key: 'only', stop: [], replies: [], number }), text);
}
