import type { View } from '../../../session/view.ts';
import { fill } from '../../../session/wording.ts';
import { type Line, line, linesOf } from '../line.ts';
import { cut, oneLine, pad, widthOf, wrap } from '../text.ts';
import type { FaceWords } from '../words/index.ts';

type Gates = View['gates'];

function grid(gates: Gates, width: number, words: FaceWords): Line[] {
  const judgementWidth = Math.max(widthOf(words.gateMet), widthOf(words.gateNotMet)) + 1;
  const cells = gates.map(
    ({ name, met }) => `${pad(met ? words.gateMet : words.gateNotMet, judgementWidth)} ${oneLine(name)}`,
  );
  const cellWidth = Math.max(...cells.map(widthOf)) + 2;
  const across = Math.max(1, Math.floor((width + 2) / cellWidth));
  const rows: Line[] = [];
  for (let first = 0; first < cells.length; first += across) {
    const row = cells.slice(first, first + across).map(cell => pad(cell, cellWidth));
    const allMet = gates.slice(first, first + across).every(({ met }) => met);
    rows.push(line(cut(row.join('').trimEnd(), width), allMet ? 'good' : 'normal'));
  }
  return rows;
}

/** The gates before first fire: each with its word where the rows allow, else those that are not met. */
export function gates(all: Gates, width: number, rows: number, words: FaceWords): Line[] {
  if (all.length === 0) return [];
  const unmet = all.filter(({ met }) => !met);
  const labelled = (label: string, text: string) => fill(words.labelled, { label, text });
  const met = fill(words.gatesMet, { met: String(all.length - unmet.length), all: String(all.length) });
  const head = line(cut(labelled(words.gates, met), width), 'strong');
  const table = grid(all, width, words);
  if (table.length < rows || unmet.length === 0) return unmet.length === 0 ? [head] : [head, ...table];
  const names = unmet.map(({ name }) => oneLine(name)).join(', ');
  return [head, ...linesOf(wrap(labelled(words.gateNotMet, names), width), 'bad')];
}
