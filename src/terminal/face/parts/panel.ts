import type { View } from '../../../session/view.ts';
import { fill } from '../../../session/wording.ts';
import { type Line, line, type Row } from '../line.ts';
import { cut, pad, widthOf } from '../text.ts';
import type { FaceWords } from '../words/index.ts';
import { gates } from './gates.ts';
import { openList } from './open-list.ts';
import { readings } from './readings.ts';

type PanelView = Pick<View, 'readings' | 'gates' | 'faults' | 'openItems'>;

const TWO_COLUMNS_FROM = 72;
const BETWEEN = 2;
const FEW_READINGS = 3;
/** So that the columns do not jump with each reading. */
const NARROWEST_TABLE = 34;

/** At most `rows` lines; the last one says how many are left out. */
export function firstRows(lines: readonly Line[], width: number, rows: number, words: FaceWords): Line[] {
  if (lines.length <= rows) return [...lines];
  if (rows < 2) return lines.slice(0, Math.max(0, rows));
  const shown = lines.slice(0, rows - 1);
  return [...shown, line(cut(fill(words.more, { n: String(lines.length - shown.length) }), width))];
}

function beside(left: readonly Line[], right: readonly Line[], leftWidth: number): Row[] {
  return Array.from({ length: Math.max(left.length, right.length) }, (_, index) => {
    const first = left[index] ?? line('');
    const second = right[index];
    return second
      ? [line(pad(first.text, leftWidth), first.tone), line(' '.repeat(BETWEEN)), second]
      : [first];
  });
}

const widest = (lines: readonly Line[]) => Math.max(0, ...lines.map(({ text }) => widthOf(text)));

function inTheWay(view: PanelView, width: number, rows: number, words: FaceWords): Line[] {
  const first = [
    ...openList(words.faults, view.faults, width, words),
    ...openList(words.openItems, view.openItems, width, words),
  ];
  return [...first, ...gates(view.gates, width, rows - first.length, words)];
}

/** Readings, and beside or below them what is still in the way: fault codes, open items, gates. */
export function panel(view: PanelView, width: number, rows: number, words: FaceWords): Row[] {
  if (width < TWO_COLUMNS_FROM) {
    const faults = openList(words.faults, view.faults, width, words);
    const few = readings(view.readings, width, words).slice(0, 1 + FEW_READINGS);
    const rest = inTheWay({ ...view, faults: [] }, width, 0, words);
    return firstRows([...faults, ...few, ...rest], width, rows, words).map(each => [each]);
  }
  const table = readings(view.readings, Math.floor((width - BETWEEN) / 2), words);
  const tableWidth = Math.max(NARROWEST_TABLE, widest(table));
  const otherWidth = width - BETWEEN - tableWidth;
  const others = inTheWay(view, otherWidth, rows, words);
  return beside(
    firstRows(table, tableWidth, rows, words),
    firstRows(others, otherWidth, rows, words),
    tableWidth,
  );
}
