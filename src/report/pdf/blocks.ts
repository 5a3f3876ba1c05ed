import type { Block, Cell, Figure, Item, Tone } from '../document/blocks.ts';
import { colors, softColors, toneColors } from './palette.ts';
import { drawScene } from './scene.ts';
import type { Sheet } from './sheet.ts';
import { drawTable } from './table.ts';
import type { Face, Style } from './text.ts';

const GAP = 12;

const style = (size: number, tone?: Tone, face: Face = 'plain'): Style => ({
  face,
  size,
  color: tone ? toneColors[tone] : colors.ink,
});

/** What has to follow a heading on its page. */
function leastHeight(sheet: Sheet, next: Block | undefined): number {
  if (next?.type === 'figures') return rowHeight(sheet, next.perRow, next.figures.slice(0, next.perRow));
  return next?.type === 'signatures' ? 80 : 45;
}

/** Draws one block where the sheet stands; a heading goes to the page of what it heads. */
export function drawBlock(sheet: Sheet, block: Block, next?: Block): void {
  switch (block.type) {
    case 'banner':
      banner(sheet, block.tone, block.text, block.detail);
      return;
    case 'title':
      title(sheet, block.text, block.note);
      return;
    case 'lead':
      sheet.paragraph(block.text, style(12, block.tone, 'bold'));
      sheet.y += 6;
      return;
    case 'section':
      sheet.ensure(40 + leastHeight(sheet, next));
      sheet.y += 8;
      sheet.paragraph(block.title, style(11, undefined, 'bold'));
      if (block.note !== undefined) sheet.paragraph(block.note, style(7.5, 'muted'));
      sheet.y += 2;
      return;
    case 'text':
      sheet.paragraph(block.text, style(8.5, block.tone));
      sheet.y += 3;
      return;
    case 'facts':
      facts(sheet, block.rows);
      return;
    case 'table':
      drawTable(sheet, block.columns, block.rows);
      return;
    case 'list':
      list(sheet, block.items, block.boxes ?? false);
      return;
    case 'figures':
      figures(sheet, block.perRow, block.figures);
      return;
    case 'folded':
      sheet.paragraph(block.summary, style(8.5, 'muted'));
      sheet.y += 3;
      return;
    case 'signatures':
      signatures(sheet, block.lines);
      return;
    case 'hash':
      sheet.ensure(50);
      sheet.y += 14;
      sheet.paragraph(block.label, style(7.5, 'muted'));
      sheet.paragraph(block.hash, style(10, undefined, 'bold'));
      return;
  }
}

function banner(sheet: Sheet, tone: Tone, text: string, detail: string | undefined): void {
  const loud = style(tone === 'bad' ? 12 : 8.5, tone, tone === 'bad' ? 'bold' : 'plain');
  const quiet = style(9, tone);
  const inner = sheet.width - 20;
  const lines = [
    ...sheet.text.wrap(text, inner, loud).map(own => ({ own, style: loud })),
    ...(detail === undefined
      ? []
      : sheet.text.wrap(detail, inner, quiet).map(own => ({ own, style: quiet }))),
  ];
  const height = lines.reduce((sum, line) => sum + sheet.text.lineHeight(line.style), 0) + 8;
  sheet.doc.rect(sheet.left, sheet.y, sheet.width, height).fill(softColors[tone]);
  sheet.doc.rect(sheet.left, sheet.y, 5, height).fill(toneColors[tone]);
  let y = sheet.y + 4;
  for (const line of lines) {
    sheet.text.draw(line.own, sheet.left + 12, y, line.style);
    y += sheet.text.lineHeight(line.style);
  }
  sheet.y += height + 8;
}

function title(sheet: Sheet, text: string, note: string): void {
  const quiet = style(9, 'muted');
  sheet.text.draw(note, sheet.left + sheet.width - sheet.text.width(note, quiet), sheet.y + 8, quiet);
  sheet.paragraph(text, style(18, undefined, 'bold'));
  sheet.y += 2;
}

const FACTS_PER_ROW = 4;

