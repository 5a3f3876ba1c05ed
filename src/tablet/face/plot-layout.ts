import { linear, nearLimits, roomy, type Scale, ticks, timeTicks } from '../../engineering/axis.ts';
import { elapsedText } from '../../session/clock-text.ts';
import type { Plot, PlotPoint } from './plots.ts';

export interface PlotSize {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** What a reading was held against, for as long as it was: half-way to the readings beside it. */
export interface PlotLimit {
  readonly from: number;
  readonly to: number;
  /** Places of the limits that can be seen; null where there is none, or it lies far outside. */
  readonly min: number | null;
  readonly max: number | null;
}

/** Where everything of a plot stands, in the units of the drawing. */
export interface PlotLayout {
  readonly x: Scale;
  readonly y: Scale;
  readonly valueTicks: readonly { readonly at: number; readonly text: string }[];
  readonly timeTicks: readonly { readonly at: number; readonly text: string }[];
  readonly limits: readonly PlotLimit[];
}

/** A single reading still has a time axis. */
const LEAST_SPAN_MS = 60_000;
const VALUE_TICKS = 4;
/** Of the finest that the gauge tells apart. */
const LEAST_STEPS = 4;
const TIME_TICKS = 4;

const decimalsOf = (marks: readonly number[]): number => {
  const step = Math.abs((marks[1] ?? 1) - (marks[0] ?? 0)) || 1;
  return Math.min(3, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)));
};

/**
 * The limits as they were when each reading was judged: one that has changed since (with the speed, the air or the
 * temperature) is not drawn over readings that were held against another.
 */
function limitsOf(points: readonly PlotPoint[], x: Scale, y: Scale): PlotLimit[] {
  const seen = (value: number | null) =>
    value === null || value < y.from || value > y.to ? null : y.at(value);
  const each = points.map((point, index): PlotLimit => {
    const [before, after] = [points[index - 1], points[index + 1]];
    return {
      from: before ? x.at((before.atMs + point.atMs) / 2) : x.at(x.from),
      to: after ? x.at((point.atMs + after.atMs) / 2) : x.at(x.to),
      min: seen(point.min),
      max: seen(point.max),
    };
  });
  // One that stays is one line.
  const merged: PlotLimit[] = [];
  for (const limit of each) {
    const last = merged.at(-1);
    if (last?.min === limit.min && last.max === limit.max) merged.splice(-1, 1, { ...last, to: limit.to });
    else merged.push(limit);
  }
  return merged;
}

/** Lays a plot out in a drawing whose axes stand at these places; `show` writes a value as the user's language does. */
export function layoutOf(
  { points, decimals: finest }: Pick<Plot, 'points' | 'decimals'>,
  { left, right, top, bottom }: PlotSize,
  show: (value: number, decimals: number) => string,
): PlotLayout {
  const values = points.map(({ value }) => value);
  const limits = points.flatMap(({ min, max }) => [min, max]).filter(limit => limit !== null);
  const range = roomy(
    [...values, ...(values.length > 0 ? nearLimits(values, limits) : [])],
    // Never so fine that two figures on the axis would read alike.
    Math.max(LEAST_STEPS * 10 ** -finest, Math.abs(values[0] ?? 0) * 0.05),
  );
  const times = roomy(
    points.map(({ atMs }) => atMs),
    LEAST_SPAN_MS,
  );
  const x = linear(Math.max(0, times.from), times.to, left, right);
  const y = linear(range.from, range.to, bottom, top);
  const marks = ticks(y.from, y.to, VALUE_TICKS);
  const decimals = decimalsOf(marks);
  return {
    x,
    y,
    valueTicks: marks.map(value => ({ at: y.at(value), text: show(value, decimals) })),
    timeTicks: timeTicks(x.from, x.to, TIME_TICKS).map(ms => ({ at: x.at(ms), text: elapsedText(ms) })),
    limits: limitsOf(points, x, y),
  };
}
