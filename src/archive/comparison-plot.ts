import { roomy } from '../engineering/axis.ts';
import { number, shownAs } from '../report/format.ts';
import { mannerOf } from '../report/manner.ts';
import { frame, LABEL, valueAxis } from '../report/plot/frame.ts';
import type { Scene, Shape } from '../report/plot/scene.ts';
import type { UnitSystem } from '../session/units.ts';
import type { Comparison } from './compare.ts';

const WIDTH = 520;
const HEIGHT = 230;
const RADIUS = 2.6;
const HEAD = 14;

/** Starts from left to right, oldest first, with their median; outliers are larger, flagged and dated. */
export function comparisonPlot(comparison: Comparison, units: UnitSystem): Scene {
  const { starts, median, title, unit } = comparison;
  const manner = mannerOf('en', units);
  const shown = shownAs(unit, manner);
  const values = starts.map(({ value }) => shown.toUser(value));
  const range = roomy(values, Math.max(1e-6, ...values.map(Math.abs)) * 0.05);
  const area = frame(WIDTH, HEIGHT - HEAD, { from: 0, to: starts.length + 1 }, range);
  const text = (x: number, y: number, words: string, anchor?: 'middle' | 'end'): Shape => ({
    kind: 'text',
    x,
    y,
    text: words,
    size: LABEL,
    ink: 'label',
    ...(anchor && { anchor }),
  });

  const shapes: Shape[] = [...valueAxis(area, manner)];
  if (median !== null) {
    const y = area.y.at(shown.toUser(median));
    const points = [[area.left, y] as const, [area.right, y] as const];
    shapes.push({ kind: 'line', points, ink: 'axis', width: 0.8, dashed: true });
  }
  starts.forEach(({ outlier, at }, index) => {
    const [x, y] = [area.x.at(index + 1), area.y.at(values[index] ?? Number.NaN)];
    shapes.push({
      kind: 'dot',
      x,
      y,
      radius: outlier ? RADIUS * 1.4 : RADIUS,
      ink: outlier ? 'bad' : 'reading',
    });
    if (!outlier) return;
    shapes.push({ kind: 'flag', x, y: y - RADIUS * 2, size: 5, ink: 'bad' });
    const nearEnd = x > WIDTH / 2;
    shapes.push(text(x + (nearEnd ? -6 : 6), y - 3, at.slice(0, 10), nearEnd ? 'end' : undefined));
  });
  const [first, last] = [starts[0], starts.at(-1)];
  const below = area.bottom + 3 + LABEL;
  if (first && last) {
    shapes.push(text(area.x.at(1), below, first.at.slice(0, 10)));
    if (starts.length > 1) shapes.push(text(area.x.at(starts.length), below, last.at.slice(0, 10), 'end'));
  }
  const outliers = starts.filter(({ outlier }) => outlier).length;
  const middle = median === null ? '' : `; median ${number(shown.toUser(median), 2, manner)}`;
  const heading = `${title}, ${shown.unit}${middle}; ${starts.length} starts, ${outliers} outliers`;
  shapes.push(text(area.left, HEIGHT - 5, heading));
  return { width: WIDTH, height: HEIGHT, shapes };
}
