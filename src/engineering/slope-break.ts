import { type CurveAndLine, findCurveAndLine } from './curve-and-line.ts';
import { rise } from './first-order-family.ts';
import type { FirstOrderFit } from './first-order-fit.ts';

/** Where a first-order curve gives way to a flatter line. */
export interface SlopeBreak {
  /** On the readings' clock; the bend lies between this reading and the next. */
  readonly atS: number;
  readonly value: number;
  readonly slopeBeforePerS: number;
  readonly slopeAfterPerS: number;
}

/** The flat side of a break has at most this share of the slope of the steep side. */
const MOST_SLOPE_LEFT = 0.5;

const slopeAt = ({ curve, rate }: CurveAndLine, sinceS: number): number =>
  curve.slopePerS * Math.exp(-rate * sinceS);

const valueAt = ({ curve, rate }: CurveAndLine, sinceS: number): number =>
  curve.startValue + curve.slopePerS * rise(sinceS, rate);

const flatter = (flatPerS: number, steepPerS: number): boolean =>
  steepPerS > 0 && flatPerS <= MOST_SLOPE_LEFT * steepPerS;

/**
 * Looks for the moment when a rising first-order curve suddenly flattens or falls, and leaves the last readings
 * at least `shortfall` (in the readings' unit) below where it was going. `resolution` as in `fitFirstOrder`.
 */
export function findSlopeBreak(
  fit: FirstOrderFit,
  resolution: number,
  shortfall: number,
): SlopeBreak | undefined {
  const { originS, spanS } = fit.family.points;
  const split = findCurveAndLine(fit, resolution, true, each =>
    flatter(each.line.slopePerS, slopeAt(each, each.endS)),
  );
  if (!split || valueAt(split, spanS) - split.line.lastValue < shortfall) return undefined;
  return {
    atS: originS + split.endS,
    value: valueAt(split, split.endS),
    slopeBeforePerS: slopeAt(split, split.endS),
    slopeAfterPerS: split.line.slopePerS,
  };
}

/**
 * Looks for the moment, on the readings' clock, when the rise takes hold after a flatter beginning: heat goes
 * into cold metal before the gauge shows it, and that part is on no first-order curve.
 */
export function findLateStart(fit: FirstOrderFit, resolution: number): number | undefined {
  const split = findCurveAndLine(fit, resolution, false, each =>
    flatter(each.line.slopePerS, slopeAt(each, each.startS)),
  );
  return split && fit.family.points.originS + split.startS;
}
