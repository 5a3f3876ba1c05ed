import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createPieceCutter } from '../../src/bus/formats/pieces.ts';

const cut = (chunks: readonly string[]): string[] => {
  const cutter = createPieceCutter('\n');
  return [...chunks.flatMap(chunk => cutter.push(chunk)), ...cutter.finish()];
};

describe('A stream of text', () => {
  it('is cut into the same lines however it arrives', () => {
    const line = fc.string({ maxLength: 40 }).map(text => text.replaceAll('\n', ''));
    fc.assert(
      fc.property(fc.array(line), fc.array(fc.nat({ max: 60 })), (lines, lengths) => {
        const text = lines.map(one => `${one}\n`).join('');
        const chunks: string[] = [];
        let at = 0;
        for (const length of lengths) {
          chunks.push(text.slice(at, at + length));
          at += length;
        }
        chunks.push(text.slice(at));
        expect(cut(chunks)).toEqual(lines);
      }),
    );
  });

  it('gives its last line although no line break follows', () => {
    expect(cut(['one\ntw', 'o'])).toEqual(['one', 'two']);
  });

  it('without line breaks is cut short once, and is read again from the next line on', () => {
    const endless = 'x'.repeat(300);
    expect(cut([endless, endless, endless, 'tail\nnext\n'])).toEqual(['x'.repeat(256), 'next']);
    expect(cut([endless, endless])).toEqual(['x'.repeat(256)]);
  });
});
