import { describe, expect, test } from 'vitest';
import { gather } from '../../src/engineering/first-order-points.ts';
import type { Reading } from '../../src/engineering/readings.ts';

const ORIGIN_S = 100;
/** A reading each second, from a clock that has run for a while. */
const eachSecond = (count: number): Reading[] =>
  Array.from({ length: count }, (_, i) => ({ timeS: ORIGIN_S + i, value: 20 + i }));
const sum = (values: Float64Array): number => values.reduce((all, each) => all + each, 0);

describe('readings made ready for a fit', () => {
  test('are counted from the first of them', () => {
    expect(gather(eachSecond(3))).toEqual({
      sinceS: Float64Array.of(0, 1, 2),
      value: Float64Array.of(20, 21, 22),
      weight: Float64Array.of(1, 1, 1),
      spanS: 2,
      originS: ORIGIN_S,
    });
  });

  test('are kept one by one up to 64, however close together', () => {
    const close = eachSecond(64).map((reading, i) =>
      i === 1 ? { ...reading, timeS: ORIGIN_S + 0.01 } : reading,
    );
    expect(gather(close).weight).toEqual(new Float64Array(64).fill(1));
  });

  test('are averaged within each 64th of their span beyond that, and none is lost', () => {
    // 129 readings over 128 s: two in each stretch of 2 s, the very last one with them.
    const { sinceS, value, weight, spanS } = gather(eachSecond(129));
    expect(spanS).toBe(128);
    expect([...sinceS.slice(0, 2)]).toEqual([0.5, 2.5]);
    expect([...value.slice(0, 2)]).toEqual([20.5, 22.5]);
    expect([weight[0], weight[62], weight[63]]).toEqual([2, 2, 3]);
    expect([sinceS[63], value[63]]).toEqual([127, 147]);
    expect(sum(weight)).toBe(129);
  });

  test('leave no point where nothing was read for a while', () => {
    const { sinceS, weight } = gather(eachSecond(129).filter((_, i) => i < 10 || i > 49));
    expect(sinceS.length).toBe(64 - 20);
    expect([...weight].every(each => each > 0)).toBe(true);
    expect(sinceS[5]).toBeGreaterThan(49);
  });

  test('of one moment are one point', () => {
    const { sinceS, value, weight } = gather(Array.from({ length: 65 }, (_, i) => ({ timeS: 7, value: i })));
    expect([[...sinceS], [...weight]]).toEqual([[0], [65]]);
    expect(value[0]).toBeCloseTo(32, 9);
  });
});
