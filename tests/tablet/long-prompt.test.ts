import fc from 'fast-check';
import { expect, it } from 'vitest';
import { promptParts } from '../../src/tablet/face/long-prompt.ts';

const list = `To do again: ${Array.from({ length: 40 }, (_, index) => `thing ${index}`).join(', ')}.`;

it('what is asked at the end of a long account stands for itself', () => {
  expect(promptParts(`${list} Say ready, or end the session.`)).toEqual({
    before: list,
    question: 'Say ready, or end the session.',
  });
});

it('a prompt that is read at a glance is left whole', () => {
  const prompt = 'Is the engine off? It should be 2.5 bar. Say all is off.';
  expect(promptParts(prompt)).toEqual({ before: '', question: prompt });
});

it('nothing of a prompt is lost, and something is always asked', () => {
  const sentence = fc
    .array(fc.constantFrom('oil', '2.5', 'bar', 'coolant', '–'), { minLength: 1, maxLength: 60 })
    .map(words => `${words.join(' ')}.`);
  fc.assert(
    fc.property(fc.array(sentence, { minLength: 1, maxLength: 8 }), sentences => {
      const prompt = sentences.join(' ');
      const { before, question } = promptParts(prompt);
      expect(question).not.toBe('');
      expect([before, question].filter(part => part !== '').join(' ')).toBe(prompt);
    }),
  );
});