function facts(sheet: Sheet, rows: readonly { readonly label: string; readonly value: Cell }[]): void {
  const width = (sheet.width - (FACTS_PER_ROW - 1) * GAP) / FACTS_PER_ROW;
  const label = style(7, 'muted');
  for (let start = 0; start < rows.length; start += FACTS_PER_ROW) {
    const laid = rows.slice(start, start + FACTS_PER_ROW).map(row => {
      const own = style(9, row.value.tone, row.value.strong ? 'bold' : 'plain');
      return { label: row.label, style: own, lines: sheet.text.wrap(row.value.text, width - 7, own) };
    });
    const lineHeight = sheet.text.lineHeight(style(9));
    const height = Math.max(...laid.map(({ lines }) => lines.length)) * lineHeight + 10;
    sheet.ensure(height + 5);
    laid.forEach((fact, index) => {
      const x = sheet.left + index * (width + GAP);
      sheet.doc.rect(x, sheet.y, 1.5, height).fill(colors.rule);
      sheet.text.draw(fact.label, x + 6, sheet.y, label);
      fact.lines.forEach((line, row) => {
        sheet.text.draw(line, x + 6, sheet.y + 9 + row * lineHeight, fact.style);
      });
    });
    sheet.y += height + 5;
  }
  sheet.y += 3;
}

function list(sheet: Sheet, items: readonly Item[], boxes: boolean): void {
  for (const item of items) {
    const own = style(8.5, item.tone, item.strong ? 'bold' : 'plain');
    const height = sheet.text.lineHeight(own);
    sheet.ensure(height);
    if (boxes) box(sheet, item.ticked ?? false);
    else sheet.doc.circle(sheet.left + 4, sheet.y + height / 2, 1).fill(colors.ink);
    sheet.paragraph(item.text, own, sheet.left + 14, sheet.width - 14);
    sheet.y += 1.5;
  }
  sheet.y += 3;
}

function box({ doc, left, y }: Sheet, ticked: boolean): void {
  doc
    .rect(left + 1, y + 1.5, 7, 7)
    .lineWidth(0.6)
    .stroke(colors.ink);
  if (!ticked) return;
  doc
    .moveTo(left + 2.5, y + 5)
    .lineTo(left + 4.2, y + 7)
    .lineTo(left + 7, y + 3)
    .lineWidth(1)
    .stroke(colors.ink);
}

const CAPTION = 12;

function rowHeight(sheet: Sheet, perRow: 1 | 2, row: readonly Figure[]): number {
  const width = (sheet.width - (perRow - 1) * GAP) / perRow;
  const caption = row.some(({ title }) => title !== '') ? CAPTION : 0;
  return Math.max(...row.map(({ scene }) => (scene.height * width) / scene.width)) + caption + 6;
}

function figures(sheet: Sheet, perRow: 1 | 2, own: readonly Figure[]): void {
  const width = (sheet.width - (perRow - 1) * GAP) / perRow;
  for (let start = 0; start < own.length; start += perRow) {
    const row = own.slice(start, start + perRow);
    const caption = row.some(({ title }) => title !== '') ? CAPTION : 0;
    const height = rowHeight(sheet, perRow, row);
    sheet.ensure(height);
    row.forEach(({ title, scene }, index) => {
      const x = sheet.left + index * (width + GAP);
      if (title !== '') sheet.text.draw(title, x, sheet.y, style(8, undefined, 'bold'));
      const scale = width / scene.width;
      sheet.doc
        .save()
        .translate(x, sheet.y + caption)
        .scale(scale);
      drawScene(sheet.doc, sheet.text, scene, 0, 0);
      sheet.doc.restore();
    });
    sheet.y += height;
  }
}

function signatures(
  sheet: Sheet,
  lines: readonly { readonly role: string; readonly name: string; readonly note: string }[],
): void {
  const width = (sheet.width - (lines.length - 1) * GAP) / lines.length;
  const laid = lines.map(line => ({ ...line, name: sheet.text.wrap(line.name, width, style(9)) }));
  const lineHeight = sheet.text.lineHeight(style(9));
  const height = 34 + Math.max(...laid.map(({ name }) => name.length)) * lineHeight + 12;
  sheet.ensure(height);
  laid.forEach(({ role, name, note }, index) => {
    const x = sheet.left + index * (width + GAP);
    const y = sheet.y + 32;
    sheet.doc
      .moveTo(x, y)
      .lineTo(x + width, y)
      .lineWidth(0.7)
      .stroke(colors.ink);
    name.forEach((line, row) => {
      sheet.text.draw(line, x, y + 3 + row * lineHeight, style(9));
    });
    const below = note === '' ? role : `${role} \u00b7 ${note}`;
    sheet.text.draw(below, x, y + 4 + name.length * lineHeight, style(7, 'muted'));
  });
  sheet.y += height;
}
