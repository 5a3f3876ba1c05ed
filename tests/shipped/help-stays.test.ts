import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, it } from 'vitest';
import { startScript } from '../helpers/first-fire.ts';
import { scratchFolder } from '../helpers/scratch.ts';
import { Tmux } from '../helpers/tmux.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** Longer than the disk takes for what is asked after a call-out. */
const DISK_MS = 1500;

let terminal: Tmux | undefined;
afterEach(() => {
  terminal?.close();
  terminal = undefined;
});

const inOneLine = (screen: string) => screen.replace(/[!\s]+/g, ' ');

it('what to do about a fire stands in a terminal of 80 by 24 until all is off, with nobody spoken to', async () => {
  terminal = new Tmux({ columns: 80, rows: 24 });
  const log = join(scratchFolder(), 'r.jsonl');
  terminal.enter(`cd ${root}; ${startScript.join(' ')} rehearse --no-mic --silent --log ${log}`);
  await terminal.shows('card is right');
  expect(terminal.screen()).not.toContain('SPEAKING');
  terminal.press('Escape');
  await terminal.shows('STOPPED');
  terminal.enter('smoke or fire');
  await terminal.shows('call the fire service');
  await setTimeout(DISK_MS);
  expect(inOneLine(terminal.screen())).toContain(
    'If it burns: everybody out, call the fire service. Fuel and battery off, if you can reach them safely.',
  );
  expect(terminal.screen()).toContain('all is off');
  terminal.enter('all is off');
  await terminal.shows('Correct?');
  expect(terminal.screen()).not.toContain('fire service');
});
