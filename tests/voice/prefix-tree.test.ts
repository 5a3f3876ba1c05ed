import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { phrasesOf } from '../../src/voice/number-words/forms.ts';
import type { Form } from '../../src/voice/number-words/vocabulary.ts';
import { type PrefixTree, prefixTreeOf } from '../../src/voice/prefix-tree.ts';

const form = (...words: readonly string[]): Form => words.map(word => [word]);

/** The forms that lead from the root to the places where a phrase may end. */
function formsIn({ next, ends }: PrefixTree): readonly Form[] {
  const longer = [...next.values()].flatMap(({ token, tree }) => formsIn(tree).map(rest => [token, ...rest]));
  return ends ? [[], ...longer] : longer;
}

const written = (forms: readonly Form[]) => [...new Set(forms.map(f => JSON.stringify(f)))].sort();

describe('a prefix tree', () => {
  it('holds the forms that it was made of, each once, and no others', () => {
    const token = fc.constantFrom(['one'], ['two'], ['zero', 'oh'], ['', 'and']);
    fc.assert(
      fc.property(fc.array(fc.array(token, { minLength: 1, maxLength: 4 }), { maxLength: 20 }), forms => {
        const held = formsIn(prefixTreeOf(forms));
        expect(written(held)).toEqual(written(forms));
        expect(held).toHaveLength(written(forms).length);
      }),
    );
  });

  it('keeps a common beginning once', () => {
    const tree = prefixTreeOf([form('coolant', 'full'), form('coolant', 'low'), form('oil', 'full')]);
    expect([...tree.next.keys()]).toEqual(['coolant', 'oil']);
    expect([...(tree.next.get('coolant')?.tree.next.keys() ?? [])]).toEqual(['full', 'low']);
  });

  it('knows where a phrase that begins another one ends', () => {
    const phrases = formsIn(prefixTreeOf([form('coolant', 'full'), form('coolant')])).flatMap(phrasesOf);
    expect(phrases).toEqual(['coolant', 'coolant full']);
  });

  it('of nothing is empty, and no phrase ends in it', () => {
    expect(prefixTreeOf([])).toEqual({ next: new Map(), ends: false });
  });
});
