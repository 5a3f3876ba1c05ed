import { anyCurve, type Curve } from './first-order-family.ts';
import { type FirstOrderFit, searchRate } from './first-order-fit.ts';
import type { Points } from './first-order-points.ts';

/** Points told in two: a first-order curve through some of them and a straight line through the rest. */
export interface CurveAndLine {
  readonly curve: Curve;
  /** Of the curve, 1/s. */
  readonly rate: number;
  readonly line: { readonly slopePerS: number; readonly lastValue: number };
  /** Last point of the first part and first point of the second, seconds since the first reading. */
  readonly endS: number;
  readonly startS: number;
  readonly squares: number;
}

/** A curve needs more points than it has freedoms, a line likewise, before either is more than a stray. */
const CURVE_POINTS = 5;
const LINE_POINTS = 3;

/** Freedoms that telling the points in two adds: where, and the line. */
const FREEDOMS_WON = 3;
const FREEDOMS = 6;

/** How often the squares must shrink, per freedom won, before the break counts as seen (an F ratio). */
const LEAST_F = 12;

/** About so many places are tried. */
const PLACES = 32;

/**
 * The place where the readings turn from a curve into a line (`curveFirst`) or from a line into a curve: the
 * best of those that `admits` lets stand, if it explains the readings far better than the unbroken `fit` does.
 * The two are not joined: what changes may change all at once. `resolution` as in `fitFirstOrder`.
 */
export function findCurveAndLine(
  fit: FirstOrderFit,
  resolution: number,
  curveFirst: boolean,
  admits: (split: CurveAndLine) => boolean,
): CurveAndLine | undefined {
  const { points } = fit.family;
  const count = points.weight.length;
  const [least, most] = curveFirst
    ? [CURVE_POINTS, count - LINE_POINTS]
    : [LINE_POINTS, count - CURVE_POINTS];
  let best: CurveAndLine | undefined;
  for (let place = least; place <= most; place += Math.ceil(count / PLACES)) {
    const split = splitAt(points, place, curveFirst);
    if (split.squares < (best?.squares ?? Number.POSITIVE_INFINITY) && admits(split)) best = split;
  }
  const degrees = count - FREEDOMS;
  if (!best || degrees < 1) return undefined;
  const scatter = Math.max(best.squares / degrees, resolution ** 2 / 12);
  return (fit.squares - best.squares) / FREEDOMS_WON / scatter >= LEAST_F ? best : undefined;
}

function splitAt(points: Points, place: number, curveFirst: boolean): CurveAndLine {
  const head = part(points, 0, place);
  const tail = part(points, place, points.weight.length);
  const [curved, straight] = curveFirst ? [head, tail] : [tail, head];
  const curves = anyCurve(curved);
  const { rate } = searchRate(each => curves.best(each).squares, curved.spanS, 0.2);
  const curve = curves.best(rate);
  const line = lineThrough(straight);
  return {
    curve,
    rate,
    line,
    endS: head.spanS,
    startS: tail.sinceS[0] ?? head.spanS,
    squares: curve.squares + line.squares,
  };
}

/** The points from one place up to, not including, another; all still timed from the first of all. */
function part(points: Points, from: number, to: number): Points {
  const sinceS = points.sinceS.subarray(from, to);
  return {
    sinceS,
    value: points.value.subarray(from, to),
    weight: points.weight.subarray(from, to),
    spanS: sinceS.at(-1) ?? 0,
    originS: points.originS,
  };
}

/** Weighted least-squares line, in closed form. */
function lineThrough({ sinceS, value, weight, spanS }: Points) {
  const sum = (term: (i: number) => number): number =>
    weight.reduce((total, each, i) => total + each * term(i), 0);
  const t = (i: number): number => sinceS[i] ?? 0;
  const y = (i: number): number => value[i] ?? 0;
  const all = sum(() => 1);
  const [meanT, meanY] = [sum(t) / all, sum(y) / all];
  const slopePerS = sum(i => (t(i) - meanT) * (y(i) - meanY)) / sum(i => (t(i) - meanT) ** 2);
  return {
    slopePerS,
    lastValue: meanY + slopePerS * (spanS - meanT),
    squares: sum(i => (y(i) - meanY - slopePerS * (t(i) - meanT)) ** 2),
  };
}
