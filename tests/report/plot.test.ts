import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { linear, roomy, ticks, timeTicks } from '../../src/engineering/axis.ts';
import { mannerOf } from '../../src/report/manner.ts';
import type { Reading } from '../../src/report/model.ts';
import type { Scene } from '../../src/report/plot/scene.ts';
import { type Point, thin } from '../../src/report/plot/thin.ts';
import { timePlot } from '../../src/report/plot/time-plot.ts';

describe('an axis', () => {
  const range = fc
    .tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.double({ min: 1e-3, max: 1e6, noNaN: true }))
    .map(([from, span]) => ({ from, to: from + span }));

  test('has a few round ticks, all of them in its range', () => {
    fc.assert(
      fc.property(range, ({ from, to }) => {
        const values = ticks(from, to, 5);
        const air = (to - from) * 1e-6;
        expect(values.length).toBeLessThanOrEqual(13);
        for (const value of values) {
          expect(value).toBeGreaterThanOrEqual(from - air);
          expect(value).toBeLessThanOrEqual(to + air);
        }
      }),
    );
  });

  test('ticks time as a clock does', () => {
    expect(timeTicks(0, 60_000, 4)).toEqual([0, 15_000, 30_000, 45_000, 60_000]);
    expect(timeTicks(0, 3_600_000, 6)).toEqual([
      0, 600_000, 1_200_000, 1_800_000, 2_400_000, 3_000_000, 3_600_000,
    ]);
  });

  test('never ends in a hang or an endless list, whatever the range', () => {
    for (const [from, to] of [
      [0, 0],
      [0, 1e300],
      [1e300, 1e300 + 1],
      [Number.NaN, 1],
      [0, Number.POSITIVE_INFINITY],
      [5, -5],
    ] as const) {
      expect(ticks(from, to, 5).length).toBeLessThanOrEqual(13);
      expect(timeTicks(from, to, 5).length).toBeLessThanOrEqual(13);
    }
  });

  test('puts everything inside the plot', () => {
    fc.assert(
      fc.property(range, fc.double({ noNaN: true }), ({ from, to }, value) => {
        const place = linear(from, to, 10, 90).at(value);
        expect(place).toBeGreaterThanOrEqual(10);
        expect(place).toBeLessThanOrEqual(90);
      }),
    );
  });

  test('has room for one value, and for none', () => {
    const one = roomy([5], 2);
    expect(one.from).toBeLessThan(5);
    expect(one.to).toBeGreaterThan(5);
    expect(roomy([], 2)).toEqual({ from: 0, to: 2 });
  });
});

describe('a thinned line', () => {
  const line = fc
    .array(fc.double({ min: -1000, max: 1000, noNaN: true }), { minLength: 1, maxLength: 3000 })
    .map(values => values.map((y, x): Point => [x, y]));

  test('keeps its highest and lowest point, its ends and its order, in few points', () => {
    fc.assert(
      fc.property(line, points => {
        const kept = thin(points, 50);
        const ys = (own: readonly Point[]) => own.map(([, y]) => y);
        expect(kept.length).toBeLessThanOrEqual(4 * 51);
        expect(Math.max(...ys(kept))).toBe(Math.max(...ys(points)));
        expect(Math.min(...ys(kept))).toBe(Math.min(...ys(points)));
        expect(kept[0]).toEqual(points[0]);
        expect(kept.at(-1)).toEqual(points.at(-1));
        expect(kept.map(([x]) => x)).toEqual(kept.map(([x]) => x).toSorted((a, b) => a - b));
      }),
      { numRuns: 50 },
    );
  });
});

describe('a plot against time', () => {
  const reading = (timeMs: number, si: number, met: boolean): Reading => ({
    seq: 1,
    at: '',
    step: 'checks.oilPressure',
    phase: 'checks',
    quantity: 'oilPressure',
    unit: 'kPa',
    source: 'confirmed',
    timeMs,
    si,
    verdict: { met, min: 170 },
  });
  const phases = [{ phase: 'checks', fromMs: 0, toMs: 100_000 }];
  const manner = mannerOf('en', 'metric');
  const size = { width: 252, height: 118 };
  const inks = ({ shapes }: Scene, kind: string) =>
    shapes.filter(shape => shape.kind === kind).map(({ ink }) => ink);

  test('marks what is outside its limits, and draws the limit', () => {
    const scene = timePlot(
      [reading(10_000, 100, false), reading(50_000, 280, true)],
      { phases, stops: [] },
      si => si,
      manner,
      size,
    );
    expect(inks(scene, 'dot')).toEqual(['bad', 'reading']);
    expect(inks(scene, 'line')).toContain('limit');
    expect(inks(scene, 'box')).toContain('beyond');
  });

  test('joins no readings across a stop', () => {
    const readings = [
      reading(10_000, 200, true),
      reading(20_000, 200, true),
      reading(50_000, 280, true),
      reading(60_000, 280, true),
    ];
    const lines = (stops: { fromMs: number; toMs: number; drill: boolean }[]) =>
      inks(
        timePlot(readings, { phases, stops }, si => si, manner, size),
        'line',
      ).filter(ink => ink === 'reading').length;
    expect(lines([])).toBe(1);
    expect(lines([{ fromMs: 30_000, toMs: 40_000, drill: false }])).toBe(2);
    expect(lines([{ fromMs: 30_000, toMs: 40_000, drill: true }])).toBe(1);
  });
});
