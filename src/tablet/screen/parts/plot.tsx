import { scaleOf } from '../../face/plot-scale.ts';
import type { Plot } from '../../face/plots.ts';
import { words } from '../../words/index.ts';

const WIDTH = 320;
const HEIGHT = 96;
const EDGE = 8;

const sentenceFor = ({ name, unit, decimals, points, min, max }: Plot): string => {
  const last = points.at(-1);
  const show = (value: number) => `${value.toFixed(decimals)} ${unit}`;
  const limits = [
    ...(min === null ? [] : [`≥ ${show(min)}`]),
    ...(max === null ? [] : [`≤ ${show(max)}`]),
  ].join(', ');
  return `${name}: ${last ? show(last.value) : ''}${limits === '' ? '' : `, ${words.limits} ${limits}`}`;
};

/** One quantity over time against its limits. Colour is never the only sign: what is out of limits is a cross. */
export function PlotFigure({ plot }: { readonly plot: Plot }) {
  const { x, y } = scaleOf(plot, WIDTH, HEIGHT);
  const line = plot.points.map(({ atMs, value }) => `${x(atMs).toFixed(1)},${y(value).toFixed(1)}`).join(' ');
  const top = plot.max === null ? 0 : y(plot.max);
  const bottom = plot.min === null ? HEIGHT : y(plot.min);
  return (
    <figure className="plot">
      <figcaption>{sentenceFor(plot)}</figcaption>
      <svg
        viewBox={`${-EDGE} ${-EDGE} ${WIDTH + 2 * EDGE} ${HEIGHT + 2 * EDGE}`}
        role="img"
        aria-label={sentenceFor(plot)}
      >
        <rect className="allowed" x={0} y={top} width={WIDTH} height={Math.max(0, bottom - top)} />
        {plot.max !== null && <line className="limit" x1={0} x2={WIDTH} y1={top} y2={top} />}
        {plot.min !== null && <line className="limit" x1={0} x2={WIDTH} y1={bottom} y2={bottom} />}
        <polyline className="course" points={line} />
        {plot.points.map(({ atMs, value, met }) =>
          met ? (
            <circle key={atMs} className="met" cx={x(atMs)} cy={y(value)} r={4} />
          ) : (
            <path key={atMs} className="unmet" d={`M${x(atMs) - 5},${y(value) - 5}l10,10m0,-10l-10,10`} />
          ),
        )}
      </svg>
    </figure>
  );
}
