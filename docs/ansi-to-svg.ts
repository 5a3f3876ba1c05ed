import stringWidth from 'string-width';

interface Style {
  readonly bold: boolean;
  readonly faint: boolean;
  readonly inverse: boolean;
  readonly ink: string | null;
  readonly ground: string | null;
}

interface Cell {
  readonly text: string;
  readonly columns: number;
  readonly style: Style;
}

const CELL_WIDTH = 9;
const CELL_HEIGHT = 20;
const BASELINE = 15;
const MARGIN = 10;
const INK = '#d7dae0';
const GROUND = '#16181d';

/** The sixteen named colours, in the order of their numbers. */
const named = [
  '#2b2e36',
  '#e05561',
  '#7fbf6a',
  '#e3b341',
  '#5b9bd5',
  '#c678dd',
  '#56b6c2',
  '#d7dae0',
  '#7d828c',
  '#ff6b78',
  '#98d982',
  '#ffd166',
  '#7ab7f0',
  '#dd95f0',
  '#78d3df',
  '#ffffff',
] as const;

const plain: Style = { bold: false, faint: false, inverse: false, ink: null, ground: null };

const hex = (...parts: readonly number[]) =>
  `#${parts.map(part => part.toString(16).padStart(2, '0')).join('')}`;

/** A colour of the 256: sixteen named ones, a cube of six levels, a ramp of greys. */
function indexed(index: number): string {
  const name = named[index];
  if (name) return name;
  if (index >= 232) return hex(...Array.from({ length: 3 }, () => 8 + (index - 232) * 10));
  const level = (digit: number) => (digit === 0 ? 0 : 55 + digit * 40);
  const cube = index - 16;
  return hex(level(Math.floor(cube / 36)), level(Math.floor(cube / 6) % 6), level(cube % 6));
}

/** Reads `38;5;n` or `38;2;r;g;b` from its second number on; the numbers used are taken away. */
function extended(numbers: number[]): string | null {
  if (numbers.shift() === 5) return indexed(numbers.shift() ?? 0);
  return hex(...numbers.splice(0, 3));
}

/** What a "select graphic rendition" sequence makes of a style (ECMA-48, 8.3.117). */
function styled(before: Style, parameters: string): Style {
  const numbers = parameters.split(';').map(Number);
  let style = before;
  while (numbers.length > 0) {
    const code = numbers.shift() ?? 0;
    if (code === 0) style = plain;
    else if (code === 1) style = { ...style, bold: true };
    else if (code === 2) style = { ...style, faint: true };
    else if (code === 7) style = { ...style, inverse: true };
    else if (code === 22) style = { ...style, bold: false, faint: false };
    else if (code === 27) style = { ...style, inverse: false };
    else if (code === 38) style = { ...style, ink: extended(numbers) };
    else if (code === 48) style = { ...style, ground: extended(numbers) };
    else if (code === 39) style = { ...style, ink: null };
    else if (code === 49) style = { ...style, ground: null };
    else if (code >= 30 && code <= 37) style = { ...style, ink: indexed(code - 30) };
    else if (code >= 40 && code <= 47) style = { ...style, ground: indexed(code - 40) };
    else if (code >= 90 && code <= 97) style = { ...style, ink: indexed(code - 82) };
    else if (code >= 100 && code <= 107) style = { ...style, ground: indexed(code - 92) };
  }
  return style;
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences are what is looked for
const TOKEN = /\x1b\[([\d;]*)m|\x1b\[[\d;?]*[@-~]|\x1b.|([^\x1b])/gu;

/** Lines of cells; a style goes on from one line to the next. */
function cellsOf(ansi: string): Cell[][] {
  let style = plain;
  return ansi
    .replace(/\n+$/, '')
    .split('\n')
    .map(text => {
      const cells: Cell[] = [];
      for (const [, parameters, character] of text.matchAll(TOKEN)) {
        if (parameters !== undefined) style = styled(style, parameters);
        if (character !== undefined) cells.push({ text: character, columns: stringWidth(character), style });
      }
      return cells;
    });
}

const escapeXml = (text: string) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const rect = (x: number, y: number, width: number, height: number, fill: string, opacity = 1) =>
  `<rect x="${x}" y="${y}" width="${width}" height="${height}" fill="${fill}"${opacity < 1 ? ` opacity="${opacity}"` : ''}/>`;

/** Block characters as rectangles, so that they join: part of the cell's height, and how dense. */
const blocks: Readonly<Record<string, readonly [top: number, height: number, density: number]>> = {
  '█': [0, 1, 1],
  '▀': [0, 0.5, 1],
  '▄': [0.5, 0.5, 1],
  '░': [0, 1, 0.25],
};

const sameLook = (a: Cell, b: Cell) =>
  a.style === b.style && (a.text in blocks || b.text in blocks ? a.text === b.text : true);

/** Neighbouring cells that can be drawn as one. */
function runsOf(cells: readonly Cell[]): Cell[] {
  const runs: Cell[] = [];
  let last: Cell | undefined;
  for (const cell of cells) {
    const run = runs.at(-1);
    if (run && last && sameLook(last, cell)) {
      runs[runs.length - 1] = { ...run, text: run.text + cell.text, columns: run.columns + cell.columns };
    } else runs.push(cell);
    last = cell;
  }
  return runs;
}

function drawRun({ text, columns, style }: Cell, x: number, y: number): string {
  const [ink, ground] = style.inverse
    ? [style.ground ?? GROUND, style.ink ?? INK]
    : [style.ink ?? INK, style.ground];
  const width = columns * CELL_WIDTH;
  const under = ground ? rect(x, y, width, CELL_HEIGHT, ground) : '';
  const block = blocks[text[0] ?? ''];
  if (block) {
    const [top, height, density] = block;
    return under + rect(x, y + top * CELL_HEIGHT, width, height * CELL_HEIGHT, ink, density);
  }
  if (text.trim() === '') return under;
  const looks = `${style.bold ? ' font-weight="bold"' : ''}${style.faint ? ' opacity="0.65"' : ''}`;
  const place = `x="${x}" y="${y + BASELINE}" textLength="${width}"`;
  return `${under}<text ${place} fill="${ink}"${looks}>${escapeXml(text)}</text>`;
}

/**
 * A picture of a terminal.
 *
 * @param ansi text with SGR sequences, as `tmux capture-pane -e -N -p` writes it; other sequences are left out
 * @param title what the picture shows, for those who cannot see it
 * @returns a whole SVG document
 */
export function ansiToSvg(ansi: string, title: string): string {
  const lines = cellsOf(ansi);
  const columns = Math.max(1, ...lines.map(cells => cells.reduce((sum, cell) => sum + cell.columns, 0)));
  const width = columns * CELL_WIDTH + 2 * MARGIN;
  const height = lines.length * CELL_HEIGHT + 2 * MARGIN;
  const drawn = lines.map((cells, row) => {
    let x = MARGIN;
    return runsOf(cells)
      .map(run => {
        const picture = drawRun(run, x, MARGIN + row * CELL_HEIGHT);
        x += run.columns * CELL_WIDTH;
        return picture;
      })
      .join('');
  });
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" shape-rendering="crispEdges" xml:space="preserve" font-family="ui-monospace, 'DejaVu Sans Mono', Menlo, Consolas, monospace" font-size="15">
<title>${escapeXml(title)}</title>
<rect width="${width}" height="${height}" rx="8" fill="${GROUND}"/>
${drawn.filter(row => row !== '').join('\n')}
</svg>
`;
}
