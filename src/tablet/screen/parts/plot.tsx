import { layoutOf, type PlotLimit } from '../../face/plot-layout.ts';
import type { Plot } from '../../face/plots.ts';
import { words } from '../../words/index.ts';

const WIDTH = 320;
const HEIGHT = 190;
/** Where the axes stand; what is outside them is for their figures. */
const AXES = { left: 46, right: 312, top: 24, bottom: 160 } as const;
const CROSS = 5;

const shown = (value: number, decimals: number): string =>
  value.toLocaleString(words.locale, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    useGrouping: false,
  });

const sentenceFor = ({ name, unit, decimals, points }: Plot): string => {
  const last = points.at(-1);
  const show = (value: number) => `${shown(value, decimals)} ${unit}`;
  const limits = [
    ...(last?.min == null ? [] : [`≥ ${show(last.min)}`]),
    ...(last?.max == null ? [] : [`≤ ${show(last.max)}`]),
  ].join(', ');
  return `${name}: ${last ? show(last.value) : ''}${limits === '' ? '' : `, ${words.limits} ${limits}`}`;
};

/** What was allowed while a reading counted, between its limits or from one of them to the end of the axis. */
function Allowed({ limit: { from, to, min, max } }: { readonly limit: PlotLimit }) {
  if (min === null && max === null) return null;
  const [top, bottom] = [max ?? AXES.top, min ?? AXES.bottom];
  return (
    <>
      <rect className="allowed" x={from} y={top} width={to - from} height={Math.max(0, bottom - top)} />
      {max !== null && <line className="limit" x1={from} x2={to} y1={max} y2={max} />}
      {min !== null && <line className="limit" x1={from} x2={to} y1={min} y2={min} />}
    </>
  );
}

/**
 * One quantity over session time, against its limits as they were when each reading was judged. Colour is never the only
 * sign: what is out of limits is a cross.
 */
export function PlotFigure({ plot }: { readonly plot: Plot }) {
  const { x, y, valueTicks, timeTicks, limits } = layoutOf(plot, AXES, shown);
  const line = plot.points
    .map(({ atMs, value }) => `${x.at(atMs).toFixed(1)},${y.at(value).toFixed(1)}`)
    .join(' ');
  return (
    <figure className="plot">
      <figcaption>{sentenceFor(plot)}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={sentenceFor(plot)}>
        {limits.map(limit => (
          <Allowed key={limit.from} limit={limit} />
        ))}
        {valueTicks.map(({ at, text }) => (
          <g key={text}>
            <line className="grid" x1={AXES.left} x2={AXES.right} y1={at} y2={at} />
            <text x={AXES.left - 5} y={at + 5} textAnchor="end">
              {text}
            </text>
          </g>
        ))}
        {timeTicks.map(({ at, text }) => (
          <g key={text}>
            <line className="axis" x1={at} x2={at} y1={AXES.bottom} y2={AXES.bottom + 4} />
            <text x={at} y={AXES.bottom + 18} textAnchor="middle">
              {text}
            </text>
          </g>
        ))}
        <polyline
          className="axis"
          points={`${AXES.left},${AXES.top} ${AXES.left},${AXES.bottom} ${AXES.right},${AXES.bottom}`}
        />
        <text className="unit" x={AXES.left - 5} y={AXES.top - 9} textAnchor="end">
          {plot.unit}
        </text>
        <text x={AXES.right} y={AXES.top - 9} textAnchor="end">
          {words.plotTime}
        </text>
        <polyline className="course" points={line} />
        {plot.points.map(({ atMs, value, met }) =>
          met ? (
            <circle key={atMs} className="met" cx={x.at(atMs)} cy={y.at(value)} r={4} />
          ) : (
            <path
              key={atMs}
              className="unmet"
              d={`M${x.at(atMs) - CROSS},${y.at(value) - CROSS}l10,10m0,-10l-10,10`}
            />
          ),
        )}
      </svg>
    </figure>
  );
}
