import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { VoiceError } from '../../../src/voice/errors.ts';
import { phrasesOf, spokenForms } from '../../../src/voice/number-words/forms.ts';
import { decimalsOf, numberOf, numberReader, valuesOf } from '../../../src/voice/number-words/slot.ts';
import type { NumberSlot } from '../../../src/voice/ports.ts';

const slot = (min: number, max: number, step: number, digitsOnly = false): NumberSlot => ({
  id: 'reading',
  leads: [],
  units: [],
  min,
  max,
  step,
  digitsOnly,
});

const anySlot = fc
  .record({
    first: fc.integer({ min: -400, max: 2000 }),
    count: fc.integer({ min: 1, max: 40 }),
    stride: fc.constantFrom(1, 2, 5, 10, 25),
    decimals: fc.constantFrom(0, 1, 2),
    digitsOnly: fc.boolean(),
  })
  .map(({ first, count, stride, decimals, digitsOnly }) => {
    const scale = 10 ** decimals;
    return slot(first / scale, (first + count * stride) / scale, stride / scale, digitsOnly);
  });

describe('numbers of a slot', () => {
  it('are read back from every way of saying every value', () => {
    fc.assert(
      fc.property(anySlot, s => {
        const reader = numberReader(s);
        for (const decimal of valuesOf(s)) {
          for (const phrase of spokenForms(decimal, s.digitsOnly ?? false).flatMap(phrasesOf)) {
            expect(reader.read(phrase), phrase).toEqual([numberOf(decimal)]);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('never share a phrase, over all whole numbers that are listened for', () => {
    const meaning = new Map<string, number>();
    const shared: string[] = [];
    for (const decimal of valuesOf(slot(0, 9999, 1))) {
      for (const phrase of spokenForms(decimal, false).flatMap(phrasesOf)) {
        if ((meaning.get(phrase) ?? decimal.scaled) !== decimal.scaled) shared.push(phrase);
        meaning.set(phrase, decimal.scaled);
      }
    }
    expect(shared).toEqual([]);
  });

  it('are the same whether hyphens and capitals are written or not', () => {
    expect(numberReader(slot(0, 120, 1)).read('Forty-Two')).toEqual([42]);
  });

  const speeds = numberReader(slot(0, 3000, 1));

  it.each([
    ['four two', 42],
    ['forty two', 42],
    ['one eighty', 180],
    ['one hundred eighty', 180],
    ['one hundred and eighty', 180],
    ['one oh five', 105],
    ['one twenty', 120],
    ['twenty five', 25],
    ['seven fifty', 750],
    ['seven five zero', 750],
    ['eighteen hundred', 1800],
    ['eighteen hundred and five', 1805],
    ['two thousand one hundred', 2100],
    ['twenty one hundred', 2100],
    ['two thousand five', 2005],
    ['nine niner nine', 999],
    ['zero', 0],
  ])('takes "%s" for %d', (phrase, value) => {
    expect(speeds.read(phrase)).toEqual([value]);
  });

  it.each([
    ['twelve point six', 12.6],
    ['one two point six', 12.6],
    ['one two decimal six', 12.6],
    ['twelve', 12],
    ['twelve point zero', 12],
    ['minus five', -5],
    ['negative five point five', -5.5],
    ['point five', 0.5],
    ['oh point five', 0.5],
  ])('takes "%s" for %d in a slot with tenths', (phrase, value) => {
    expect(numberReader(slot(-20, 20, 0.1)).read(phrase)).toEqual([value]);
  });

  it.each(['oh', 'twenty two five', 'forty and two', 'one hundred twenty one', 'minus five', 'one six', ''])(
    'does not take "%s" for a value of 20 to 120 by 20',
    phrase => {
      expect(numberReader(slot(20, 120, 20)).read(phrase)).toEqual([]);
    },
  );

  it('takes digits only after repeated misunderstanding', () => {
    const reader = numberReader(slot(0, 120, 1, true));
    expect(reader.read('four two')).toEqual([42]);
    expect(reader.read('seven')).toEqual([7]);
    expect(reader.read('forty two')).toEqual([]);
    expect(reader.read('fifteen')).toEqual([]);
  });

  it('keep to the grid of the slot without rounding drift', () => {
    const tenths = valuesOf(slot(8, 16, 0.1)).map(numberOf);
    expect(tenths).toHaveLength(81);
    expect(tenths).toContain(12.6);
    expect(tenths.at(-1)).toBe(16);
    expect(decimalsOf(slot(0, 3000, 10))).toBe(0);
  });

  it.each([
    [Number.NaN, 10, 1],
    [0, Number.POSITIVE_INFINITY, 1],
    [10, 0, 1],
    [0, 10, 0],
    [0, 10, -1],
    [0, 20_000, 1],
    [0, 1, 0.00001],
    [0, 9000, 0.1],
  ])('cannot be listened for from %d to %d by %d', (min, max, step) => {
    expect(() => valuesOf(slot(min, max, step))).toThrow(VoiceError);
    expect(() => valuesOf(slot(min, max, step))).toThrow(/^Number slot "reading" .*\.$/);
  });
});
