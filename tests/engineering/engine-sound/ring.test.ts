import { describe, expect, it } from 'vitest';
import { Ring } from '../../../src/engineering/engine-sound/ring.ts';

function kept(length: number, values: readonly number[]): number[] {
  const ring = new Ring(length);
  for (const value of values) ring.push(value);
  return [...ring.read(new Float64Array(length))];
}

describe('what is kept of a stream', () => {
  it('is the last of it, oldest first', () => {
    expect(kept(4, [1, 2, 3, 4, 5, 6])).toEqual([3, 4, 5, 6]);
    expect(kept(3, [1, 2, 3, 4, 5, 6, 7])).toEqual([5, 6, 7]);
    expect(kept(3, [1, 2, 3])).toEqual([1, 2, 3]);
  });

  it('is silence before the first of it', () => {
    expect(kept(4, [])).toEqual([0, 0, 0, 0]);
    expect(kept(4, [1, 2])).toEqual([0, 0, 1, 2]);
  });

  it('is read as often as wanted, into the array that is given', () => {
    const ring = new Ring(2);
    ring.push(1);
    const into = new Float64Array(2);
    expect(ring.read(into)).toBe(into);
    ring.push(2);
    ring.push(3);
    expect([...ring.read(into)]).toEqual([2, 3]);
    expect([...ring.read(into)]).toEqual([2, 3]);
  });
});
