import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { centre, cut, cutStart, ends, oneLine, pad, widthOf, wrap } from '../../../src/terminal/face/text.ts';

const texts = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 60 }),
  fc.constantFrom('長い名前の技術者', 'Ångström é', '👩‍🔧 on the job', ''),
);
const widths = fc.integer({ min: 0, max: 40 });

describe('text that is made to fit', () => {
  it('is never wider than its place, whatever it is made of', () => {
    fc.assert(
      fc.property(texts, texts, widths, (text, other, width) => {
        const line = oneLine(text);
        for (const fitted of [cut(line, width), cutStart(line, width), ends(line, oneLine(other), width)])
          expect(widthOf(fitted)).toBeLessThanOrEqual(width);
        for (const filled of [pad(line, width), centre(line, width)]) expect(widthOf(filled)).toBe(width);
      }),
    );
  });

  it('wraps into lines that fit, without losing a letter', () => {
    fc.assert(
      fc.property(texts, fc.integer({ min: 4, max: 40 }), (text, width) => {
        const lines = wrap(text, width);
        for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(width);
        expect(lines.join('').replaceAll(' ', '')).toBe(oneLine(text).replaceAll(' ', ''));
      }),
    );
  });

  it('is measured in columns, the usual characters as all others', () => {
    const usual = fc.string({ unit: fc.constantFrom(...' aZ~-[█▀▄░·▌…°≥≤–') });
    fc.assert(
      fc.property(fc.oneof(usual, texts), text => {
        expect(widthOf(text)).toBe(stringWidth(text));
      }),
    );
    expect(widthOf('長い')).toBe(4);
  });

  it('breaks at blanks', () => {
    expect(wrap('Fill the coolant slowly', 12)).toEqual(['Fill the', 'coolant', 'slowly']);
  });

  it('shows by one sign where something was cut off', () => {
    expect(cut('oil pressure', 6)).toBe('oil p…');
    expect(cutStart('oil pressure', 6)).toBe('…ssure');
    expect(cut('oil', 3)).toBe('oil');
  });

  it('keeps the right end whole and cuts the left one', () => {
    expect(ends('a long engine name', '3/12', 12)).toBe('a long… 3/12');
  });

  it('takes control characters and line ends out, so that a name cannot move the cursor', () => {
    expect(oneLine(' a\u001b[2Jb\r\nc\u0007\u200b ')).toBe('a [2Jb c');
  });
});
