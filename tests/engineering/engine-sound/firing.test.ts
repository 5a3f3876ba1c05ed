import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cycleHz, firingAnglesDeg, firingHz, linesOf } from '../../../src/engineering/engine-sound/firing.ts';

const strong = (lines: ReturnType<typeof linesOf>) =>
  lines.filter(({ harmonic }) => harmonic !== null).map(({ order }) => order);

describe('how an engine fires', () => {
  it('fires each cylinder of a four-stroke on every second turn, and of a two-stroke on each', () => {
    // Closed form: rpm / 60 * cylinders / 2, and without the half.
    expect(firingHz({ cylinders: 6, strokes: 4 }, 700)).toBeCloseTo(35, 9);
    expect(firingHz({ cylinders: 4, strokes: 4 }, 3000)).toBeCloseTo(100, 9);
    expect(firingHz({ cylinders: 2, strokes: 2 }, 1200)).toBeCloseTo(40, 9);
    expect(cycleHz({ cylinders: 8, strokes: 4 }, 600)).toBeCloseTo(5, 9);
  });

  it('is strong in the multiples of its cylinder count where it fires evenly', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 12 }),
        fc.constantFrom(2 as const, 4 as const),
        (cylinders, strokes) => {
          const orders = strong(linesOf({ cylinders, strokes }));
          expect(orders).toEqual(Array.from({ length: 10 }, (_, i) => (i + 1) * cylinders));
        },
      ),
    );
  });

  it('is strong in other orders where it fires unevenly', () => {
    // A vee twin firing at 0 and 270 of 720 degrees: |1 + exp(-i k 3 pi / 4)| / 2 is at least a half for these.
    const orders = strong(linesOf({ cylinders: 2, strokes: 4, unevenDeg: [0, 270] }));
    const share = (k: number) => Math.abs(Math.cos((k * 3 * Math.PI) / 8));
    expect(orders).toEqual(Array.from({ length: 20 }, (_, i) => i + 1).filter(k => share(k) >= 0.5));
  });

  it('carries their sum where just half of them agree', () => {
    // Three of four at once, the last on the next turn: three for and one against is a half, and all four on each second.
    const lines = linesOf({ cylinders: 4, strokes: 4, unevenDeg: [0, 0, 0, 360] });
    expect(strong(lines)).toEqual(Array.from({ length: 40 }, (_, i) => i + 1));
  });

  it('counts a strong line as that harmonic of the firings that it lies at, and the lowest as the first', () => {
    const harmonics = linesOf({ cylinders: 4, strokes: 4, unevenDeg: [0, 0, 0, 360] }).map(
      line => line.harmonic,
    );
    expect(harmonics.slice(0, 10)).toEqual([1, 1, 1, 1, 1, 2, 2, 2, 2, 3]);
    expect(linesOf({ cylinders: 3, strokes: 4 }).map(line => line.harmonic)).toEqual(
      Array.from({ length: 30 }, (_, i) => ((i + 1) % 3 === 0 ? (i + 1) / 3 : null)),
    );
  });

  it('fires at even angles of a cycle of 720 degrees, of 360 with two strokes, or at those that are given', () => {
    expect(firingAnglesDeg({ cylinders: 4, strokes: 4 })).toEqual([0, 180, 360, 540]);
    expect(firingAnglesDeg({ cylinders: 3, strokes: 2 })).toEqual([0, 120, 240]);
    expect(firingAnglesDeg({ cylinders: 2, strokes: 4, unevenDeg: [0, 270] })).toEqual([0, 270]);
  });
});
