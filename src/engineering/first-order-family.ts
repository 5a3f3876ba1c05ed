import type { Points } from './first-order-points.ts';

/**
 * First-order curves T(t) = final - (final - start) exp(-rate t), written as start + slope * rise(t, rate):
 * for a given rate the rest is linear, so each rate has one best curve in closed form and only the rate has
 * to be searched for (variable projection; Golub and Pereyra, 1973). Nothing degenerates as the rate goes to
 * 0, where the curve becomes a line.
 */
export interface Curve {
  readonly startValue: number;
  /** Slope at the first reading, per second. */
  readonly slopePerS: number;
  readonly finalValue: number;
  /** Sum of the squared distances of the points, weighted. */
  readonly squares: number;
}

/** The curves that are searched, and how many numbers a fit among them leaves free. */
export interface Family {
  readonly points: Points;
  readonly freedoms: number;
  /** The best curve of this rate (1/s). */
  best(rate: number): Curve;
  /** Squared distances of the best curve of this rate that passes through a point; infinite if none does. */
  squaresThrough(rate: number, sinceS: number, value: number): number;
}

/** Seconds for which the slope at the start would have to last to rise as far as the curve does. */
export const rise = (sinceS: number, rate: number): number => -Math.expm1(-rate * sinceS) / rate;

const finiteOr = (squares: number): number => (Number.isFinite(squares) ? squares : Number.POSITIVE_INFINITY);

/** Weighted sums over the points, with a shape that is worked out once for each. */
function sums(points: Points): {
  shape(of: (sinceS: number) => number): void;
  sum(term: (shape: number, value: number) => number): number;
} {
  const { sinceS, value, weight } = points;
  const shapes = new Float64Array(weight.length);
  return {
    shape(of) {
      for (let i = 0; i < shapes.length; i += 1) shapes[i] = of(sinceS[i] ?? 0);
    },
    sum(term) {
      let sum = 0;
      for (let i = 0; i < shapes.length; i += 1) {
        sum += (weight[i] ?? 0) * term(shapes[i] ?? 0, value[i] ?? 0);
      }
      return sum;
    },
  };
}

/** All first-order curves: start, final value and rate are free. */
export function anyCurve(points: Points): Family {
  const { shape, sum } = sums(points);
  const weight = sum(() => 1);
  const meanValue = sum((_, y) => y) / weight;
  return {
    points,
    freedoms: 3,
    best(rate) {
      shape(t => rise(t, rate));
      const meanRise = sum(r => r) / weight;
      const spread = sum(r => (r - meanRise) ** 2);
      const slopePerS = sum((r, y) => (r - meanRise) * (y - meanValue)) / spread;
      const startValue = meanValue - slopePerS * meanRise;
      const squares = finiteOr(sum((r, y) => (y - startValue - slopePerS * r) ** 2));
      return { startValue, slopePerS, finalValue: startValue + slopePerS / rate, squares };
    },
    squaresThrough(rate, sinceS, value) {
      shape(t => rise(t - sinceS, rate));
      const slope = sum((r, y) => r * (y - value)) / sum(r => r * r);
      return finiteOr(sum((r, y) => (y - value - slope * r) ** 2));
    },
  };
}

/** First-order curves towards a known final value, as in Newton's law of cooling towards the ambient. */
export function curveTowards(points: Points, finalValue: number): Family {
  const { shape, sum } = sums(points);
  return {
    points,
    freedoms: 2,
    best(rate) {
      shape(t => Math.exp(-rate * t));
      const away = sum((e, y) => e * (y - finalValue)) / sum(e => e * e);
      const squares = finiteOr(sum((e, y) => (y - finalValue - away * e) ** 2));
      return { startValue: finalValue + away, slopePerS: -away * rate, finalValue, squares };
    },
    squaresThrough(rate, sinceS, value) {
      shape(t => Math.exp(-rate * (t - sinceS)));
      return finiteOr(sum((e, y) => (y - finalValue - (value - finalValue) * e) ** 2));
    },
  };
}
