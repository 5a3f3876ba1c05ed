import type { Block, Cell, Row } from './blocks.ts';

/** Longer than any name or sentence of a session; a hostile record may hold half a megabyte. */
const LONGEST = 600;

/** Control characters would break a page or hide text; direction marks could turn a verdict round. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
const unprintable = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069]+/g;

const half = /\p{Surrogate}/gu;

/** Text as it may be shown: on one line, without marks that hide or turn it, and of bearable length. */
export function clip(text: string): string {
  // Cutting may split a character of two halves.
  const short = text.length > LONGEST ? `${text.slice(0, LONGEST).replace(half, '')}\u2026` : text;
  return short.replace(unprintable, ' ');
}

const cell = <T extends Cell>(own: T): T => ({
  ...own,
  text: clip(own.text),
  ...(own.note === undefined ? {} : { note: clip(own.note) }),
});

const row = (own: Row): Row =>
  own.kind === 'cells'
    ? { ...own, cells: own.cells.map(cell) }
    : {
        ...own,
        title: cell(own.title),
        ...(own.right ? { right: cell(own.right) } : {}),
        ...(own.detail === undefined ? {} : { detail: clip(own.detail) }),
      };

/** The same block with every text of it fit to be shown. */
export function clipped(block: Block): Block {
  switch (block.type) {
    case 'banner':
      return { ...block, text: clip(block.text) };
    case 'text':
    case 'lead':
      return { ...block, text: clip(block.text) };
    case 'facts':
      return { ...block, rows: block.rows.map(({ label, value }) => ({ label, value: cell(value) })) };
    case 'table':
      return { ...block, rows: block.rows.map(row) };
    case 'list':
      return { ...block, items: block.items.map(cell) };
    case 'figures':
      return {
        ...block,
        figures: block.figures.map(figure => ({
          ...figure,
          title: clip(figure.title),
          alt: clip(figure.alt),
        })),
      };
    case 'signatures':
      return { ...block, lines: block.lines.map(line => ({ ...line, name: clip(line.name) })) };
    case 'title':
    case 'section':
    case 'hash':
      return block;
  }
}
