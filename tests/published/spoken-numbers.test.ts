import { toCardinal as british } from 'n2words/en-GB';
import { toCardinal as american } from 'n2words/en-US';
import { describe, expect, it } from 'vitest';
import { sayNumber } from '../../src/voice/number-words/say.ts';
import { numberReader } from '../../src/voice/number-words/slot.ts';

const whole = numberReader({ id: 'n', leads: [], units: [], min: 0, max: 9999, step: 1 });

describe('spoken numbers against outside sources', () => {
  // Source: npm package n2words 4, en-US and en-GB, an independent implementation.
  it('say every whole number as n2words does, but for its hyphens', () => {
    for (let n = 0; n <= 9999; n++) {
      expect(sayNumber(n, 'grouped')).toBe(american(n).replaceAll('-', ' '));
    }
  });

  it('understand the American and the British cardinal of n2words for every whole number', () => {
    for (let n = 0; n <= 9999; n++) {
      expect(whole.read(american(n)), american(n)).toEqual([n]);
      expect(whole.read(british(n)), british(n)).toEqual([n]);
    }
  });

  // Source: Unicode CLDR, common/rbnf/en.xml: spellout-cardinal "minus >>", "<< point >>";
  // spellout-numbering-year "<< hundred", "<< oh-<<" for years such as 1805 (from memory).
  it.each([
    ['minus five', -5, 1],
    ['twelve point six', 12.6, 0.1],
    ['eighteen hundred', 1800, 1],
    ['eighteen oh-five', 1805, 1],
    ['eighteen fifty', 1850, 1],
  ])('understand the spell-out "%s" of CLDR as %d', (phrase, value, step) => {
    const max = step === 1 ? 1900 : 20;
    const reader = numberReader({ id: 'n', leads: [], units: [], min: -10, max, step });
    expect(reader.read(phrase)).toEqual([value]);
  });

  // Source: ICAO Annex 10 Vol. II, 5.2.1.4: digits said one by one, "niner" for 9, "decimal" for the
  // point (from memory); its other respellings (tree, fower, fife) only guide pronunciation.
  it('understand digits and the decimal as ICAO has them transmitted', () => {
    const reader = numberReader({ id: 'n', leads: [], units: [], min: 110, max: 140, step: 0.1 });
    expect(reader.read('one one niner decimal seven')).toEqual([119.7]);
  });
});
