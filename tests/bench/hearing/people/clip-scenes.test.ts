import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wordIn } from '../../../../bench/hearing/people/clip-scenes.ts';

describe('where the word lies in a clip', () => {
  it('is found by its level, to a hundredth of a second, whatever the room', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 40 }),
        fc.integer({ min: 10, max: 60 }),
        fc.double({ min: 0, max: 0.01, noNaN: true }),
        (before, length, room) => {
          const clip = Float32Array.from({ length: (before + length + 20) * 160 }, (_, i) => {
            const inWord = i >= before * 160 && i < (before + length) * 160;
            return (inWord ? 0.5 : room) * (i % 2 === 0 ? 1 : -1);
          });
          expect(wordIn(clip)).toEqual({ from: before * 160, to: (before + length) * 160 });
        },
      ),
    );
  });

  it('is all of it where nothing can be told', () => {
    expect(wordIn(new Float32Array(1_600))).toEqual({ from: 0, to: 1_600 });
    expect(wordIn(new Float32Array(0))).toEqual({ from: 0, to: 0 });
  });
});
