/** From a value to a place along an axis. */
export interface Scale {
  readonly from: number;
  readonly to: number;
  at(value: number): number;
}

/** Values outside the range are put at its ends, so that nothing is drawn outside its plot. */
export function linear(from: number, to: number, start: number, end: number): Scale {
  const span = to - from;
  const at = (value: number) => {
    const share = span > 0 ? Math.min(1, Math.max(0, (value - from) / span)) : 0.5;
    return start + share * (end - start);
  };
  return { from, to, at };
}

const MOST_TICKS = 12;

/** Round values in a range, about as many as wanted. */
export function ticks(from: number, to: number, wanted: number): number[] {
  const span = to - from;
  if (!Number.isFinite(span) || span <= 0) return Number.isFinite(from) ? [from] : [];
  const rough = span / Math.max(1, wanted);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map(factor => factor * power).find(size => size >= rough) ?? rough;
  return multiples(from, to, step);
}

/** As `ticks`, for times in milliseconds: whole seconds, minutes and hours as a clock has them. */
export function timeTicks(fromMs: number, toMs: number, wanted: number): number[] {
  const rough = (toMs - fromMs) / Math.max(1, wanted);
  const steps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 43_200].map(
    s => s * 1000,
  );
  const step = steps.find(size => size >= rough);
  return step === undefined ? ticks(fromMs, toMs, wanted) : multiples(fromMs, toMs, step);
}

function multiples(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.min(Math.floor(to / step + 1e-9), first + MOST_TICKS);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * step);
}

/** A range that holds all values with some air around them; never empty. */
export function roomy(
  values: readonly number[],
  leastSpan: number,
): { readonly from: number; readonly to: number } {
  const finite = values.filter(Number.isFinite);
  const low = finite.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const high = finite.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  if (low > high) return { from: 0, to: leastSpan };
  const air = Math.max((high - low) * 0.08, (leastSpan - (high - low)) / 2, Math.abs(high) * 1e-9);
  return { from: low - air, to: high + air };
}

/** A limit is shown when it is no further from the readings than this many times their own spread. */
const NEAR = 4;

/** Limits near enough to the readings to be shown beside them; at least one reading. */
export function nearLimits(values: readonly number[], limits: readonly number[]): number[] {
  const low = values.reduce((a, b) => Math.min(a, b));
  const high = values.reduce((a, b) => Math.max(a, b));
  const room = NEAR * Math.max(high - low, Math.abs(high) * 0.15);
  return limits.filter(limit => limit > low - room && limit < high + room);
}
