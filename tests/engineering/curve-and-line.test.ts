import { describe, expect, test } from 'vitest';
import { type CurveAndLine, findCurveAndLine } from '../../src/engineering/curve-and-line.ts';
import { anyCurve } from '../../src/engineering/first-order-family.ts';
import { type FirstOrderFit, fitFirstOrder } from '../../src/engineering/first-order-fit.ts';
import { gather } from '../../src/engineering/first-order-points.ts';
import { noise } from '../helpers/noise.ts';

const STEP_S = 30;

/** Readings every half minute, and the unbroken curve through them. */
function fitted(valueAt: (timeS: number) => number, count: number): FirstOrderFit {
  const readings = Array.from({ length: count }, (_, i) => ({
    timeS: STEP_S * i,
    value: valueAt(STEP_S * i),
  }));
  const fit = fitFirstOrder(anyCurve(gather(readings)), readings, 0);
  if (!fit) throw new Error('No curve fits these readings.');
  return fit;
}

const curve = (timeS: number): number => 110 - 100 * Math.exp(-timeS / 500);
const any = () => true;

const found = (split: CurveAndLine | undefined): CurveAndLine => {
  if (!split) throw new Error('They were not told in two.');
  return split;
};

describe('readings that turn from a curve into a line', () => {
  const at = (timeS: number): number => (timeS <= 600 ? curve(timeS) : 60 + 0.02 * (timeS - 600));
  const split = () => found(findCurveAndLine(fitted(at, 30), 0, true, any));

  test('are told in two between the last of the one and the first of the other', () => {
    expect(split()).toMatchObject({ endS: 600, startS: 630 });
  });

  test('give the curve that the one part came from, and the line of the other, to its last reading', () => {
    const { curve: part, rate, line, squares } = split();
    // The rate is searched for in steps, only as closely as telling them apart takes.
    expect(Math.abs(1 / rate / 500 - 1)).toBeLessThan(0.05);
    expect(part.squares).toBeLessThan(0.1);
    expect(line.slopePerS).toBeCloseTo(0.02, 9);
    expect(line.lastValue).toBeCloseTo(60 + 0.02 * (29 * STEP_S - 600), 9);
    expect(squares).toBeCloseTo(part.squares, 9);
  });
});

describe('readings that turn from a line into a curve', () => {
  const at = (timeS: number): number => (timeS < 300 ? 40 - 0.01 * timeS : 20 + curve(timeS - 300));

  test('are told in two likewise, the line first', () => {
    const split = found(findCurveAndLine(fitted(at, 30), 0, false, any));
    expect(split).toMatchObject({ endS: 270, startS: 300 });
    expect(split.line.slopePerS).toBeCloseTo(-0.01, 9);
    expect(split.line.lastValue).toBeCloseTo(40 - 0.01 * 270, 9);
    expect(Math.abs(1 / split.rate / 500 - 1)).toBeLessThan(0.05);
  });
});

describe('where readings may be told in two', () => {
  /** Where the second part would begin, of each place that is tried. */
  function placesTried(count: number, curveFirst: boolean): number[] {
    const tried: number[] = [];
    findCurveAndLine(fitted(curve, count), 0, curveFirst, ({ startS }) => {
      tried.push(startS / STEP_S);
      return false;
    });
    return tried;
  }

  test('leaves a curve of five readings and a line of three, whichever comes first', () => {
    expect(placesTried(12, true)).toEqual([5, 6, 7, 8, 9]);
    expect(placesTried(12, false)).toEqual([3, 4, 5, 6, 7]);
    expect(placesTried(8, true)).toEqual([5]);
    expect(placesTried(7, true)).toEqual([]);
  });

  test('is tried at about 32 places of a long recording', () => {
    expect(placesTried(320, true).length).toBeGreaterThan(28);
    expect(placesTried(320, true).length).toBeLessThan(34);
  });

  test('is for whoever asks to admit', () => {
    const at = (timeS: number): number => (timeS <= 600 ? curve(timeS) : 60);
    expect(findCurveAndLine(fitted(at, 30), 0, true, () => false)).toBeUndefined();
    expect(findCurveAndLine(fitted(at, 30), 0, true, any)?.startS).toBe(630);
    expect(findCurveAndLine(fitted(at, 30), 0, true, ({ startS }) => startS !== 630)?.startS).not.toBe(630);
  });
});

describe('one curve', () => {
  test.each([12, 16, 30])('of %i readings that scatter is hardly ever told in two', count => {
    let toldInTwo = 0;
    for (let seed = 1; seed <= 40; seed += 1) {
      const normal = noise(seed);
      const fit = fitted(timeS => curve(timeS) + 0.5 * normal(), count);
      if (findCurveAndLine(fit, 0, true, any)) toldInTwo += 1;
    }
    expect(toldInTwo).toBeLessThanOrEqual(2);
  });

  test('that is read to whole degrees is not told in two by how it is rounded', () => {
    expect(
      findCurveAndLine(
        fitted(timeS => Math.round(curve(timeS)), 30),
        1,
        true,
        any,
      ),
    ).toBeUndefined();
  });
});
