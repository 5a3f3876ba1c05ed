import { describe, expect, it } from 'vitest';
import { CountingEar } from '../../../src/server/bay/counting-ear.ts';

describe('the microphone that counts for the engine', () => {
  const places = new Map([
    ['leader', 0],
    ['second', 1],
    ['other', 2],
    ['another', 2],
  ]);
  const ear = () => new CountingEar(device => places.get(device) ?? 3);

  it('is one at a time: the first of two that are alike, until it is silent for two seconds', () => {
    const counting = ear();
    expect(counting.counts('other', 0)).toBe(true);
    expect(counting.counts('another', 1000)).toBe(false);
    expect(counting.counts('other', 1100)).toBe(true);
    expect(counting.counts('another', 3100)).toBe(false);
    expect(counting.counts('another', 3101)).toBe(true);
    expect(counting.counts('other', 3102)).toBe(false);
  });

  it("is the leader's as soon as that hears, then the second person's", () => {
    const counting = ear();
    expect(counting.counts('other', 0)).toBe(true);
    expect(counting.counts('second', 1)).toBe(true);
    expect(counting.counts('leader', 2)).toBe(true);
    expect(counting.counts('second', 3)).toBe(false);
    expect(counting.counts('leader', 2003)).toBe(true);
  });

  it('follows whoever takes over the lead', () => {
    const counting = ear();
    expect(counting.counts('leader', 0)).toBe(true);
    places.set('leader', 2).set('other', 0);
    expect(counting.counts('other', 1)).toBe(true);
    expect(counting.counts('leader', 2)).toBe(false);
  });
});
