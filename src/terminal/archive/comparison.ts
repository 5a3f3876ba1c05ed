import type { Compared, Comparison } from '../../archive/compare.ts';
import { SHOWN_DIGITS } from '../../archive/versions.ts';
import { linear, roomy } from '../../engineering/axis.ts';
import { number, shownAs } from '../../report/format.ts';
import { type Manner, mannerOf } from '../../report/manner.ts';
import { capital } from '../../report/names.ts';
import type { UnitSystem } from '../../session/units.ts';
import { oneLine, pad } from '../face/text.ts';
import { count } from './count.ts';
import { doubt } from './sessions.ts';

const PLOT_COLUMNS = 30;

/**
 * A line for each start with its value and its place along the range of all; outliers are marked in words too.
 * @param rehearsals how many values were left out, as no engine gave them
 */
export function comparisonLines(comparison: Comparison, rehearsals: number, units: UnitSystem): string[] {
  const { starts, median, medianDeviation, title, unit, rule, profiles } = comparison;
  const leftOut = rehearsals > 0 ? [`Left out: ${count(rehearsals, 'value')} of rehearsals.`] : [];
  if (starts.length === 0) return [`No start like that has a value for: ${title}.`, ...leftOut];
  const manner = mannerOf('en', units);
  const shown = shownAs(unit, manner);
  const values = starts.map(({ value }) => shown.toUser(value));
  const range = roomy(values, 1e-9);
  const scale = linear(range.from, range.to, 0, PLOT_COLUMNS - 1);
  const middle = median === null ? undefined : Math.round(scale.at(shown.toUser(median)));
  const outliers = starts.filter(({ outlier }) => outlier).length;
  const about =
    median === null || medianDeviation === null
      ? ''
      : `, median ${shown.value(median)}, median deviation ${shown.difference(medianDeviation)}`;
  return [
    `${capital(title)}, the last ${count(starts.length, 'start')}, oldest first${about}.`,
    ...starts.map((start, index) => {
      const at = Math.round(scale.at(values[index] ?? Number.NaN));
      return startLine(start, plotLine(at, middle, start.outlier), shown.value(start.value), manner);
    }),
    `${count(outliers, 'outlier')}; ${rule}.`,
    ...leftOut,
    ...(profiles.length > 1
      ? [
          `These are engines of ${profiles.length} profiles, which need not be alike; choose one with --engine.`,
        ]
      : []),
  ];
}

const startLine = (
  { session, at, outlier, score }: Compared,
  plot: string,
  value: string,
  manner: Manner,
): string =>
  [
    session.id.slice(0, SHOWN_DIGITS),
    at.slice(0, 10),
    pad(oneLine(session.vehicle), 24),
    value.padStart(10),
    plot,
    [outlier && score !== null ? `OUTLIER, score ${number(score, 1, manner)}` : '', doubt[session.state]]
      .filter(words => words !== '')
      .join('; '),
  ]
    .join('  ')
    .trimEnd();

function plotLine(at: number, middle: number | undefined, outlier: boolean): string {
  const columns: string[] = Array.from({ length: PLOT_COLUMNS }, () => ' ');
  if (middle !== undefined) columns[middle] = '|';
  columns[at] = outlier ? 'X' : 'o';
  return `[${columns.join('')}]`;
}
