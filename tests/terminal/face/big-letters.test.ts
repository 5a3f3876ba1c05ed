import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { steps } from '../../../prompts/en/steps.ts';
import { bigLetters, largestLetters } from '../../../src/terminal/face/big-letters.ts';
import { widthOf } from '../../../src/terminal/face/text.ts';

describe('block letters', () => {
  it('draws five rows of blocks, or three of half blocks', () => {
    expect(bigLetters('L1', 20, 'tall')).toEqual([
      '█     █ ',
      '█    ██ ',
      '█     █ ',
      '█     █ ',
      '████ ███',
    ]);
    expect(bigLetters('L1', 20, 'low')).toEqual(['█    ▄█ ', '█     █ ', '▀▀▀▀ ▀▀▀']);
  });

  it('draws capitals and small letters alike, and leaves accents away', () => {
    expect(bigLetters('Été', 40, 'tall')).toEqual(bigLetters('ETE', 40, 'tall'));
  });

  it('breaks between words only, and refuses a word that is too wide or cannot be drawn', () => {
    expect(bigLetters('OIL OIL', 15, 'low')).toHaveLength(6);
    expect(bigLetters('PRESSURE', 15, 'low')).toBeNull();
    expect(bigLetters('油', 40, 'low')).toBeNull();
  });

  it('tells all letters and digits apart', () => {
    const drawn = [...'ABCDEFGHIJKLMNPQRSTUVWXYZ0123456789:.,-?'].map(each =>
      bigLetters(each, 9, 'tall')?.join('\n'),
    );
    expect(drawn).not.toContain(undefined);
    expect(new Set(drawn).size).toBe(drawn.length);
  });

  it('takes the largest letters that fit, and none where none fit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('OK', 'Oil pressure', '12:34'),
        fc.nat(150),
        fc.nat(20),
        (text, width, rows) => {
          const lines = largestLetters(text, width, rows);
          expect(lines.length).toBeLessThanOrEqual(rows);
          for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(width);
        },
      ),
    );
    expect(largestLetters('12:34', 60, 5)).toHaveLength(5);
    expect(largestLetters('12:34', 60, 4)).toHaveLength(3);
    expect(largestLetters('12:34', 60, 2)).toEqual([]);
  });

  it('has a drawing for the title of every step, and 80 columns are enough for it in three lines', () => {
    for (const { title } of Object.values(steps)) {
      expect(largestLetters(title, 78, 9).length, title).toBeGreaterThan(0);
    }
  });
});
