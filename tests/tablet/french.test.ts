import { expect, it } from 'vitest';
import { english } from '../../src/tablet/words/en.ts';
import { french } from '../../src/tablet/words/fr.ts';

/** Names, and what is written alike in both languages. */
const alike = new Set(['first-fire', 'STOP', 'psi, °F', 'bar, °C']);

/** Every sentence of the page's words; a function says what it says of twos and of a name. */
function sentences(words: unknown): string[] {
  if (typeof words === 'string') return [words];
  if (typeof words === 'function') return [];
  if (typeof words === 'object' && words !== null) return Object.values(words).flatMap(sentences);
  return [];
}

it('words every sentence of the page in French, and leaves none in English', () => {
  const both = sentences(french).filter(text => sentences(english).includes(text) && !alike.has(text));
  expect(both).toEqual([]);
  expect(sentences(french)).toHaveLength(sentences(english).length);
});

it('has the same members, one for one', () => {
  const shape = (words: unknown): unknown =>
    typeof words === 'object' && words !== null
      ? Object.fromEntries(Object.entries(words).map(([key, each]) => [key, shape(each)]))
      : typeof words;
  expect(shape(french)).toEqual(shape(english));
});
