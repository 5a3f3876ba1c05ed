/**
 * Turns a captured terminal into docs/pictures/terminal.svg, or another file:
 *
 *     tmux capture-pane -e -N -p | node --import tsx docs/picture.ts [file.svg [title]]
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { ansiToSvg } from './ansi-to-svg.ts';

const usual = fileURLToPath(new URL('pictures/terminal.svg', import.meta.url));
const [file = usual, title = 'first-fire in a terminal'] = process.argv.slice(2);

const captured = await text(process.stdin);
if (captured.trim() === '') {
  console.error('Nothing to draw: give the output of `tmux capture-pane -e -N -p` as standard input.');
  process.exitCode = 2;
} else {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, ansiToSvg(captured, title));
  console.log(`${file} written`);
}
