import { anyCurve, type Curve, rise } from './first-order-family.ts';
import { type FirstOrderFit, searchRate } from './first-order-fit.ts';
import type { Points } from './first-order-points.ts';

/** Where a first-order curve gives way to a flatter line. */
export interface SlopeBreak {
  /** On the readings' clock; the bend lies between this reading and the next. */
  readonly atS: number;
  readonly value: number;
  readonly slopeBeforePerS: number;
  readonly slopeAfterPerS: number;
}

/** A curve needs more points than it has freedoms, a line likewise, before a break is more than a stray. */
const POINTS_BEFORE = 5;
const POINTS_AFTER = 3;

/** Freedoms that a break adds: where it is, and the line after it. */
const FREEDOMS_WON = 3;
const FREEDOMS_BROKEN = 6;

/** How often the squares must shrink, per freedom won, before the break counts as seen (an F ratio). */
const LEAST_F = 12;

/** After the break the slope is at most this share of the slope before it. */
const MOST_SLOPE_LEFT = 0.5;

interface Broken {
  readonly at: SlopeBreak;
  readonly squares: number;
  /** How far the last reading falls short of where the curve was going. */
  readonly missing: number;
}

/**
 * Looks for the moment when a rising first-order curve suddenly flattens or falls: fits a curve up to each
 * possible point and a line after it (not joined: cold coolant may arrive all at once), and believes the best
 * such pair only if it explains the readings far better than the unbroken `fit` does and the last readings
 * fall short of where the curve was going by at least `shortfall` (in the readings' unit). `resolution` as in
 * `fitFirstOrder`.
 */
export function findSlopeBreak(
  fit: FirstOrderFit,
  resolution: number,
  shortfall: number,
): SlopeBreak | undefined {
  const { points } = fit.family;
  const count = points.weight.length;
  const degrees = count - FREEDOMS_BROKEN;
  let best: Broken | undefined;
  for (let after = POINTS_BEFORE; after <= count - POINTS_AFTER; after += Math.ceil(count / 32)) {
    const broken = breakBefore(points, after);
    const { slopeBeforePerS, slopeAfterPerS } = broken.at;
    const flattens = slopeBeforePerS > 0 && slopeAfterPerS <= MOST_SLOPE_LEFT * slopeBeforePerS;
    if (flattens && broken.squares < (best?.squares ?? Number.POSITIVE_INFINITY)) best = broken;
  }
  if (!best || degrees < 1) return undefined;
  const scatter = Math.max(best.squares / degrees, resolution ** 2 / 12);
  const ratio = (fit.squares - best.squares) / FREEDOMS_WON / scatter;
  return ratio >= LEAST_F && best.missing >= shortfall ? best.at : undefined;
}

function breakBefore(points: Points, after: number): Broken {
  const head = part(points, 0, after);
  const curves = anyCurve(head);
  const { rate } = searchRate(each => curves.best(each).squares, head.spanS, 0.2);
  const curve: Curve = curves.best(rate);
  const tail = lineThrough(part(points, after, points.weight.length));
  const slopeBeforePerS = curve.slopePerS * Math.exp(-rate * head.spanS);
  return {
    at: {
      atS: points.originS + head.spanS,
      value: curve.startValue + curve.slopePerS * rise(head.spanS, rate),
      slopeBeforePerS,
      slopeAfterPerS: tail.slopePerS,
    },
    squares: curve.squares + tail.squares,
    missing: curve.startValue + curve.slopePerS * rise(points.spanS, rate) - tail.lastValue,
  };
}

function part(points: Points, from: number, to: number): Points {
  const sinceS = points.sinceS.subarray(from, to);
  return {
    sinceS,
    value: points.value.subarray(from, to),
    weight: points.weight.subarray(from, to),
    // Measured from the first reading of all: the head starts there, and the tail asks only for its end.
    spanS: sinceS.at(-1) ?? 0,
    originS: points.originS,
  };
}

/** Weighted least-squares line, in closed form. */
function lineThrough({ sinceS, value, weight, spanS }: Points): {
  readonly slopePerS: number;
  readonly lastValue: number;
  readonly squares: number;
} {
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
