import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { languages } from '../../prompts/index.ts';
import { layoutOf } from '../../src/tablet/face/plot-layout.ts';
import { PlotBook, type PlotPoint } from '../../src/tablet/face/plots.ts';

const axes = { left: 40, right: 300, top: 20, bottom: 160 };
const show = (value: number, decimals: number) => value.toFixed(decimals);

const point = (atS: number, value: number, min: number | null, max: number | null): PlotPoint => ({
  atMs: atS * 1000,
  value,
  met: true,
  min,
  max,
});

describe('the readings of a session', () => {
  it('are kept with the limits of their own moment, in the units of the user', () => {
    const book = new PlotBook(languages.fr, 'metric');
    const verdict = { step: 'checks.oilPressure', quantity: 'oilPressure', met: true } as never;
    book.take({ ...(verdict as object), value: 300, min: 150, max: null } as never, 1000);
    book.take({ ...(verdict as object), value: 400, min: 250, max: 700 } as never, 2000);
    expect(book.plots()).toEqual([
      {
        quantity: 'oilPressure',
        name: "pression d'huile",
        unit: 'bar',
        decimals: 1,
        points: [
          { atMs: 1000, value: 3, met: true, min: 1.5, max: null },
          { atMs: 2000, value: 4, met: true, min: 2.5, max: 7 },
        ],
      },
    ]);
  });
});

describe('a plot', () => {
  it('draws each limit for as long as it held, half-way to the readings beside it', () => {
    const { limits, x, y } = layoutOf(
      {
        points: [point(0, 30, 20, null), point(60, 32, 20, null), point(120, 50, 40, 80)],
        decimals: 0,
      },
      axes,
      show,
    );
    expect(limits.map(({ min }) => min)).toEqual([y.at(20), y.at(40)]);
    expect(limits.map(({ max }) => max)).toEqual([null, y.at(80)]);
    expect(limits[0]).toMatchObject({ from: axes.left, to: x.at(90_000) });
    expect(limits[1]).toMatchObject({ from: x.at(90_000), to: axes.right });
  });

  it('leaves out a limit that would press the readings flat', () => {
    const [only] = layoutOf({ points: [point(0, 5, null, 4000)], decimals: 1 }, axes, show).limits;
    expect(only?.max).toBeNull();
  });

  it('has figures on both axes, in order and inside them, whatever was read', () => {
    const readings = fc.array(
      fc.record({
        atS: fc.integer({ min: 0, max: 10_000 }),
        value: fc.double({ min: -50, max: 4000, noNaN: true }),
        width: fc.option(fc.double({ min: 0, max: 500, noNaN: true })),
      }),
      { minLength: 1, maxLength: 40 },
    );
    fc.assert(
      fc.property(readings, raw => {
        const points = raw
          .toSorted((a, b) => a.atS - b.atS)
          .map(({ atS, value, width }) =>
            width === null ? point(atS, value, null, null) : point(atS, value, value - width, value + width),
          );
        const { valueTicks, timeTicks, x, y, limits } = layoutOf({ points, decimals: 1 }, axes, show);
        expect(valueTicks.length).toBeGreaterThan(1);
        expect(timeTicks.length).toBeGreaterThan(0);
        expect(new Set(valueTicks.map(({ text }) => text)).size).toBe(valueTicks.length);
        for (const { at } of valueTicks) {
          expect(at).toBeGreaterThanOrEqual(axes.top - 1e-6);
          expect(at).toBeLessThanOrEqual(axes.bottom + 1e-6);
        }
        for (const { atMs, value } of points) {
          expect(x.at(atMs)).toBeGreaterThanOrEqual(axes.left - 1e-6);
          expect(x.at(atMs)).toBeLessThanOrEqual(axes.right + 1e-6);
          expect(y.at(value)).toBeLessThanOrEqual(axes.bottom + 1e-6);
        }
        for (const { from, to } of limits) expect(to).toBeGreaterThanOrEqual(from);
      }),
    );
  });
});
