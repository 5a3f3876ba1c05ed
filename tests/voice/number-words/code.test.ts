import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isCode } from '../../../src/voice/number-words/code.ts';
import { phrasesOf } from '../../../src/voice/number-words/forms.ts';
import { sayNumber } from '../../../src/voice/number-words/say.ts';
import { formsOf, numberReader } from '../../../src/voice/number-words/slot.ts';
import type { NumberSlot } from '../../../src/voice/ports.ts';

const code: NumberSlot = {
  id: 'faultCode',
  leads: [],
  units: [],
  min: 1,
  max: 524_286,
  step: 1,
  digitsOnly: true,
};
const reader = numberReader(code);

describe('a code', () => {
  it('is understood from its digits, said one by one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 524_286 }), value => {
        expect(reader.read(sayNumber(value, 'digitByDigit'))).toEqual([value]);
      }),
    );
  });

  it.each([
    ['one five seven', 157],
    ['one oh niner', 109],
    ['Five two four two eight six', 524_286],
    ['zero one five seven', 157],
  ])('is taken from "%s" as %d', (phrase, value) => {
    expect(reader.read(phrase)).toEqual([value]);
  });

  it.each([
    ['fifty two', 'digits only'],
    ['one hundred', 'digits only'],
    ['five two four two eight seven', 'above the largest'],
    ['zero', 'below the smallest'],
    ['zero zero zero zero one five seven', 'more digits than the largest has'],
    ['one point five', 'no whole number'],
    ['minus one', 'below nought'],
    ['one five yes', 'another word in it'],
    ['', 'nothing said'],
  ])('is not taken from "%s" (%s)', phrase => {
    expect(reader.read(phrase)).toEqual([]);
  });

  it('of two digits is listened for in every way that its digits are said', () => {
    const small = { ...code, min: 0, max: 10_000 };
    const listened = new Set(formsOf(small).flatMap(phrasesOf));
    for (const phrase of ['four two', 'niner oh', 'zero seven', 'one zero zero zero zero']) {
      expect(listened).toContain(phrase);
    }
    expect(listened).not.toContain('');
    expect(listened).not.toContain('forty two');
  });

  it.each<[string, Partial<NumberSlot>]>([
    ['may be said in other ways than digit by digit', { digitsOnly: false }],
    ['has numbers few enough to list', { max: 9999 }],
    ['has numbers below nought', { min: -1 }],
    ['has numbers between the whole ones', { step: 0.1 }],
    ['has no largest number', { max: Number.POSITIVE_INFINITY }],
    ['has no smallest number', { min: Number.NaN }],
  ])('is not what a slot holds that %s', (_, changes) => {
    expect(isCode({ ...code, ...changes })).toBe(false);
    expect(isCode(code)).toBe(true);
  });
});
