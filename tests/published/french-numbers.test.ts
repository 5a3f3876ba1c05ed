import { toCardinal as belgian } from 'n2words/fr-BE';
import { toCardinal as french } from 'n2words/fr-FR';
import { describe, expect, it } from 'vitest';
import { sayNumber } from '../../src/voice/number-words/say.ts';
import { numberReader } from '../../src/voice/number-words/slot.ts';

const slot = { id: 'n', leads: [], units: [], language: 'fr' } as const;
const whole = numberReader({ ...slot, min: 0, max: 9999, step: 1 });

describe('French numbers against outside sources', () => {
  // Source: npm package n2words 4, fr-FR and fr-BE, an independent implementation.
  it('are said as n2words says them, but for its hyphens', () => {
    for (let n = 0; n <= 9999; n++)
      expect(sayNumber(n, 'grouped', 0, 'fr')).toBe(french(n).replaceAll('-', ' '));
    for (const n of [10_000, 21_080, 80_000, 80_080, 200_000, 200_200, 280_000, 524_286, 999_999])
      expect(sayNumber(n, 'grouped', 0, 'fr')).toBe(french(n).replaceAll('-', ' '));
  });

  it('are understood in the cardinals of France and of Belgium, each with one meaning', () => {
    for (let n = 0; n <= 9999; n++) {
      expect(whole.read(french(n)), french(n)).toEqual([n]);
      expect(whole.read(belgian(n)), belgian(n)).toEqual([n]);
    }
  });

  // Source: Unicode CLDR, common/rbnf: fr.xml "<< virgule >>", "moins >>"; fr_CH.xml septante, huitante,
  // nonante (from memory).
  it.each([
    ['moins cinq', -5, 1],
    ['douze virgule six', 12.6, 0.1],
    ['huitante-deux', 82, 1],
    ['huitante et un', 81, 1],
    ['septante-et-un', 71, 1],
    ['nonante-neuf', 99, 1],
  ])('understand the spell-out "%s" of CLDR as %d', (phrase, value, step) => {
    expect(numberReader({ ...slot, min: -10, max: 99, step }).read(phrase)).toEqual([value]);
  });
});
