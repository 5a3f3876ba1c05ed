export type Point = readonly [number, number];

/**
 * Fewer points for the same picture: of each column of the drawing the first, lowest, highest and last.
 * @param points in rising order of x
 * @param columns of the drawing; at most four times as many points are left
 */
export function thin(points: readonly Point[], columns: number): readonly Point[] {
  const [first] = points;
  const last = points.at(-1);
  if (!first || !last || points.length <= 4 * columns) return points;
  const width = (last[0] - first[0]) / columns || 1;
  const kept: Point[] = [];
  let column: Point[] = [];
  let current = 0;
  const flush = () => {
    const [start = first, ...rest] = column;
    const lowest = rest.reduce((a, b) => (b[1] < a[1] ? b : a), start);
    const highest = rest.reduce((a, b) => (b[1] > a[1] ? b : a), start);
    const end = column.at(-1) ?? start;
    const chosen = new Set([start, lowest, highest, end]);
    kept.push(...column.filter(point => chosen.has(point)));
  };
  for (const point of points) {
    const at = Math.floor((point[0] - first[0]) / width);
    if (at !== current && column.length > 0) {
      flush();
      column = [];
    }
    current = at;
    column.push(point);
  }
  if (column.length > 0) flush();
  return kept;
}
