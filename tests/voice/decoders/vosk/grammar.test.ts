import fc from 'fast-check';
import { expect, it } from 'vitest';
import { UNKNOWN, voskGrammar } from '../../../../src/voice/decoders/vosk/grammar.ts';
import { createMatcher } from '../../../../src/voice/meaning.ts';
import { phrasesOf } from '../../../../src/voice/number-words/forms.ts';
import { formsOf } from '../../../../src/voice/number-words/slot.ts';
import type { Grammar, NumberSlot } from '../../../../src/voice/ports.ts';

const slot: NumberSlot = {
  id: 'engineSpeed',
  leads: ['engine speed', 'R P M'],
  units: ['revs'],
  min: 0,
  max: 4000,
  step: 10,
};
const grammar = (number?: NumberSlot): Grammar => ({
  key: 'test',
  stop: ['stop', 'shut it down'],
  replies: [{ id: 'yes', wordings: ['correct', "that's right"] }],
  ...(number ? { number } : {}),
});

/** Tells whether a text can be said by a model of word pairs made from these phrases. */
function modelOf(phrases: readonly string[]): (text: string) => boolean {
  const pairs = new Set(
    phrases.flatMap(phrase => {
      const words = ['<s>', ...phrase.split(' '), '</s>'];
      return words.slice(1).map((word, i) => `${words[i]} ${word}`);
    }),
  );
  return text => {
    const words = ['<s>', ...text.split(' '), '</s>'];
    return words.slice(1).every((word, i) => pairs.has(`${words[i]} ${word}`));
  };
}

it('has every wording, every stop and a place for all other talk, each once', () => {
  const phrases = voskGrammar(grammar());
  expect(phrases).toEqual(['stop', 'shut it down', 'correct', "that's right", UNKNOWN]);
});

it('has every number of the slot in every form, with and without what stands around it', () => {
  const phrases = voskGrammar(grammar(slot));
  expect(new Set(phrases).size).toBe(phrases.length);
  const canBeSaid = modelOf(phrases);
  expect(
    formsOf(slot)
      .flatMap(phrasesOf)
      .filter(phrase => !canBeSaid(phrase)),
  ).toEqual([]);
  expect(canBeSaid('engine speed seven hundred revs')).toBe(true);
  expect(canBeSaid('r p m eight five zero')).toBe(true);
  expect(canBeSaid('correct seven hundred')).toBe(false);
});

it('stays small, however many numbers there are, and what it allows beyond them has no meaning', () => {
  const wide = voskGrammar(grammar({ ...slot, min: -45, max: 9999, step: 1 }));
  expect(wide.length).toBeLessThan(2500);
  expect(createMatcher(grammar(slot)).meaningOf('seven hundred hundred')).toBeUndefined();
});

it('never makes a wording of an unknown word', () => {
  const matcher = createMatcher(grammar(slot));
  fc.assert(
    fc.property(fc.constantFrom('correct', 'seven hundred', "that's right"), fc.boolean(), (text, before) => {
      const heard = before ? `${UNKNOWN} ${text}` : `${text} ${UNKNOWN}`;
      expect(matcher.meaningOf(heard)).toBeUndefined();
      expect(matcher.meaningOf(UNKNOWN)).toBeUndefined();
    }),
  );
});
