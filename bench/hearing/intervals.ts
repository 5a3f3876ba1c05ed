/** Standard deviations that 95 of 100 lie within. */
const z = 1.959_964;

/** From the lowest to the highest that is likely, at 95 %. */
export type Interval = readonly [low: number, high: number];

/** Wilson's interval of a share (Wilson 1927): `part` of `whole`, as shares from 0 to 1. */
export function shareInterval(part: number, whole: number): Interval {
  if (whole === 0) return [0, 1];
  const p = part / whole;
  const scale = 1 + (z * z) / whole;
  const centre = (p + (z * z) / (2 * whole)) / scale;
  const half = (z / scale) * Math.sqrt((p * (1 - p)) / whole + (z * z) / (4 * whole * whole));
  return [Math.max(0, centre - half), Math.min(1, centre + half)];
}

/** Byar's interval of how often something happens that was counted (Breslow and Day 1987), in counts. */
export function countInterval(count: number): Interval {
  const byar = (n: number, sign: number) => n * (1 - 1 / (9 * n) + (sign * z) / (3 * Math.sqrt(n))) ** 3;
  return [count === 0 ? 0 : Math.max(0, byar(count, -1)), byar(count + 1, 1)];
}
