/** Points of a curve, in order of rising x. */
export type Curve = readonly (readonly [x: number, y: number])[];

/**
 * y at x on the straight lines between the points; `undefined` outside the curve and for x that is not a
 * number. Linear interpolation: nothing is ever extrapolated.
 */
export function interpolate(curve: Curve, x: number): number | undefined {
  const index = curve.findIndex(([right]) => right >= x);
  const right = curve[index];
  if (right === undefined) return undefined;
  if (right[0] === x) return right[1];
  const left = curve[index - 1];
  if (left === undefined) return undefined;
  const share = (x - left[0]) / (right[0] - left[0]);
  // Weighted ends rather than left + share * rise, so that rounding never leaves the interval.
  return left[1] * (1 - share) + right[1] * share;
}

/** The curve with x and y changed over; only for a curve whose y always falls. */
export const invertFalling = (curve: Curve): Curve =>
  curve.map(([x, y]): readonly [number, number] => [y, x]).reverse();
