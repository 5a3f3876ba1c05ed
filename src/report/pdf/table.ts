import type { Cell, Column, Row } from '../document/blocks.ts';
import { colors, toneColors } from './palette.ts';
import type { Sheet } from './sheet.ts';
import type { Style } from './text.ts';

/** Left and right of what stands in a cell. */
export const PAD = 3;
const plain: Style = { face: 'plain', size: 8, color: colors.ink };
const small: Style = { face: 'plain', size: 7, color: colors.muted };
/** Of the words over the columns, which are never wrapped. */
export const headStyle: Style = { face: 'bold', size: 7.5, color: colors.muted };

interface Line {
  readonly text: string;
  readonly style: Style;
}

const styleOf = ({ tone, strong }: Cell): Style => ({
  ...plain,
  face: strong ? 'bold' : 'plain',
  color: tone ? toneColors[tone] : colors.ink,
});

/** A table whose head comes again on every page, and whose rows are never cut. */
export function drawTable(sheet: Sheet, columns: readonly Column[], rows: readonly Row[]): void {
  const places = columns.map(({ width }, index) => ({
    x: sheet.left + columns.slice(0, index).reduce((sum, column) => sum + column.width, 0) * sheet.width,
    width: width * sheet.width,
  }));
  const linesOf = (cell: Cell, width: number): Line[] => {
    const wrapped = (own: string, style: Style) =>
      sheet.text.wrap(own, width - 2 * PAD, style).map(text => ({ text, style }));
    return [
      ...wrapped(cell.text, styleOf(cell)),
      ...(cell.note === undefined ? [] : wrapped(cell.note, small)),
    ];
  };
  const heightOf = (lines: readonly Line[]) =>
    lines.reduce((sum, { style }) => sum + sheet.text.lineHeight(style), 0);

  const drawLines = (lines: readonly Line[], x: number, width: number, right: boolean) => {
    let y = sheet.y + PAD;
    for (const { text, style } of lines) {
      const indent = right ? width - 2 * PAD - sheet.text.width(text, style) : 0;
      sheet.text.draw(text, x + PAD + indent, y, style);
      y += sheet.text.lineHeight(style);
    }
  };
  const line = (color: string) =>
    sheet.doc
      .moveTo(sheet.left, sheet.y)
      .lineTo(sheet.left + sheet.width, sheet.y)
      .lineWidth(0.5)
      .stroke(color);

  const drawHead = () => {
    columns.forEach(({ title, align }, index) => {
      const place = places[index];
      if (place) drawLines([{ text: title, style: headStyle }], place.x, place.width, align === 'right');
    });
    sheet.y += sheet.text.lineHeight(headStyle) + 2 * PAD;
    line(colors.ink);
  };

  const drawCells = (cells: readonly Cell[]) => {
    const laid = columns.map((_, index) => linesOf(cells[index] ?? { text: '' }, places[index]?.width ?? 0));
    const height = Math.max(...laid.map(heightOf)) + 2 * PAD - 1;
    if (sheet.ensure(Math.min(height, sheet.pageHeight))) drawHead();
    columns.forEach(({ align }, index) => {
      const place = places[index];
      if (place) drawLines(laid[index] ?? [], place.x, place.width, align === 'right');
    });
    sheet.y += height;
    line(colors.rule);
  };

  const drawGroup = ({ title, right, detail }: Extract<Row, { kind: 'group' }>) => {
    const titleLines = linesOf({ ...title, strong: true }, sheet.width * 0.5);
    const rightLines = right ? linesOf(right, sheet.width * 0.5) : [];
    const detailLines = detail === undefined ? [] : linesOf({ text: '', note: detail }, sheet.width).slice(1);
    const top = Math.max(heightOf(titleLines), heightOf(rightLines));
    const height = top + heightOf(detailLines) + 2 * PAD;
    // A heading stays with the first row below it.
    if (sheet.ensure(Math.min(height + 16, sheet.pageHeight))) drawHead();
    sheet.doc.rect(sheet.left, sheet.y, sheet.width, height).fill(colors.soft);
    drawLines(titleLines, sheet.left, sheet.width, false);
    drawLines(rightLines, sheet.left + sheet.width * 0.5, sheet.width * 0.5, true);
    sheet.y += top;
    drawLines(detailLines, sheet.left, sheet.width, false);
    sheet.y += height - top;
    line(colors.rule);
  };

  sheet.ensure(40);
  drawHead();
  for (const row of rows) {
    if (row.kind === 'cells') drawCells(row.cells);
    else drawGroup(row);
  }
  sheet.y += 4;
}
