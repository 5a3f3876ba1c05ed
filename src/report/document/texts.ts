import type { Scene } from '../plot/scene.ts';
import type { Block, Cell, Figure, Row } from './blocks.ts';

type Change = (text: string) => string;

/** The members of this object that are texts, changed; all others as they are. */
function texts<T extends object, K extends keyof T>(own: T, change: Change, ...names: readonly K[]): T {
  const changed = { ...own };
  for (const name of names) {
    const text = own[name];
    if (typeof text === 'string') Object.assign(changed, { [name]: change(text) });
  }
  return changed;
}

const cell = <T extends Cell>(own: T, change: Change): T => texts(own, change, 'text', 'note');

const row = (own: Row, change: Change): Row =>
  own.kind === 'cells'
    ? { ...own, cells: own.cells.map(each => cell(each, change)) }
    : {
        ...texts(own, change, 'detail'),
        title: cell(own.title, change),
        ...(own.right ? { right: cell(own.right, change) } : {}),
      };

const scene = (own: Scene, change: Change): Scene => ({
  ...own,
  shapes: own.shapes.map(shape => (shape.kind === 'text' ? texts(shape, change, 'text') : shape)),
});

const figure = (own: Figure, change: Change): Figure => ({
  ...texts(own, change, 'title', 'alt'),
  scene: scene(own.scene, change),
});

/** The same block with a change made to every text of it. */
export function withTexts(block: Block, change: Change): Block {
  switch (block.type) {
    case 'banner':
      return texts(block, change, 'text', 'detail');
    case 'title':
      return texts(block, change, 'text', 'note');
    case 'text':
    case 'lead':
      return texts(block, change, 'text');
    case 'section':
      return texts(block, change, 'title', 'note');
    case 'facts':
      return {
        ...block,
        rows: block.rows.map(({ label, value }) => ({ label: change(label), value: cell(value, change) })),
      };
    case 'table':
      return {
        ...block,
        columns: block.columns.map(column => texts(column, change, 'title')),
        rows: block.rows.map(each => row(each, change)),
      };
    case 'list':
      return { ...block, items: block.items.map(item => cell(item, change)) };
    case 'figures':
      return { ...block, figures: block.figures.map(each => figure(each, change)) };
    case 'folded':
      return {
        ...texts(block, change, 'summary'),
        blocks: block.blocks.map(each => withTexts(each, change)),
      };
    case 'signatures':
      return { ...block, lines: block.lines.map(line => texts(line, change, 'role', 'name', 'note')) };
    case 'hash':
      return texts(block, change, 'label');
  }
}
