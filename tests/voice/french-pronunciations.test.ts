import { describe, expect, it } from 'vitest';
import { french } from '../../prompts/fr/index.ts';
import { pronounceFrench } from '../../src/voice/languages/pronunciations/french.ts';
import { phrasesOf, spokenForms } from '../../src/voice/number-words/forms.ts';
import { frenchNumbers } from '../../src/voice/number-words/french.ts';
import { outputOf, phonesOf } from '../../src/voice/phone-network/phones.ts';
import { wordsOf } from '../../src/voice/wording.ts';

const numbers = Array.from({ length: 10_000 }, (_, scaled) => scaled)
  .filter(n => n < 200 || n % 97 === 0)
  .flatMap(scaled => spokenForms({ scaled: -scaled, decimals: 1 }, false, frenchNumbers).flatMap(phrasesOf));

/** Whatever the French grammars listen for. */
const words = wordsOf([
  ...Object.values(french.replies).flat(),
  ...Object.values(french.controls).flat(),
  ...french.affirmatives,
  ...french.stopWordings,
  ...Object.values(french.quantities).flatMap(({ leads }) => leads),
  ...Object.values(french.units).flatMap(({ said }) => said),
  french.words.second,
  ...numbers,
]);

describe('the French dictionary of the network', () => {
  it('has every word that is listened for', () => {
    expect(words.filter(word => pronounceFrench(word).length === 0)).toEqual([]);
  });

  it('spells in phones that the French network tells apart', () => {
    const phones = words.flatMap(word => pronounceFrench(word)).flatMap(each => each.split(' '));
    expect([...new Set(phones)].filter(phone => !phonesOf.fr.includes(phone))).toEqual([]);
    expect(phones.every(phone => outputOf(phone) === phonesOf.fr.indexOf(phone) + 1)).toBe(true);
  });

  it('knows how numerals change with what follows', () => {
    for (const [word, pronunciations] of [
      ['vingt', ['v ɛ̃', 'v ɛ̃ t']],
      ['dix', ['d i s', 'd i', 'd i z']],
      ['quatre', ['k a t ʁ', 'k a t', 'k a t ʁ ə']],
      ['cinq', ['s ɛ̃ k', 's ɛ̃']],
    ] as const) {
      expect(pronounceFrench(word)).toEqual(expect.arrayContaining([...pronunciations]));
    }
  });

  it('writes no phone as English does', () => {
    expect(phonesOf.fr.filter(phone => phonesOf.en.includes(phone))).toEqual([]);
  });
});
