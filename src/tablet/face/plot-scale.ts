import type { Plot } from './plots.ts';

/** A figure of `width` by `height`, in which a reading has its place. */
export interface PlotScale {
  readonly x: (atMs: number) => number;
  readonly y: (value: number) => number;
  readonly low: number;
  readonly high: number;
}

/** Room above and below the outermost reading or limit. */
const MARGIN = 0.12;

/** The scale that shows all readings and both limits. Readings that never change get a band around them. */
export function scaleOf(plot: Plot, width: number, height: number): PlotScale {
  const values = [
    ...plot.points.map(({ value }) => value),
    ...[plot.min, plot.max].filter(limit => limit !== null),
  ];
  const lowest = Math.min(...values);
  const highest = Math.max(...values);
  const room = (highest - lowest || Math.abs(highest) || 1) * MARGIN;
  const low = lowest - room;
  const high = highest + room;
  const first = plot.points[0]?.atMs ?? 0;
  const last = plot.points.at(-1)?.atMs ?? first;
  const spanMs = last - first;
  return {
    low,
    high,
    // A single reading stands in the middle.
    x: atMs => (spanMs > 0 ? ((atMs - first) / spanMs) * width : width / 2),
    y: value => height - ((value - low) / (high - low)) * height,
  };
}
