import { type FirstOrderFit, searchRate } from './first-order-fit.ts';

/** A time with its 95 % interval; no `high` when never is as plausible. Seconds, on the readings' clock. */
export interface TimeEstimate {
  readonly bestS: number;
  readonly lowS: number;
  readonly highS?: number;
}

/** How far from the readings a time is still looked for, in spans of the readings. */
const REACH_SPANS = 20;

/**
 * When the curve reaches a value, with a 95 % profile-likelihood interval: every time is kept through which
 * some curve of the family passes that the readings cannot tell from the best one. `undefined` when the best
 * curve never reaches it, or only beyond 20 times the span of the readings.
 */
export function timeToReach(fit: FirstOrderFit, value: number): TimeEstimate | undefined {
  const { family, rate } = fit;
  const { originS, spanS } = family.points;
  const bestSince = -Math.log1p((-rate * (value - fit.startValue)) / fit.slopePerS) / rate;
  if (!(Math.abs(bestSince) <= REACH_SPANS * spanS)) return undefined;
  const plausible = (sinceS: number): boolean =>
    searchRate(each => family.squaresThrough(each, sinceS, value), spanS, 1e-3).squares <=
    fit.plausibleSquares;
  const low = edge(plausible, bestSince, -spanS / 50, REACH_SPANS * spanS);
  const high = edge(plausible, bestSince, spanS / 50, REACH_SPANS * spanS);
  return {
    bestS: originS + bestSince,
    lowS: originS + (low ?? -REACH_SPANS * spanS),
    ...(high === undefined ? {} : { highS: originS + high }),
  };
}

/** The last time, going from `from` by growing steps, that is still plausible; none within `reach`. */
function edge(
  plausible: (at: number) => boolean,
  from: number,
  step: number,
  reach: number,
): number | undefined {
  let inside = from;
  let outside = from + step;
  for (let stride = step; plausible(outside); stride *= 2) {
    if (Math.abs(outside) > reach) return undefined;
    inside = outside;
    outside += stride * 2;
  }
  while (Math.abs(outside - inside) > Math.abs(step) / 100 + Math.abs(inside - from) / 200) {
    const middle = (inside + outside) / 2;
    if (plausible(middle)) inside = middle;
    else outside = middle;
  }
  return outside;
}

/** The same time counted from now; never negative. */
export const timeLeft = (estimate: TimeEstimate, nowS: number): TimeEstimate => {
  const left = (timeS: number): number => Math.max(0, timeS - nowS);
  return {
    bestS: left(estimate.bestS),
    lowS: left(estimate.lowS),
    ...(estimate.highS === undefined ? {} : { highS: left(estimate.highS) }),
  };
};
