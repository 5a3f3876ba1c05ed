import { describe, expect, it } from 'vitest';
import { languageCodes, usualLanguage } from '../../prompts/index.ts';
import { pageWords } from '../../src/tablet/words/index.ts';

/** Names, and what is written alike in more than one language. */
const alike = new Set(['first-fire', 'STOP', 'psi, °F', 'bar, °C', 'normal']);

/** Every sentence of the page's words; a function says what it says of twos and of a name. */
function sentences(words: unknown): string[] {
  if (typeof words === 'string') return [words];
  if (typeof words === 'function') return [];
  if (typeof words === 'object' && words !== null) return Object.values(words).flatMap(sentences);
  return [];
}

const shape = (words: unknown): unknown =>
  typeof words === 'object' && words !== null
    ? Object.fromEntries(Object.entries(words).map(([key, each]) => [key, shape(each)]))
    : typeof words;

const usual = pageWords[usualLanguage];

describe.each(languageCodes.filter(code => code !== usualLanguage))('the page in %s', code => {
  it('words every sentence, and leaves none in English', () => {
    const both = sentences(pageWords[code]).filter(
      text => sentences(usual).includes(text) && !alike.has(text),
    );
    expect(both).toEqual([]);
    expect(sentences(pageWords[code])).toHaveLength(sentences(usual).length);
  });

  it('has the same members, one for one', () => {
    expect(shape(pageWords[code])).toEqual(shape(usual));
  });
});
