import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { phrasesOf } from '../../../src/voice/number-words/forms.ts';
import { sayNumber } from '../../../src/voice/number-words/say.ts';
import { formsOf, numberReader } from '../../../src/voice/number-words/slot.ts';
import type { NumberSlot } from '../../../src/voice/ports.ts';

const slot = (min: number, max: number, step: number, digitsOnly = false): NumberSlot => ({
  id: 'n',
  leads: [],
  units: [],
  min,
  max,
  step,
  digitsOnly,
  language: 'fr',
});

describe('French numbers', () => {
  it.each([
    ['quatre deux', 42],
    ['vingt et un', 21],
    ['soixante et onze', 71],
    ['soixante-dix-sept', 77],
    ['septante sept', 77],
    ['quatre-vingts', 80],
    ['quatre vingt un', 81],
    ['quatre-vingt-onze', 91],
    ['nonante et un', 91],
    ['cent un', 101],
    ['deux cents', 200],
    ['huit cent cinquante', 850],
    ['mille huit cents', 1800],
    ['dix-huit cents', 1800],
    ['douze cent cinquante', 1250],
    ['un huit zero zero', 1800],
  ])('take "%s" for %d', (phrase, value) => {
    expect(numberReader(slot(0, 3000, 1)).read(phrase)).toEqual([value]);
  });

  it.each([
    ['douze virgule six', 12.6],
    ['un deux virgule six', 12.6],
    ['zéro virgule cinq', 0.5],
    ['moins cinq virgule cinq', -5.5],
  ])('take "%s" for %d in a slot with tenths', (phrase, value) => {
    expect(numberReader(slot(-20, 20, 0.1)).read(phrase)).toEqual([value]);
  });

  it('never share a phrase, over all whole numbers that are listened for', () => {
    const phrases = formsOf(slot(0, 9999, 1)).flatMap(phrasesOf);
    const reader = numberReader(slot(0, 9999, 1));
    expect(phrases.filter(phrase => reader.read(phrase).length !== 1)).toEqual([]);
  });

  it('are read back as they are said, in both styles, with tenths and below nought', () => {
    const reader = numberReader(slot(-40, 400, 0.1));
    fc.assert(
      fc.property(
        fc.integer({ min: -400, max: 4000 }),
        fc.constantFrom('grouped', 'digitByDigit'),
        (tenths, style) => {
          expect(reader.read(sayNumber(tenths / 10, style, 1, 'fr'))).toEqual([tenths / 10]);
        },
      ),
      { numRuns: 200 },
    );
  });

  it('are fault codes digit by digit', () => {
    const reader = numberReader(slot(1, 524_286, 1, true));
    expect(reader.read('cinq deux quatre deux huit six')).toEqual([524_286]);
    expect(reader.read('cent cinquante sept')).toEqual([]);
    expect(reader.read('five')).toEqual([]);
  });

  it('are in digits only after repeated misunderstanding', () => {
    const reader = numberReader(slot(0, 120, 1, true));
    expect(reader.read('sept sept')).toEqual([77]);
    expect(reader.read('soixante dix sept')).toEqual([]);
  });

  it('are not English ones', () => {
    expect(numberReader(slot(0, 120, 1)).read('forty two')).toEqual([]);
  });
});
