import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spread } from '../in-turn.ts';

test('Tests in a browser are spread evenly among the others, both in their order', () => {
  expect(spread(['a', 'b', 'c', 'd', 'e', 'f'], ['X', 'Y']).join('')).toBe('abXcdeYf');
});

test('None is lost, and none comes twice', () => {
  fc.assert(
    fc.property(fc.nat(60), fc.nat(60), (others, some) => {
      const mine = Array.from({ length: others }, (_, nth) => nth);
      const theirs = Array.from({ length: some }, (_, nth) => -1 - nth);
      const all = spread(mine, theirs);
      expect(all.filter(each => each >= 0)).toEqual(mine);
      expect(all.filter(each => each < 0)).toEqual(theirs);
    }),
  );
});

test('Two in a browser stand beside each other only where they are half of all', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 2, max: 20 }), (some, times) => {
      const all = spread(
        Array.from({ length: some * times }, () => false),
        Array.from({ length: some }, () => true),
      );
      expect(all.some((each, nth) => each && all[nth + 1])).toBe(false);
    }),
  );
});
