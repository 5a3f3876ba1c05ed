import { judge, type LeastCertainty, leastCertainty } from '../../src/voice/decoders/network/bounds.ts';
import type { Row } from './bounds-rows.ts';

/** What comes of an utterance, worst first. */
export type Came = 'falseStop' | 'wrong' | 'right' | 'missed' | 'unclear';

/** An utterance that ends so soon after a stop belongs to it. */
const sameStopMs = 800;

/** What an ear with these bounds reports of an utterance. */
function reportsOf(rows: readonly Row[], least: LeastCertainty): readonly Row[] {
  const reports: Row[] = [];
  let stoppedMs = Number.NEGATIVE_INFINITY;
  let decided: Row | undefined;
  for (const row of rows) {
    // What the decoder made of it is decided anew, and not taken from what came of it then.
    const isEcho = row.features === null && decided?.stands === 'stop' && decided.lateMs === row.lateMs;
    decided = row.features === null ? undefined : row;
    if (row.stands === null || isEcho || row.lateMs - stoppedMs < sameStopMs) continue;
    const counts =
      row.features === null || ['stop', 'taken'].includes(judge(row.features, row.stands, least));
    if (!counts) continue;
    reports.push(row);
    if (row.stands === 'stop') stoppedMs = row.lateMs;
  }
  return reports;
}

/** The rows of each utterance of a kind. */
function utterancesOf(rows: readonly Row[]): readonly (readonly Row[])[] {
  const byUtterance = new Map<string, Row[]>();
  for (const row of rows) {
    const key = `${row.of} ${row.level} ${row.nth}`;
    const known = byUtterance.get(key);
    if (known === undefined) byUtterance.set(key, [row]);
    else known.push(row);
  }
  return [...byUtterance.values()];
}

function cameOf(rows: readonly Row[], least: LeastCertainty): Came {
  const [first] = rows;
  const reports = reportsOf(rows, least);
  const has = (stops: boolean, right: boolean) =>
    reports.some(row => (row.stands === 'stop') === stops && row.right === right);
  if (has(true, true)) return 'right';
  if (has(true, false)) return 'falseStop';
  if (has(false, false)) return 'wrong';
  if (has(false, true)) return 'right';
  return first?.talk ? 'right' : first?.of.includes('stops') ? 'missed' : 'unclear';
}

const isAlone = ({ of }: Row) => of.includes('alone');

/** What would come of the utterances of a kind with other bounds, in words. */
export function cameWith(rows: readonly Row[], bounds: Partial<LeastCertainty>): string {
  const least = { ...leastCertainty, ...bounds };
  const utterances = utterancesOf(rows);
  if (rows.some(isAlone)) {
    const counts = new Map<string, number>();
    for (const { stands } of utterances.flatMap(each => reportsOf(each, least)))
      counts.set(stands ?? '', (counts.get(stands ?? '') ?? 0) + 1);
    return [...counts].map(([stands, count]) => `${count} ${stands}`).join(', ') || 'nothing';
  }
  const came = utterances.map(each => cameOf(each, least));
  const percent = (...kinds: readonly Came[]) =>
    ((100 * came.filter(each => kinds.includes(each)).length) / Math.max(1, came.length)).toFixed(1);
  return `${percent('right')} / ${percent('wrong')} + ${percent('falseStop')} of ${came.length}`;
}
