import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { visualRuns } from '../../src/report/pdf/bidi.ts';

/** What a reader sees from left to right: letters of a right-to-left stretch are drawn in turned order. */
const seen = (line: string) =>
  visualRuns(line)
    .map(({ text, rightToLeft }) => (rightToLeft ? [...text].reverse().join('') : text))
    .join('');

/** Unicode Standard Annex 9 writes its examples with capitals for right-to-left letters; here they are Hebrew. */
const hebrew = (text: string) =>
  text.replace(/[A-V]/g, letter => String.fromCodePoint(0x05d0 + letter.charCodeAt(0) - 65));

describe('lines of two directions', () => {
  test('are left alone when nothing in them runs from right to left', () => {
    expect(visualRuns('Ada Example, 12.5 V')).toEqual([{ text: 'Ada Example, 12.5 V', rightToLeft: false }]);
  });

  test('are ordered as in UAX 9, section 3.4: "car means CAR."', () => {
    expect(seen('car means CAR.'.replace('CAR', hebrew('CAR')))).toBe(`car means ${hebrew('RAC')}.`);
  });

  test('keep numbers from left to right inside words that are not', () => {
    expect(seen(`${hebrew('ABC')} 67`)).toBe(`67 ${hebrew('CBA')}`);
  });

  test('mirror brackets that stand among right-to-left letters', () => {
    expect(seen(hebrew('A(B)C'))).toBe(hebrew('C(B)A'));
  });

  test('lose no letter and gain none', () => {
    const letter = fc.constantFrom('a', 'b', '1', '2', ' ', '.', '\u05d0', '\u05d1', '\u0639', '\u0644');
    fc.assert(
      fc.property(fc.string({ unit: letter, maxLength: 40 }), line => {
        expect([...seen(line)].sort()).toEqual([...line].sort());
      }),
    );
  });
});
